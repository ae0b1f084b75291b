import { useMemo, useState } from 'react'
import { bees } from '#geo/data/bees'
import { malesBefore, outdoorSpread, searchDays, searchSpread, type Wintering } from '#geo/data/emergence-figures'
import type { BeeId } from '#geo/data/own'
import { sourceText } from '#geo/data/thresholds'
import { type DaySpan, deviation, tail } from '#geo/flight/emergence'
import type { FlightSettings } from '#geo/flight/flight'
import { type DailyCurve, endOf } from '#geo/time/curve'
import { dayAndMonth, shortDate } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { type Band, Chart } from '../../parts/chart'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { Table } from '../../parts/table'
import { settingsOf } from '../../state/selectors'
import { counted } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { trimmed } from '../season-bands'
import { type ComingBatch, comingBatches } from './coming-out-batches'

/** When the males, then the females of each batch come out, and when the females nest. */
export function ComingOut() {
  const plan = usePlan()
  const year = useYear()
  const [wintering, setWintering] = useState<Wintering>('cold')
  const batches = useMemo(() => comingBatches(plan, year, wintering), [plan, year, wintering])
  if (batches.length === 0) return null
  const kinds = [...new Set(batches.map(({ bee }) => bee))]
  return (
    <Disclosure summary={`Males, females and nesting: ${counted(batches.length, 'batch', 'batches')}, one by one`}>
      <div className="stack">
        <ChoiceField
          label="The cocoons wintered"
          value={wintering}
          choices={[
            { value: 'cold', name: 'in a cold store, until they were set out' },
            { value: 'outdoors', name: 'outdoors' },
          ]}
          onCommit={setWintering}
        />
        {kinds.map(bee => (
          <OfBee key={bee} batches={batches.filter(batch => batch.bee === bee)} bee={bee} wintering={wintering} />
        ))}
      </div>
    </Disclosure>
  )
}

type OfBeeProps = { readonly bee: BeeId; readonly batches: readonly ComingBatch[]; readonly wintering: Wintering }

function OfBee({ bee, batches, wintering }: OfBeeProps) {
  const plan = usePlan()
  const year = useYear()
  const bands = batches.flatMap(bandsOf)
  const from = Math.min(...bands.map(({ curve }) => curve.start)) - 3
  const to = Math.max(...bands.map(({ curve }) => endOf(curve))) + 3
  const title = `${bees[bee].name}: coming out and nesting in ${year}`
  return (
    <div className="stack">
      <Chart
        title={title}
        summary={batches.map(batch => batchText(batch, year)).join(' ')}
        bands={bands}
        from={from}
        to={to}
        year={year}
        labelWidth={132}
      />
      <p className="aside-note">
        Males and females: who comes out on each day. Nesting: who is at work; coverage counts with this curve, however
        the cocoons wintered. In the table, first is one in twenty, nearly all is all but one in twenty.
      </p>
      <p className="aside-note">{spreadText(bee, settingsOf(plan).bees[bee], wintering)}</p>
      <Table
        caption={`${bees[bee].name}: who is out when in ${year}`}
        columns={[
          { key: 'batch', head: 'Set out', cell: line => line.batch },
          { key: 'who', head: 'Who', cell: line => line.who },
          { key: 'first', head: 'First', cell: line => line.first },
          { key: 'half', head: 'Half, or most', cell: line => line.half },
          { key: 'last', head: 'Nearly all, or last', cell: line => line.last },
        ]}
        rows={batches.flatMap(batch => linesOf(batch, year))}
        keyOf={line => line.batch + line.who}
      />
    </div>
  )
}

/** What the curves stand on, as the estimate it is. */
function spreadText(bee: BeeId, flight: FlightSettings, wintering: Wintering): string {
  const spread = deviation(flight, wintering)
  const before = malesBefore[bee][wintering]
  const [how, source] =
    wintering === 'cold'
      ? ['From a cold store both sexes come out close together', searchSpread]
      : [
          'After a winter outdoors it takes longer, as warmth allows; males may be out before the day typed',
          outdoorSpread,
        ]
  return `An estimate. ${how}: two in three within ${spread} days of the middle one (${sourceText(source)}). Males are ${before.value} days (${before.low} to ${before.high}) before females (${sourceText(before)}), and females nest ${searchDays.value} days (${searchDays.low} to ${searchDays.high}) after they are out (${sourceText(searchDays)}). In a cool spring all of it takes longer.`
}

function bandsOf({ date, day, males, females, nesting, femaleCocoons, maleCocoons }: ComingBatch): readonly Band[] {
  const band = (who: string, curve: DailyCurve): Band => {
    const most = Math.max(...curve.values)
    const scaled = { start: curve.start, values: curve.values.map(value => value / most) }
    return { id: `${who} ${day}`, label: `${who}, ${shortDate(date)}`, kind: 'flight', curve: trimmed(scaled) }
  }
  return [
    ...(maleCocoons === 0 ? [] : [band('Males', males.daily)]),
    ...(femaleCocoons === 0 ? [] : [band('Females', females.daily), band('Nesting', nesting)]),
  ]
}

type Line = {
  readonly batch: string
  readonly who: string
  readonly first: string
  readonly half: string
  readonly last: string
}

function linesOf(batch: ComingBatch, year: number): readonly Line[] {
  const { date, males, females, nesting, femaleCocoons, maleCocoons } = batch
  const day = (at: number) => dayAndMonth(dateOfDay(at, year))
  const common = { batch: dayAndMonth(date) }
  const out = (who: string, { first, half, last }: ComingBatch['males']): Line => ({
    ...common,
    who,
    first: day(first),
    half: `${day(half.value)} (${span(half, year)})`,
    last: day(last),
  })
  const isAtWork = (share: number) => share >= tail
  const begun = nesting.start + nesting.values.findIndex(isAtWork)
  const done = nesting.start + nesting.values.findLastIndex(isAtWork)
  const most = nesting.start + nesting.values.indexOf(Math.max(...nesting.values))
  const nests = {
    ...common,
    who: 'Females at work',
    first: day(begun),
    half: day(most),
    last: day(done),
  }
  return [
    ...(maleCocoons === 0 ? [] : [out('Males out', males)]),
    ...(femaleCocoons === 0 ? [] : [out('Females out', females), nests]),
  ]
}

function span({ low, high }: DaySpan, year: number): string {
  return `${dayAndMonth(dateOfDay(low, year))} to ${dayAndMonth(dateOfDay(high, year))}`
}

function batchText({ date, males, females, maleCocoons, femaleCocoons }: ComingBatch, year: number): string {
  const day = (at: number) => dayAndMonth(dateOfDay(at, year))
  const who = [
    ...(maleCocoons === 0 ? [] : [`half of the males by about ${day(males.half.value)}`]),
    ...(femaleCocoons === 0 ? [] : [`half of the females by about ${day(females.half.value)}`]),
  ]
  return `Set out on ${dayAndMonth(date)}: ${who.join(', ')}.`
}
