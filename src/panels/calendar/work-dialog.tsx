import { useId, useMemo } from 'react'
import type { Task } from '#geo/calendar/task'
import { seasonTasks } from '#geo/calendar/tasks'
import { dateText } from '#geo/time/date-text'
import { addDays } from '#geo/time/day'
import { Dialog } from '../../parts/dialog'
import { useUnits } from '../../parts/units-context'
import { notify } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { cautionIn } from '../../text/cautions'
import { counted, dateSpan } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { ProblemList } from '../problem-list'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import './calendar.css'

/** The season's work by date, each task with its why, steps and cautions; saved as a calendar file, or printed. */
export function WorkDialog({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const { saveCalendar } = useServices()
  const outcome = useMemo(() => seasonTasks(plan, year), [plan, year])
  const tasks = outcome.ok ? outcome.value : []
  const save = async () => {
    try {
      const words = await saveCalendar(plan, year, tasks)
      if (words === null) return
      notify(store, words)
      onClose()
    } catch (error) {
      notify(store, `The calendar was not saved: ${reasonOf(error)}`)
      onClose()
    }
  }
  return (
    <Dialog title={`Work of the season ${year}`} onClose={onClose}>
      <div className="season-work">
        <p className="work-plan">{plan.name}</p>
        <p className="lead">{leadOf(tasks)}</p>
        {outcome.problems.length > 0 ? <ProblemList problems={outcome.problems} /> : null}
        {tasks.length > 0 ? (
          <>
            <div className="actions">
              <button type="button" className="first" onClick={save}>
                Save as a calendar file
              </button>
              <button type="button" onClick={() => window.print()}>
                Print
              </button>
            </div>
            <p className="aside-note">
              The file opens in calendar programs. Save it again after a change and open it there once more: entries
              move, they do not double. What is no longer in the plan has to be taken out by hand.
            </p>
            <ol className="plain-list work-list">
              {tasks.map(task => (
                <WorkItem key={task.uid} task={task} />
              ))}
            </ol>
          </>
        ) : null}
      </div>
    </Dialog>
  )
}

function leadOf(tasks: readonly Task[]): string {
  const [first] = tasks
  const last = tasks.at(-1)
  if (first === undefined || last === undefined) return 'No work can be dated yet.'
  return `${counted(tasks.length, 'task')} from ${dateText(first.date)} to ${dateText(last.date)}. All days are estimates from this plan’s releases and bloom; they move when those change.`
}

function WorkItem({ task }: { readonly task: Task }) {
  const { title, why, steps, cautions } = task
  const id = useId()
  return (
    <li className="work-item" aria-labelledby={id}>
      <p className="work-date">{whenOf(task)}</p>
      <div className="work-text">
        <h3 id={id}>{title}</h3>
        <p>{why}</p>
        <ul>
          {steps.map(step => (
            <li key={step}>{step}</li>
          ))}
        </ul>
        {cautions.length > 0 ? <WorkCautions about={cautions} of={title} /> : null}
      </div>
    </li>
  )
}

/** All cautions of a task together: short ones in sight, what is behind them folded away. */
function WorkCautions({ about, of }: { readonly about: Task['cautions']; readonly of: string }) {
  const units = useUnits()
  const texts = about.map(key => ({ key, ...cautionIn(key, units) }))
  return (
    <aside className="caution" aria-label={`Cautions: ${of}`}>
      {texts.map(({ key, short }) => (
        <p key={key}>{short}</p>
      ))}
      <details>
        <summary>More on this</summary>
        {texts.map(({ key, long }) => (
          <p key={key}>{long}</p>
        ))}
      </details>
    </aside>
  )
}

/** "6 April 2026"; "1 to 14 February 2026"; "14 April to 26 May 2026, every 7 days". */
function whenOf({ date, end, repeats }: Task): string {
  if (repeats !== undefined) {
    const last = addDays(date, repeats.everyDays * (repeats.times - 1))
    return repeats.times === 1 ? dateText(date) : `${dateSpan(date, last)}, every ${counted(repeats.everyDays, 'day')}`
  }
  return end === undefined ? dateText(date) : dateSpan(date, end)
}
