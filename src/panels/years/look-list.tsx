import { usePlanner, usePlannerStore } from '../../state/use-planner'
import type { YearLook } from '../../state/years'
import { changeYears, yearAgainst } from '../../state/years-actions'
import { usePlan, useYear } from '../hooks'

export const lookNames: Readonly<Record<YearLook, string>> = {
  compare: 'One year beside the next',
  ahead: 'The seasons to come',
}

/** The ways to look at more seasons than one. */
export function LookList() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const against = usePlanner(yearAgainst)
  const states: Readonly<Record<YearLook, string>> = {
    compare: against === null ? 'needs two seasons' : `${against} and ${year}: what changed, and why`,
    ahead: plan.seasons.some(each => each.year === year)
      ? `what these bees may become after ${year}`
      : 'needs a season',
  }
  return (
    <nav className="tasks" aria-label="What to look at">
      {(Object.keys(lookNames) as YearLook[]).map(look => (
        <button type="button" key={look} className="task" onClick={() => changeYears(store, { look })}>
          <span>{lookNames[look]}</span>
          <span className="task-state">{states[look]}</span>
        </button>
      ))}
    </nav>
  )
}
