import { Figure } from '../../parts/figure'
import { setPage } from '../../state/actions'
import { isFoundFor, typedPrices } from '../../state/found'
import { foundQuestion } from '../../state/found-question'
import { orchardYearOf, stationStoriesOf, stationYearsOf } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted, percent } from '../../text/words'
import { useExplain, usePlan, useYear, valueOfJob } from '../hooks'
import { costText } from './covered-cost-text'
import { causeLines, type FoundLine, orchardLines, shareSpreadText } from './found-figures'
import { Causes, FoundLines } from './found-lines'
import { StationStoryCard } from './station-story'

/** What a season's counts say: of the orchard, of each station, beside what was planned. */
export function YearResult() {
  const plan = usePlan()
  const year = useYear()
  const stations = stationYearsOf(plan, year)
  const isCounted = stations.some(({ capped, tubesOpened }) => capped !== null || tubesOpened !== null)
  if (!isCounted) return null
  return (
    <>
      <Orchard />
      <section className="stack" aria-labelledby="station-years">
        <h2 id="station-years">Each station</h2>
        {stationStoriesOf(plan, year)
          .filter(({ years }) => years.some(each => each.year === year))
          .map(story => (
            <StationStoryCard key={story.id} story={story} year={year} />
          ))}
      </section>
    </>
  )
}

function Orchard() {
  const plan = usePlan()
  const year = useYear()
  const orchard = orchardYearOf(plan, year)
  const { losses } = orchard
  const causes = losses === null ? [] : causeLines(losses)
  return (
    <section className="stack" aria-labelledby="year-found">
      <h2 id="year-found">What {year} says</h2>
      {orchard.counted < orchard.stations || orchard.opened < orchard.stations ? (
        <p className="aside-note">
          {orchard.counted} of {counted(orchard.stations, 'station')} counted, {orchard.opened} opened. The others are
          left out; they do not count as none.
        </p>
      ) : null}
      <FoundLines lines={orchardLines(orchard)} id={null} />
      {causes.length === 0 ? null : <Causes causes={causes} />}
      <AsFound />
    </section>
  )
}

/** Coverage as planned beside coverage by the females that nested; what covering a hectare or acre cost. */
function AsFound() {
  const store = usePlannerStore()
  const plan = usePlan()
  const explain = useExplain()
  const job = usePlanner(state => state.results.found)
  const prices = usePlanner(state => state.boxes.ask.prices)
  const { value } = valueOfJob(job, 0)
  if (job.status === 'failed') {
    return <p role="alert">Coverage as found cannot be worked out: {job.reason}</p>
  }
  if (value === null) return <p className="aside-note">Coverage as found is being worked out.</p>
  const question = foundQuestion(store.getState())
  const isFresh = question !== null && isFoundFor(value, question)
  const { planned, found } = value.record.coverage
  const lines: readonly FoundLine[] = [
    {
      figure: 'coverageFound',
      label: 'Coverage as found',
      text: found === null ? 'cannot be said' : shareSpreadText(found),
    },
  ]
  const cost = value.record.costPerCoveredHectare
  return (
    <div className={isFresh ? 'stack' : 'stack stale'} aria-busy={!isFresh}>
      <dl className="numbers wide-numbers">
        <div>
          <dt>Coverage as planned</dt>
          <dd>
            {planned === null ? (
              'cannot be said'
            ) : (
              <Figure label="Coverage as planned" onExplain={() => explain({ figure: 'coverage', id: null })}>
                about {percent(planned)}
              </Figure>
            )}
          </dd>
        </div>
        {lines.map(({ figure, label, text }) => (
          <div key={figure}>
            <dt>{label}</dt>
            <dd>
              <Figure label={label} onExplain={() => explain({ figure, id: null })}>
                {text}
              </Figure>
            </dd>
          </div>
        ))}
        {cost === null ? null : (
          <div>
            <dt>Cost for each {plan.units === 'us' ? 'acre' : 'hectare'} covered as planned</dt>
            <dd>
              <Figure label="Cost of covered ground" onExplain={() => explain({ figure: 'coveredCost', id: null })}>
                {costText(cost, plan.units)}
              </Figure>
            </dd>
          </div>
        )}
      </dl>
      {typedPrices(prices) === null ? (
        <p className="aside-note">
          Type your four prices under{' '}
          <button type="button" className="link" onClick={() => setPage(store, 'boxes')}>
            More boxes
          </button>{' '}
          to see what covering {plan.units === 'us' ? 'an acre' : 'a hectare'} cost.
        </p>
      ) : null}
    </div>
  )
}
