import { useEffect, useRef } from 'react'
import { setView } from '../state/actions'
import { usePlanner, usePlannerStore } from '../state/use-planner'
import { changeMapShown, yearAgainst } from '../state/years-actions'
import { capitalised } from '../text/words'
import { changeWords, coverWords } from './style'

/** What the shades and marks on the map mean, and the two switches for them. Folded away it is one button. */
export function Legend() {
  const store = usePlannerStore()
  const isShaded = usePlanner(state => state.view.shading)
  const isOfDay = usePlanner(state => state.view.day !== null && changeMapShown(state) === 'season')
  const shown = usePlanner(changeMapShown)
  const against = usePlanner(yearAgainst)
  const year = usePlanner(state => state.view.year)
  const isChange = shown === 'change'
  const hasCircles = usePlanner(state => state.view.reachCircles)
  const isBeside = shown === 'beside'
  const host = useRef<HTMLDetailsElement>(null)
  // Two maps leave little room for each: it is folded until it is asked for.
  useEffect(() => {
    if (isBeside && host.current !== null) host.current.open = false
  }, [isBeside])
  return (
    <details className="map-legend" ref={host}>
      <summary>Legend</summary>
      <label className="map-legend-switch">
        <input
          type="checkbox"
          checked={isShaded}
          onChange={event => setView(store, { shading: event.target.checked })}
        />
        {isChange
          ? `Shade plants by the change from ${against} to ${year}`
          : isOfDay
            ? 'Shade plants by the work of the day'
            : 'Shade plants by coverage'}
      </label>
      {isBeside && (
        <p>
          One map for {against}, one for {year}, with the same shades; they move together.
        </p>
      )}
      {isShaded && isChange && <ChangeSteps />}
      {isShaded && !isChange && (
        <ul className="map-legend-steps">
          {coverWords.map(({ range, words }, step) => (
            <li key={range}>
              <span className={`map-swatch map-swatch-${step}`} aria-hidden="true" />
              {range}, {words}
            </li>
          ))}
        </ul>
      )}
      {isShaded && !isChange && <p>A stroke across a plant, or hatching, means: short of bees (under 90 %).</p>}
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
      <details className="map-legend-more">
        <summary>Stations and other marks</summary>
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
    </details>
  )
}

/** Shapes and shades of change: up for more, down and struck through for less. */
function ChangeSteps() {
  return (
    <>
      <ul className="map-legend-steps">
        {changeWords.map((words, step) => (
          <li key={words}>
            <svg className="map-change-swatch" viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">
              <path
                d={step === 2 ? 'M9 4a5 5 0 0 1 0 10a5 5 0 0 1 0-10Z' : step > 2 ? 'M9 1L17 15H1Z' : 'M9 17L17 3H1Z'}
                fill={`var(--change-${step})`}
                stroke="var(--ink-2)"
              />
              {step === 0 ? <path d="M5 9L12 3M7 13L14 7" stroke="var(--paper)" /> : null}
              {step === 1 ? <path d="M5 11L13 4" stroke="var(--ink)" /> : null}
              {step === 4 ? <circle cx="9" cy="10.5" r="2" fill="var(--ink)" /> : null}
            </svg>
            {capitalised(words)}
          </li>
        ))}
      </ul>
      <details className="map-legend-more">
        <summary>How to read it</summary>
        <p>
          Points are hundredths of what a plant wants. Small plants are squares, smaller where little changed. On beds
          and squares dense hatching stands for two strokes, wide for one, dots for the dot. A small ring: stands, or
          has bloom dates, in one of the seasons only.
        </p>
      </details>
    </>
  )
}
