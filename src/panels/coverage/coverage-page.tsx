import { useMemo, useState } from 'react'
import type { PlantingResult, Report } from '#geo/report/report'
import { Caution } from '../../parts/caution'
import { Disclosure } from '../../parts/disclosure'
import { setPage } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { limitWords } from '../../text/names'
import { verdictOf } from '../../text/verdict'
import { about } from '../../text/words'
import { OffDaysOffer } from '../bloom/off-days-offer'
import { useEvaluation, usePlan, useSelect, useYear } from '../hooks'
import { cropTitle } from '../titles'
import { coverageSentence } from './coverage-sentence'
import { OrchardTotals } from './orchard-totals'
import { ResultDetails, Verdicts } from './planting-result'
import { RulesTable } from './rules-table'
import { StationNumbers } from './station-result'
import './coverage.css'

/** Whether the bees reach the bloom, in time and in number. */
export function CoveragePage() {
  const { value, isFresh, reason } = useEvaluation()
  const plan = usePlan()
  if (value === null) {
    return (
      <div className="page">
        <p className="lead">{reason === null ? 'Working out the coverage.' : 'The coverage cannot be worked out.'}</p>
        {reason === null ? null : <p role="alert">{reason}</p>}
      </div>
    )
  }
  const { report } = value
  return (
    <div className="page">
      <OffDaysOffer />
      <p className="lead" tabIndex={-1}>
        {coverageSentence(report)}
      </p>
      {reason === null ? null : (
        <p role="alert" className="call">
          {reason} What is shown answers the plan before that.
        </p>
      )}
      <div className={isFresh ? 'stack-wide' : 'stack-wide stale'} aria-busy={!isFresh}>
        {plan.features.length === 0 || report.plantings.length === 0 ? <NothingThere /> : <Results report={report} />}
      </div>
    </div>
  )
}

function NothingThere() {
  const store = usePlannerStore()
  return (
    <div className="call-box">
      <p>Draw a planting and a nest station, and give them bloom dates and cocoons.</p>
      <button type="button" className="first" onClick={() => setPage(store, 'ground')}>
        Go to Ground
      </button>
    </div>
  )
}

function Results({ report }: { readonly report: Report }) {
  return (
    <>
      <NextStep report={report} />
      <OrchardTotals orchard={report.orchard} />
      <Plantings plantings={report.plantings} />
      <Stations report={report} />
      <section className="stack" aria-labelledby="rules">
        <h2 id="rules">Two rules of thumb</h2>
        <RulesTable />
      </section>
      <Caution about="yield" />
    </>
  )
}

/** What stands between the plan and a first figure, if anything does. */
function NextStep({ report }: { readonly report: Report }) {
  const store = usePlannerStore()
  const isBloomMissing = report.plantings.some(({ coverage, wanted }) => coverage === null && wanted > 0)
  const hasBees = report.stations.some(({ females }) => females > 0)
  if (!isBloomMissing && hasBees) return null
  return (
    <div className="call-box">
      <p>
        {isBloomMissing ? 'Some plantings have no bloom dates. ' : ''}
        {hasBees ? '' : 'No cocoons are set out at any station, so no bee flies.'}
      </p>
      <button type="button" className="first" onClick={() => setPage(store, 'bloom')}>
        Go to Bloom and flight
      </button>
    </div>
  )
}

/** More plantings than this are shown on asking. */
const most = 12

function Plantings({ plantings }: { readonly plantings: readonly PlantingResult[] }) {
  const [isAll, setAll] = useState(false)
  const worstFirst = useMemo(() => [...plantings].sort((a, b) => (b.shortBy ?? -1) - (a.shortBy ?? -1)), [plantings])
  const shown = isAll ? worstFirst : worstFirst.slice(0, most)
  return (
    <section className="stack" aria-labelledby="plantings">
      <h2 id="plantings">Plantings</h2>
      <p className="aside-note">
        Shortest of bees first. Females are blue orchard bee females that nest; other bees are counted at their worth.
      </p>
      <ul className="results">
        {shown.map(result => (
          <li key={result.id}>
            <PlantingEntry result={result} />
          </li>
        ))}
      </ul>
      {shown.length < worstFirst.length ? (
        <button type="button" className="quiet" onClick={() => setAll(true)}>
          Show {worstFirst.length - shown.length} more plantings
        </button>
      ) : null}
    </section>
  )
}

function PlantingEntry({ result }: { readonly result: PlantingResult }) {
  const plan = usePlan()
  const select = useSelect()
  const { id, name, crop, coverage, shortBy } = result
  return (
    <>
      <h3>
        <button type="button" className="link" onClick={() => select([id])}>
          {name}
        </button>{' '}
        <span className="kind-sum">{cropTitle(plan, crop)}</span>
      </h3>
      {coverage === null ? (
        <p className="aside-note">It has no bloom dates this season, so it is not counted.</p>
      ) : (
        <>
          <Verdicts result={result} />
          <Disclosure summary={summaryOf(coverage, shortBy, limitWords(result))}>
            <ResultDetails result={result} />
          </Disclosure>
        </>
      )}
    </>
  )
}

function summaryOf(coverage: number, shortBy: number | null, limit: string | null): string {
  if (verdictOf(coverage) === 'yes') return 'Enough bees'
  const held = limit === null ? '' : `; ${limit}`
  return `Short by ${about(shortBy ?? 0)}${held}`
}

function Stations({ report }: { readonly report: Report }) {
  const year = useYear()
  const select = useSelect()
  return (
    <section className="stack" aria-labelledby="nests">
      <h2 id="nests">Stations in use in {year}</h2>
      {report.stations.length === 0 ? <p>None. Take stations into use under Bloom and flight.</p> : null}
      <ul className="results">
        {report.stations.map(result => (
          <li key={result.id}>
            <h3>
              <button type="button" className="link" onClick={() => select([result.id])}>
                {result.name}
              </button>
            </h3>
            <StationNumbers result={result} />
          </li>
        ))}
      </ul>
    </section>
  )
}
