import type { BeeId } from '#geo/data/own'
import type { StationStock } from '#geo/stocking/programme'
import { mostTubes } from '#geo/stocking/stock'
import { Table } from '../../parts/table'
import type { Stocked } from '../../state/boxes'
import { acceptCocoons, discardSuggestion } from '../../state/boxes-actions'
import { settingsOf, stationSeasonOf } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { about, counted, grouped, honest, percent } from '../../text/words'
import { lookForPlaces } from '../../worker/siting-schedule'
import { Explained } from '../coverage/figures'
import { useYear } from '../hooks'
import { moreThanWanted, smallBeatLarge, someOf, staleWords } from './answer-words'
import { ToQuestion } from './ask-form'
import { BeforeAfter, type Change, ShadeChoice } from './before-after'
import { StockShopping } from './shopping-list'
import { fewestWords } from './stock-words'
import { useTried } from './trial'
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
          <ToQuestion />
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
      <StockCautions answer={answer} />
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

/** What one female counts for, in blue orchard bee females. */
function effectivenessOf({ plan }: Stocked, bee: BeeId): number {
  return settingsOf(plan).bees[bee].effectiveness
}

function StockCautions({ answer }: { readonly answer: Stocked }) {
  const { result } = answer
  const large = result.stations.filter(({ tubes }) => tubes > mostTubes)
  const stopping = result.plantings.filter(({ isStopping }) => isStopping)
  const full = result.stations.filter(({ femaleCocoons, most }) => most !== null && femaleCocoons >= most)
  const females = result.stations.reduce((sum, { bee, females: own }) => sum + own * effectivenessOf(answer, bee), 0)
  const wanted = useTried()?.orchard.wanted ?? Number.POSITIVE_INFINITY
  const isMore = females > wanted
  if (large.length + stopping.length + full.length === 0 && !isMore) return null
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
      {isMore ? <li className="caution">{moreThanWanted({ females, wanted })}</li> : null}
      {large.length === 0 ? null : (
        <li className="caution">
          {someOf(large.map(({ name, tubes }) => `${name} (${grouped(tubes)} tubes)`))} would be large.{' '}
          {smallBeatLarge(mostTubes)} Ask for more stations instead.
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
