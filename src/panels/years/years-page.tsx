import { select, setView } from '../../state/actions'
import type { YearTask } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { usePlan, useYear } from '../hooks'
import { FruitSetCounts } from './fruit-set'
import { LookList } from './look-list'
import { LookPage } from './look-page'
import { Lots } from './lots'
import { OpeningDay } from './opening-day'
import { Round } from './round'
import { ShareOut } from './share-out'
import { TakingIn } from './taking-in'
import { TaskList, taskNames } from './task-list'
import { YearResult } from './year-result'
import { yearsSentence } from './years-sentence'
import './years.css'

/** What was counted in a season, and the forms in which it is written down. */
export function YearsPage() {
  const plan = usePlan()
  const year = useYear()
  const task = usePlanner(state => state.view.yearTask)
  const look = usePlanner(state => state.years.look)
  if (task !== null) return <TaskPage task={task} key={`${task} ${year}`} />
  if (look !== null) return <LookPage look={look} />
  return (
    <div className="page years">
      <p className="lead">{yearsSentence(plan, year)}</p>
      <TaskList />
      <YearResult />
      <LookList />
    </div>
  )
}

function TaskPage({ task }: { readonly task: YearTask }) {
  const store = usePlannerStore()
  const year = useYear()
  const done = () => {
    setView(store, { yearTask: null })
    // The next task begins with its own first thing, unless one is chosen on the map.
    select(store, [])
  }
  return (
    <div className="page years">
      <div className="task-head">
        <button type="button" className="quiet" onClick={done}>
          <span aria-hidden="true">‹</span> Back
        </button>
        <h2>
          {taskNames[task]} {year}
        </h2>
      </div>
      <TaskBody task={task} onDone={done} />
    </div>
  )
}

function TaskBody({ task, onDone }: { readonly task: YearTask; readonly onDone: () => void }) {
  switch (task) {
    case 'round':
      return <Round onDone={onDone} />
    case 'takingIn':
      return <TakingIn />
    case 'opening':
      return <OpeningDay />
    case 'lots':
      return <Lots />
    case 'shareOut':
      return <ShareOut />
    case 'fruitSet':
      return <FruitSetCounts />
    default:
      return task satisfies never
  }
}
