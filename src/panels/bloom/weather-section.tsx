import { lazy, Suspense, useEffect, useState } from 'react'
import { setWeather } from '#geo/plan/edits-seasons'
import { Figure } from '../../parts/figure'
import { notify } from '../../state/actions'
import { isAnswerTo } from '../../state/boxes'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { percent } from '../../text/words'
import { compareTypical } from '../../worker/timing-schedule'
import { useEdit, useEvaluation, useExplain, usePlan, useSeason, useYear, valueOfJob } from '../hooks'
import { ChillLines } from './chill-lines'
import { FrostList } from './frost-list'
import { Predictions } from './predictions'
import { weatherSummary, weatherText } from './weather-summary'

// With the reader of tables, which nobody needs who has no weather.
const WeatherImport = lazy(async () => ({ default: (await import('./weather-import')).WeatherImport }))

/** The season's own weather: what there is of it, how to bring more, and what it does to coverage. */
export function WeatherSection() {
  const store = usePlannerStore()
  const year = useYear()
  const edit = useEdit()
  const season = useSeason()
  const [isImporting, setImporting] = useState(false)
  const summary = weatherSummary(season?.weather?.days ?? [])
  const remove = () => {
    edit(setWeather(year, null))
    notify(store, `The weather of ${year} was removed. Undo brings it back.`)
  }
  return (
    <section className="stack" aria-labelledby="weather">
      <h2 id="weather">Weather of {year}</h2>
      {summary === null ? (
        <p>
          None yet: bees are taken to fly as on typical spring days. With daily weather of the season, bloom can be
          predicted, frost is told, and cold or wet days count for less.
        </p>
      ) : (
        <>
          <p>{weatherText(summary)}</p>
          {summary.missing.length + summary.withoutTemperature === 0 ? null : (
            <p className="aside-note">Days that are not known count as typical spring days.</p>
          )}
          <Comparison />
          <FrostList />
          <ChillLines />
        </>
      )}
      <div className="actions">
        <button type="button" className={summary === null ? 'first' : ''} onClick={() => setImporting(true)}>
          {summary === null ? 'Bring in a weather table' : 'Bring in more'}
        </button>
        {summary === null ? null : (
          <button type="button" className="quiet" onClick={remove}>
            Remove the weather
          </button>
        )}
      </div>
      <Predictions />
      {isImporting ? (
        <Suspense fallback={<p role="status">Opening…</p>}>
          <WeatherImport onClose={() => setImporting(false)} />
        </Suspense>
      ) : null}
    </section>
  )
}

/** "With this weather 71%, on typical days 78%", worked out as soon as the coverage itself is. */
function Comparison() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const explain = useExplain()
  const { value, isFresh } = useEvaluation()
  const { value: typical } = valueOfJob(
    usePlanner(state => state.results.typical),
    0,
  )
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew for every plan whose own coverage is known
  useEffect(() => {
    if (isFresh) compareTypical(store)
  }, [store, isFresh, plan, year])
  const now = value?.report.orchard.coverage ?? null
  if (now === null || typical === null || typical.coverage === null) return null
  const isCurrent = isFresh && isAnswerTo(typical, plan, year)
  return (
    <p className={isCurrent ? undefined : 'stale'} aria-busy={!isCurrent}>
      Coverage with this weather is about {percent(now)}, on typical days it would be{' '}
      <Figure label="coverage on typical days" onExplain={() => explain({ figure: 'typicalCoverage', id: null })}>
        about {percent(typical.coverage)}
      </Figure>
      . Both are estimates.
    </p>
  )
}
