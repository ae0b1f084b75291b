import type { LngLat } from '#geo/space/plane'
import { selectedFeatures } from '../../state/selectors'
import { usePlanner } from '../../state/use-planner'
import { titleOf } from '../titles'

/** Takes a position from what is selected: a station's, or either end of a line. */
export function FromSelected({ onTake }: { readonly onTake: (at: LngLat) => void }) {
  const [feature, ...more] = usePlanner(selectedFeatures)
  if (feature === undefined || more.length > 0) return null
  const { geometry } = feature
  if (geometry.type === 'Point') {
    return (
      <button type="button" className="quiet" onClick={() => onTake(geometry.coordinates)}>
        From {titleOf(feature)}
      </button>
    )
  }
  if (geometry.type !== 'LineString') return null
  const [first] = geometry.coordinates
  const last = geometry.coordinates.at(-1)
  return (
    <div className="actions">
      {first ? (
        <button type="button" className="quiet" onClick={() => onTake(first)}>
          From the start of {titleOf(feature)}
        </button>
      ) : null}
      {last ? (
        <button type="button" className="quiet" onClick={() => onTake(last)}>
          From the end of {titleOf(feature)}
        </button>
      ) : null}
    </div>
  )
}
