import type { StationStock, StockResult } from '#geo/stocking/programme'
import { mostTubes } from '#geo/stocking/stock'
import { Table } from '../../parts/table'
import type { Stocked } from '../../state/boxes'
import { acceptCocoons, discardSuggestion } from '../../state/boxes-actions'
import { stationSeasonOf } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { about, counted, grouped, honest, percent } from '../../text/words'
import { lookForPlaces } from '../../worker/siting-schedule'
import { Explained } from '../coverage/figures'
import { useYear } from '../hooks'
import { someOf, staleWords } from './answer-words'
import { BeforeAfter, type Change, ShadeChoice } from './before-after'
import { StockShopping } from './shopping-list'
import { fewestWords } from './stock-words'
import { useStocked } from './use-boxes'

type Props = { readonly answer: Stocked; readonly isFresh: boolean }

/** Fewest cocoons at the stations there are: what goes where, and what stops a planting. */
export function StockView({ answer, isFresh }: Props) {
  const store = usePlannerStore()
  const { isRunning } = useStocked()
  const { result } = answer
  const year = useYear()
  return (
    <div className={isFresh ? 'stack-wide' : 'stack-wide stale'}>
      {isFresh ? (
        <div className="actions">
          <button
            type="button"
            className="first"
            disabled={isRunning || result.stations.length === 0}
            onClick={() => acceptCocoons(store)}
          >
            Accept these cocoons
          </button>
          <button type="button" className="quiet" onClick={() => discardSuggestion(store)}>
            Discard
          </button>
          {result.stations.length === 0 ? null : <ShadeChoice />}
        </div>
      ) : (
        <div className="call-box">
          <p>{staleWords(answer.year, year)}</p>
          <button type="button" className="first" onClick={() => lookForPlaces(store)}>
            Work it out again
          </button>
        </div>
      )}
      <StockCautions result={result} />
      <p>
        {fewestWords(result)}{' '}
        <Explained figure="bound" id={null} label="how few could do">
          How that is known
        </Explained>
      </p>
      <Plantings answer={answer} isFresh={isFresh} />
      <Stations answer={answer} />
      {result.stations.length === 0 ? null : <StockShopping answer={answer} />}
    </div>
  )
}

function StockCautions({ result }: { readonly result: StockResult }) {
  const large = result.stations.filter(({ tubes }) => tubes > mostTubes)
  const stopping = result.plantings.filter(({ isStopping }) => isStopping)
  const full = result.stations.filter(({ femaleCocoons, most }) => most !== null && femaleCocoons >= most)
  if (large.length + stopping.length + full.length === 0) return null
  return (
    <ul className="plain-list cautions" aria-label="To weigh before you accept">
      {full.length === 0 ? null : (
        <li className="caution">
          The tubes at {someOf(full.map(({ name, most }) => `${name} (for ${grouped(most ?? 0)} female cocoons)`))} set
          a limit. Where more can be hung, let tubes be bought as needed, under Prices and sizes.
        </li>
      )}
      {stopping.length === 0 ? null : (
        <li className="caution">
          Out of reach:{' '}
          {someOf(stopping.map(({ name, most }) => (most === null ? name : `${name} (at most ${percent(most)})`)))}.
          More tubes, a station nearer, or a release nearer to their bloom would help; more cocoons alone would not.
        </li>
      )}
      {large.length === 0 ? null : (
        <li className="caution">
          {someOf(large.map(({ name }) => name))} would need more than {mostTubes} tubes. Beyond that a second place
          does more good than a larger one: ask for more stations instead.
        </li>
      )}
    </ul>
  )
}

function Stations({ answer }: { readonly answer: Stocked }) {
  const { result, plan, year } = answer
  const plannedAt = ({ id }: StationStock) =>
    (stationSeasonOf(plan, year, id)?.releases ?? []).reduce((sum, { females }) => sum + females, 0)
  const sum = (of: (station: StationStock) => number) => result.stations.reduce((all, each) => all + of(each), 0)
  return (
    <section className="stack" aria-labelledby="stock">
      <h2 id="stock">Cocoons for each station</h2>
      <Table
        caption={`Female and male cocoons and tubes for each station in ${year}`}
        isCaptionHidden
        columns={[
          { key: 'name', head: 'Station', cell: row => row.name },
          { key: 'now', head: 'Planned', cell: row => grouped(plannedAt(row)), isFigure: true },
          {
            key: 'females',
            head: 'Female',
            cell: row => (
              <Explained figure="placeCocoons" id={row.id} label={`cocoons at ${row.name}`}>
                {grouped(row.femaleCocoons)}
              </Explained>
            ),
            isFigure: true,
          },
          { key: 'males', head: 'Male', cell: row => grouped(row.maleCocoons), isFigure: true },
          {
            key: 'tubes',
            head: 'Tubes',
            cell: row => (
              <Explained figure="placeTubes" id={row.id} label={`tubes at ${row.name}`}>
                {grouped(row.tubes)}
              </Explained>
            ),
            isFigure: true,
          },
        ]}
        rows={result.stations}
        keyOf={row => row.id}
      />
      <p>
        {counted(
          sum(each => each.femaleCocoons),
          'female cocoon',
        )}{' '}
        and{' '}
        {counted(
          sum(each => each.maleCocoons),
          'male cocoon',
        )}{' '}
        in all.
      </p>
    </section>
  )
}

type StockChange = Change & { readonly shortBy: number | null }

/** What each planting gets, the worst served first. */
function Plantings({ answer, isFresh }: Props) {
  const { plantings, target, before, after } = answer.result
  const rows: readonly StockChange[] = plantings
    .map(({ coverage, ...planting }) => ({ ...planting, after: coverage }))
    .sort((a, b) => (a.after ?? 2) - (b.after ?? 2))
  const orchard = { id: null, name: 'The orchard', before: before.coverage, after: after.coverage, shortBy: null }
  const shortWords = ({ id, shortBy }: StockChange) =>
    id === null ? '' : shortBy === null || shortBy === 0 ? honest(0) : about(shortBy)
  return (
    <BeforeAfter
      caption={`Coverage of each planting now and with these cocoons, and what is short of ${percent(target)}`}
      rows={[orchard, ...rows]}
      isFresh={isFresh}
      last={{ key: 'short', head: 'Short by', cell: shortWords, isFigure: true }}
    />
  )
}
