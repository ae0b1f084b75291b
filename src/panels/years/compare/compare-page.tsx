import { Caution } from '../../../parts/caution'
import { ChoiceField } from '../../../parts/choice-field'
import { setYear } from '../../../state/actions'
import { usePlanner, usePlannerStore } from '../../../state/use-planner'
import type { Compared } from '../../../state/years'
import { changeYears, yearAgainst } from '../../../state/years-actions'
import { usePlan, useYear, valueOfJob } from '../../hooks'
import { useShell } from '../../shell'
import { compareSentence, foundSentence, isFoundNews } from './compare-words'
import { Found } from './found'
import { MapChoice } from './map-choice'
import { PlantingsTable } from './plantings-table'
import { Why } from './why'
import './compare.css'

/** One season beside another: what became of coverage, why, and what was found. */
export function ComparePage() {
  const year = useYear()
  const from = usePlanner(yearAgainst)
  const { answer, isFresh, reason } = useComparison()
  const found = answer && foundSentence(answer.comparison)
  if (from === null) return <TooFew />
  return (
    <>
      <SeasonPair from={from} to={year} />
      {reason === null ? null : (
        <p role="alert" className="call">
          {reason}
        </p>
      )}
      {answer === null ? (
        reason === null ? (
          <p role="status">Working out every mixture of the two seasons.</p>
        ) : null
      ) : (
        <div className={isFresh ? 'page' : 'page stale'}>
          <p className="lead">{compareSentence(answer.comparison)}</p>
          {found === null ? null : <p>{found}</p>}
          <MapChoice from={from} to={year} />
          {isFoundNews(answer.comparison) ? <Found comparison={answer.comparison} /> : null}
          <Why comparison={answer.comparison} />
          {isFoundNews(answer.comparison) ? null : <Found comparison={answer.comparison} />}
          <PlantingsTable comparison={answer.comparison} />
        </div>
      )}
      <Caution about="yield" />
    </>
  )
}

/** The latest comparison of the open plan; fresh where it answers just what is on the screen. */
function useComparison(): {
  readonly answer: Compared | null
  readonly isFresh: boolean
  readonly reason: string | null
} {
  const plan = usePlan()
  const to = useYear()
  const from = usePlanner(yearAgainst)
  const job = usePlanner(state => state.results.comparison)
  const { value } = valueOfJob(job, 0)
  const isFresh = value !== null && value.plan === plan && value.from === from && value.to === to
  // An answer about other seasons would be read as one about these.
  const answer = value !== null && value.from === from && value.to === to ? value : null
  return { answer, isFresh, reason: job.status === 'failed' ? job.reason : null }
}

function SeasonPair({ from, to }: { readonly from: number; readonly to: number }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const years = plan.seasons.map(({ year }) => year).toSorted((a, b) => a - b)
  const choices = (without: number) =>
    years.filter(year => year !== without).map(year => ({ value: String(year), name: String(year) }))
  return (
    <div className="season-pair">
      <ChoiceField
        label="From season"
        value={String(from)}
        choices={choices(to)}
        onCommit={value => changeYears(store, { against: Number(value) })}
      />
      <ChoiceField
        label="To season"
        value={String(to)}
        choices={choices(from)}
        onCommit={value => {
          // The season it is held against stays, whatever the one before the new one is.
          changeYears(store, { against: from })
          setYear(store, Number(value))
        }}
      />
      <button
        type="button"
        className="quiet"
        onClick={() => {
          changeYears(store, { against: to })
          setYear(store, from)
        }}
      >
        Swap
      </button>
    </div>
  )
}

function TooFew() {
  const { showDialog } = useShell()
  return (
    <div className="call-box">
      <p>It takes two seasons to hold one against the other, and this plan has fewer.</p>
      <button type="button" className="first" onClick={() => showDialog('season')}>
        Add a season
      </button>
    </div>
  )
}
