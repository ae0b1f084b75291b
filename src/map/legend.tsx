import { setView } from '../state/actions'
import { usePlanner, usePlannerStore } from '../state/use-planner'
import { coverWords } from './style'

/** What the shades and marks on the map mean, and the two switches for them. Folded away it is one button. */
export function Legend() {
  const store = usePlannerStore()
  const isShaded = usePlanner(state => state.view.shading)
  const isOfDay = usePlanner(state => state.view.day !== null)
  const hasCircles = usePlanner(state => state.view.reachCircles)
  return (
    <details className="map-legend">
      <summary>Legend</summary>
      <label className="map-legend-switch">
        <input
          type="checkbox"
          checked={isShaded}
          onChange={event => setView(store, { shading: event.target.checked })}
        />
        {isOfDay ? 'Shade plants by the work of the day' : 'Shade plants by coverage'}
      </label>
      {isShaded && (
        <ul className="map-legend-steps">
          {coverWords.map(({ range, words }, step) => (
            <li key={range}>
              <span className={`map-swatch map-swatch-${step}`} aria-hidden="true" />
              {range}, {words}
            </li>
          ))}
        </ul>
      )}
      {isShaded && <p>A stroke across a plant, or hatching, means: short of bees (under 90 %).</p>}
      {isShaded && isOfDay && (
        <p>
          Of the day: what the bees at work bring, against what the flowers open that day want. Over the bloom this adds
          up to coverage. Empty outline or small dot: no blossom open. Plain dark dot: no bloom dates.
        </p>
      )}
      <label className="map-legend-switch">
        <input
          type="checkbox"
          checked={hasCircles}
          onChange={event => setView(store, { reachCircles: event.target.checked })}
        />
        Circles of the typical foraging radius
      </label>
      <ul className="map-legend-marks">
        {isOfDay ? (
          <>
            <li>Filled square: nest station with females at work that day; outline: none</li>
            <li>Line: where most of its bees work; wider for more of them</li>
          </>
        ) : (
          <li>Filled square: nest station with cocoons this season; outline: without</li>
        )}
        <li>Dashed square: suggested station; arrow: where one would move</li>
        <li>Drop: mud</li>
        <li>Dotted ground: forage</li>
        <li>Diagonal lines in an outline: no stations here</li>
        <li>Line with ticks: windbreak; long dashes: boundary</li>
      </ul>
    </details>
  )
}
