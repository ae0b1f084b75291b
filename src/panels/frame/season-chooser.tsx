import { seasonOf } from '#geo/plan/plan'
import { setYear } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { usePlan, useYear } from '../hooks'
import { useShell } from '../shell'

const addOne = 'add'

/** Which season is looked at, and the way to one more. */
export function SeasonChooser() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const { showDialog } = useShell()
  const years = plan.seasons.map(season => season.year)
  const isMissing = seasonOf(plan, year) === undefined
  return (
    <label className="season-chooser">
      <span>Season</span>
      <select
        aria-label="Season"
        value={String(year)}
        onChange={event => {
          if (event.target.value === addOne) showDialog('season')
          else setYear(store, Number(event.target.value))
        }}
      >
        {years.map(each => (
          <option key={each} value={each}>
            {each}
          </option>
        ))}
        {isMissing ? <option value={year}>{year} (empty)</option> : null}
        <option value={addOne}>Add a season…</option>
      </select>
    </label>
  )
}
