import { usePlanner, usePlannerStore } from '../../../state/use-planner'
import type { ChangeMap } from '../../../state/years'
import { changeYears, showChangeMap } from '../../../state/years-actions'

type Props = { readonly from: number; readonly to: number }

/** What the map shows of the two seasons. */
export function MapChoice({ from, to }: Props) {
  const store = usePlannerStore()
  const { map, hasNumbers } = usePlanner(state => state.years)
  const other = usePlanner(state => state.results.otherSeason)
  const choices: readonly { readonly value: ChangeMap; readonly name: string }[] = [
    { value: 'season', name: `Coverage in ${to}` },
    { value: 'change', name: `Change from ${from} to ${to}` },
    { value: 'beside', name: `${from} and ${to} side by side` },
  ]
  return (
    <fieldset className="map-choice">
      <legend>On the map</legend>
      {choices.map(({ value, name }) => (
        <label key={value} className="option">
          <input type="radio" name="change-map" checked={map === value} onChange={() => showChangeMap(store, value)} />
          {name}
        </label>
      ))}
      {map === 'change' ? (
        <label className="option">
          <input
            type="checkbox"
            checked={hasNumbers}
            onChange={event => changeYears(store, { hasNumbers: event.target.checked })}
          />
          Write the points on the map
        </label>
      ) : null}
      {map !== 'season' && other.status === 'failed' ? <p role="alert">{other.reason}</p> : null}
      {map !== 'season' && other.status === 'running' && other.last === null ? (
        <p role="status">Working out {from} point by point.</p>
      ) : null}
    </fieldset>
  )
}
