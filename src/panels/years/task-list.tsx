import type { Plan, Season } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { setPage, setView } from '../../state/actions'
import type { YearTask } from '../../state/store'
import { usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { usePlan, useSeason, useYear } from '../hooks'
import { useShell } from '../shell'
import { recordedStations, recordIn } from './records'

export const taskNames: Readonly<Record<YearTask, string>> = {
  round: 'Station round',
  takingIn: 'Taking in',
  opening: 'Opening day',
  lots: 'Cocoon lots',
  shareOut: 'Share-out',
  fruitSet: 'Fruit counts',
}

type Status = (plan: Plan, year: number, season: Season | undefined) => string

const statuses: Readonly<Record<YearTask, Status>> = {
  round(plan, year, season) {
    const days = recordedStations(plan, year).flatMap(({ id }) => (recordIn(season, id).visits ?? []).map(v => v.date))
    const rounds = new Set(days).size
    const last = days.toSorted().at(-1)
    return last === undefined ? 'no visit yet' : `visits on ${counted(rounds, 'day')}, the last ${dateText(last)}`
  },
  takingIn: (plan, year, season) =>
    ofStations(plan, year, id => recordIn(season, id).takenIn !== undefined, 'taken in'),
  opening: (plan, year, season) => ofStations(plan, year, id => recordIn(season, id).opening !== undefined, 'opened'),
  lots: plan => (plan.lots?.length ? counted(plan.lots.length, 'lot') : 'none yet'),
  shareOut(_, __, season) {
    const shares = season?.shareOut?.shares
    return shares === undefined ? 'nothing written down' : counted(shares.length, 'share')
  },
  fruitSet(_, __, season) {
    const counts = Object.keys(season?.fruitSet ?? {}).length
    return counts === 0 ? 'none yet' : counted(counts, 'planting')
  },
}

function ofStations(plan: Plan, year: number, isDone: (id: string) => boolean, word: string): string {
  const all = recordedStations(plan, year)
  return `${all.filter(({ id }) => isDone(id)).length} of ${counted(all.length, 'station')} ${word}`
}

/** Counted with the phone in one hand: the panel takes the whole screen. */
const outdoors: ReadonlySet<YearTask> = new Set(['round', 'opening'])

/** What there is to write down in a year, in the order of the year, with how far it is. */
export function TaskList() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const season = useSeason()
  const { showDialog } = useShell()
  if (recordedStations(plan, year).length === 0) {
    return (
      <div className="call-box">
        <p>Records are kept by station: take one into use in {year}, with its tubes and the cocoons set out.</p>
        <button type="button" className="first" onClick={() => setPage(store, 'bloom')}>
          Go to Bloom and flight
        </button>
      </div>
    )
  }
  return (
    <nav className="tasks" aria-label="What to write down">
      {(Object.keys(taskNames) as YearTask[]).map(task => (
        <button
          type="button"
          key={task}
          className="task"
          onClick={() => setView(store, { yearTask: task, ...(outdoors.has(task) && { sheet: 'full' }) })}
        >
          <span>{taskNames[task]}</span>
          <span className="task-state">{statuses[task](plan, year, season)}</span>
        </button>
      ))}
      <button type="button" className="task" onClick={() => showDialog('season')}>
        <span>Next season</span>
        <span className="task-state">from this one, in one step</span>
      </button>
    </nav>
  )
}
