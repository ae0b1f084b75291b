import { useMemo } from 'react'
import { isForage, isPresent, type Plan } from '#geo/plan/plan'
import { dateOfDay } from '#geo/time/day'
import { Chart } from '../../parts/chart'
import { Disclosure } from '../../parts/disclosure'
import { cropsIn, forages, stations, stationsInUse } from '../../state/selectors'
import { counted, dateSpan } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { bandsSummary, daysOf, seasonBands } from '../season-bands'
import { useShell } from '../shell'
import { doubtCurve } from '../strip/season-days'
import { wholeOf } from '../strip/strip-picture'
import { BandTable } from './band-table'
import { Calendar, cropsWithoutBloom, useIsBloomFirst } from './calendar'
import { ColdStoreFields } from './cold-store'
import { ComingOut } from './coming-out'
import { CropBloom } from './crop-bloom'
import { OffDaysOffer } from './off-days-offer'
import { OwnBloom } from './own-bloom'
import { ReleaseAdvice } from './release-advice'
import { SeasonShift } from './season-shift'
import { StationUse } from './station-use'
import { WeatherSection } from './weather-section'
import './bloom.css'

/** With more crops than this each is folded to a line. */
const mostOpen = 2

/** When things bloom, which stations are in use, and what is set out there. */
export function BloomPage() {
  const plan = usePlan()
  const year = useYear()
  const { showDialog } = useShell()
  const bands = useMemo(() => seasonBands(plan, year), [plan, year])
  const blooms = useMemo(() => bands.blooms.map(band => ({ ...band, around: doubtCurve(band) })), [bands])
  const { from, to } = useMemo(() => wholeOf(bands), [bands])
  const hasDoubt = blooms.some(({ around }) => around !== null)
  const crops = cropsIn(plan, year)
  const meadows = forages(plan).filter(forage => isForage(forage) && isPresent(forage, year))
  const all = stations(plan)
  const isCalledFirst = useIsBloomFirst()
  return (
    <div className="page">
      <p className="lead" tabIndex={-1}>
        {bloomSentence(plan, year)}
      </p>
      {isCalledFirst ? null : <Calendar key={`calendar ${year}`} />}
      <OffDaysOffer />
      <SeasonShift />
      {bands.blooms.length + bands.flights.length > 0 ? (
        <section className="stack" aria-label={`Bloom and flight in ${year}`}>
          <Chart
            title={`Bloom and flight in ${year}`}
            summary={bandsSummary(bands, year)}
            bands={[...blooms, ...bands.flights]}
            from={from}
            to={to}
            year={year}
          />
          <p className="aside-note">
            Filled: how far a bloom is open. Hatched: females at work, against the station’s own peak.
            {hasDoubt ? ' Dashed: how far it could be open if default dates are off by as much as they may be.' : ''}
          </p>
          <Disclosure summary="The same as a table">
            <BandTable bands={bands} year={year} />
          </Disclosure>
          <ComingOut key={`out ${year}`} />
        </section>
      ) : null}
      <section className="stack" aria-labelledby="blooms">
        <h2 id="blooms">Bloom in {year}</h2>
        {crops.length === 0 ? <p>Draw a planting first; its crop is listed here then.</p> : null}
        {crops.map(crop => (
          <CropBloom key={`${crop} ${year}`} crop={crop} isFolded={crops.length > mostOpen} />
        ))}
        {meadows.map(forage => (
          <OwnBloom key={`${forage.id} ${year}`} feature={forage} />
        ))}
      </section>
      <WeatherSection key={`weather ${year}`} />
      {crops.length === 0 ? null : (
        <section className="stack" aria-labelledby="advice">
          <h2 id="advice">When to set cocoons out</h2>
          <ReleaseAdvice key={`advice ${year}`} />
          <ColdStoreFields key={`cold ${year}`} />
        </section>
      )}
      <section className="stack" aria-labelledby="stations">
        <h2 id="stations">Stations in {year}</h2>
        {all.length === 0 ? (
          <p>No nest station stands yet. Put one on the map, or type its position under Ground.</p>
        ) : null}
        {all.map(station => (
          <StationUse key={`${station.id} ${year}`} station={station} />
        ))}
      </section>
      <section className="stack" aria-labelledby="work">
        <h2 id="work">Work in {year}</h2>
        <p>What to do on which day, from stations up to the order for next spring, by these dates.</p>
        <div>
          <button type="button" onClick={() => showDialog('work')}>
            Work of the season {year}
          </button>
        </div>
      </section>
    </div>
  )
}

/** When things bloom and when bees fly, in one sentence. */
function bloomSentence(plan: Plan, year: number): string {
  const crops = cropsIn(plan, year)
  if (crops.length === 0) return `Nothing that blooms stands there in ${year}.`
  const { blooms, flights } = seasonBands(plan, year)
  const dates = blooms.flatMap(({ bloom }) => [bloom.first, bloom.end]).sort()
  const span = dates.length === 0 ? '' : `, ${dateSpan(dates[0]!, dates.at(-1)!)}`
  const missing = cropsWithoutBloom(plan, year).length
  const dated =
    missing === 0
      ? crops.length === 1
        ? 'The crop has its bloom dates'
        : `All ${crops.length} crops have their bloom dates`
      : `${crops.length - missing} of ${counted(crops.length, 'crop')} ${crops.length - missing === 1 ? 'has' : 'have'} bloom dates`
  const used = stationsInUse(plan, year)
  if (used.length === 0) return `${dated}${span}; no station is in use in ${year}.`
  if (flights.length === 0) return `${dated}${span}; no cocoons are set out yet in ${year}.`
  const first = dateOfDay(Math.min(...flights.map(band => daysOf(band).first)), year)
  const last = dateOfDay(Math.max(...flights.map(band => daysOf(band).last)), year)
  const where = `${flights.length} of ${counted(used.length, 'station')} in use`
  return `${dated}${span}; bees fly from ${where}, ${dateSpan(first, last)}.`
}
