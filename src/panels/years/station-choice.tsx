import type { Station } from '#geo/plan/plan'
import { select } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { titleOf } from '../titles'

type Props = {
  readonly stations: readonly Station[]
  readonly done: readonly Station[]
  readonly current: Station
  /** What is said of those that are done: "visited". */
  readonly doneWord: string
}

/** One station of the season by name, or its neighbours in the list by the thumb. */
export function StationChoice({ stations, done, current, doneWord }: Props) {
  const store = usePlannerStore()
  const at = stations.findIndex(({ id }) => id === current.id)
  const go = (index: number) => {
    const station = stations[(index + stations.length) % stations.length]
    if (station !== undefined) select(store, [station.id])
  }
  return (
    <div className="station-choice">
      <button type="button" aria-label="Station before" disabled={stations.length < 2} onClick={() => go(at - 1)}>
        ‹
      </button>
      <select
        aria-label="Station"
        value={current.id}
        onChange={event => go(stations.findIndex(({ id }) => id === event.target.value))}
      >
        {stations.map(station => (
          <option key={station.id} value={station.id}>
            {titleOf(station)}
            {done.some(({ id }) => id === station.id) ? `, ${doneWord}` : ''}
          </option>
        ))}
      </select>
      <button type="button" aria-label="Station after" disabled={stations.length < 2} onClick={() => go(at + 1)}>
        ›
      </button>
    </div>
  )
}
