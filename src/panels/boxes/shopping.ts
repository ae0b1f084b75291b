import { bees as beeTable } from '#geo/data/bees'
import { judging } from '#geo/data/judging-figures'
import type { BeeId } from '#geo/data/own'
import type { BeeSettings, Settings } from '#geo/data/settings'
import { csvText } from '#geo/file/csv-text'
import { type Plan, type StationSeason, seasonOf, type Units } from '#geo/plan/plan'
import { wholeUp } from '#geo/stocking/cocoons'
import { nestingShare } from '#geo/stocking/season-ground'
import type { Stock } from '#geo/stocking/stock'
import { cocoonsToBeSure } from '#geo/stocking/sure'
import { type BoxesState, pricesOf, type Stocked, type Suggested } from '../../state/boxes'
import { takenStations } from '../../state/boxes-actions'
import { settingsOf, stationSeasonOf } from '../../state/selectors'
import { boreText } from '../../text/units'
import { percent } from '../../text/words'
import type { PerArea } from './covered-cost'

/** What one station asks for; `tubes` are those that do not hang there yet. */
export type Need = Omit<Stock, 'females'> & {
  readonly bee: BeeId
  readonly isNew: boolean
  readonly tubeSize: string
}

/** One line of what is to be bought. */
export type ShoppingLine = {
  readonly item: string
  readonly count: number
  readonly price: number
  readonly sum: number
}

/** Cocoons of one bee, and how many it would take to be surer of them. */
export type SureLine = {
  readonly bee: BeeId
  /** Whole females that are to nest, and the chance with which each does. */
  readonly females: number
  readonly share: number
  /** Enough every other time, and nine times in ten, in whole sets. */
  readonly cocoons: number
  readonly sure: number
}

export type LotLine = { readonly lot: string; readonly bee: BeeId; readonly females: number; readonly males: number }

export type Shopping = {
  readonly lines: readonly ShoppingLine[]
  readonly total: number
  /** Tubes over the number that nesting females are counted to want, as a share of it. */
  readonly spareShare: number
  readonly sure: readonly SureLine[]
  /** Cocoons that the season has planned already, by lot and bee; males where they are written down. */
  readonly planned: readonly LotLine[]
}

type Buying = Pick<BoxesState, 'ask' | 'isSure' | 'isInHand'>

/** What the stations that are taken ask for; those that move with their bees have theirs. */
export function shoppingForPlaces(answer: Suggested, boxes: BoxesState): Shopping {
  const { plan, year, wish, suggestion } = answer
  const settings = settingsOf(plan)
  const needs = takenStations(answer, boxes)
    .filter(station => station.bought)
    .map(station => ({ ...station, isNew: station.new, tubeSize: sizeOf({}, settings.bees[station.bee], plan.units) }))
  const planned = lotsOf(plan, year)
  // New stations are stocked beside those that stand: what those have planned is theirs, unless they are stocked anew.
  const own = suggestion.inHand.filter(({ id }) => !boxes.left.includes(id))
  const bee = wish.bee ?? plan.bee
  const inHand = own.map(each => ({ lot: '', bee, females: each.femaleCocoons, males: each.maleCocoons }))
  const tubesInHand = sumOf(own, 'tubes')
  return shoppingOf(needs, { settings, planned, inHand, tubesInHand, setOf: wish.setOf ?? 1, buying: boxes })
}

/** What the stations that stay ask for. */
export function shoppingForStock({ plan, year, options, result }: Stocked, boxes: BoxesState): Shopping {
  const settings = settingsOf(plan)
  const needs = result.stations.map(station => {
    const season = stationSeasonOf(plan, year, station.id) ?? {}
    const tubes = Math.max(0, station.tubes - (season.tubes ?? 0))
    return { ...station, tubes, isNew: false, tubeSize: sizeOf(season, settings.bees[station.bee], plan.units) }
  })
  const planned = lotsOf(plan, year)
  const inHand = boxes.isInHand ? planned : []
  return shoppingOf(needs, { settings, planned, inHand, setOf: options.setOf ?? 1, buying: boxes })
}

type Given = {
  readonly settings: Settings
  readonly planned: readonly LotLine[]
  /** Cocoons that need not be bought. */
  readonly inHand: readonly LotLine[]
  /** Tubes likewise, all of one size. */
  readonly tubesInHand?: number
  readonly setOf: number
  readonly buying: Buying
}

function shoppingOf(
  needs: readonly Need[],
  { settings, planned, inHand, tubesInHand = 0, setOf, buying }: Given,
): Shopping {
  const prices = pricesOf(buying.ask)
  const bees = [...new Set(needs.map(({ bee }) => bee))]
  const sure = bees.map(bee => sureLine(bee, settings.bees[bee], needs, setOf))
  const cocoons = bees.flatMap((bee, b) => {
    const own = needs.filter(need => need.bee === bee)
    const has = inHand.filter(lot => lot.bee === bee)
    const females = buying.isSure ? Math.max(sure[b]!.sure, sure[b]!.cocoons) : sure[b]!.cocoons
    const males = buying.isSure ? wholeUp(females * settings.bees[bee].malesPerFemale) : sumOf(own, 'maleCocoons')
    return [
      line(`Female cocoons, ${beeTable[bee].latin}`, females - sumOf(has, 'females'), prices.femaleCocoon),
      line(`Male cocoons, ${beeTable[bee].latin}`, males - sumOf(has, 'males'), prices.maleCocoon),
    ]
  })
  const sizes = [...new Set(needs.map(({ tubeSize }) => tubeSize))]
  const tubes = sizes.map(size =>
    line(
      `Tubes, ${size}`,
      sumOf(
        needs.filter(({ tubeSize }) => tubeSize === size),
        'tubes',
      ) - tubesInHand,
      prices.tube,
    ),
  )
  const stations = line('Stations', needs.filter(({ isNew }) => isNew).length, prices.station)
  const lines = [stations, ...cocoons, ...tubes].filter(({ count }) => count > 0)
  const total = lines.reduce((sum, each) => sum + each.sum, 0)
  return { lines, total, spareShare: settings.site.spareTubes, sure, planned }
}

function line(item: string, count: number, price: number): ShoppingLine {
  return { item, count, price, sum: count * price }
}

function sumOf<K extends string>(rows: readonly Readonly<Record<K, number>>[], key: K): number {
  return rows.reduce((sum, row) => sum + row[key], 0)
}

/** All stations together: chances even out over many, so the margin is smaller than station by station. */
function sureLine(bee: BeeId, settings: BeeSettings, needs: readonly Need[], setOf: number): SureLine {
  const cocoons = sumOf(
    needs.filter(need => need.bee === bee),
    'femaleCocoons',
  )
  const share = Math.min(1, nestingShare(settings))
  const females = Math.floor(cocoons * share + 1e-9)
  const sure = females > 0 ? setOf * Math.ceil(cocoonsToBeSure(females, share, judging.sureChance) / setOf) : cocoons
  return { bee, females, share, cocoons, sure }
}

/** The size of the tubes that hang at a station, or what suits its bee. */
function sizeOf({ bore, depth }: Pick<StationSeason, 'bore' | 'depth'>, bee: BeeSettings, units: Units): string {
  const { boreMin, boreMax, depthMin } = bee
  const wide = bore === undefined ? `${boreText(boreMin, units)} to ${boreText(boreMax, units)}` : boreText(bore, units)
  const deep = depth === undefined ? `${boreText(depthMin, units)} deep or more` : `${boreText(depth, units)} deep`
  return `bore ${wide}, ${deep}`
}

/** Cocoons that the season has planned already, by lot and bee. */
export function lotsOf(plan: Plan, year: number): readonly LotLine[] {
  const lots = new Map<string, LotLine>()
  for (const { bee = plan.bee, releases = [] } of Object.values(seasonOf(plan, year)?.stations ?? {})) {
    for (const { lot = '', females, males = 0 } of releases) {
      const key = JSON.stringify([lot, bee])
      const before = lots.get(key) ?? { females: 0, males: 0 }
      lots.set(key, { lot, bee, females: before.females + females, males: before.males + males })
    }
  }
  return [...lots.values()].filter(({ females, males }) => females + males > 0).sort((a, b) => (a.lot < b.lot ? -1 : 1))
}

/** The list as a table file. */
export function shoppingCsv({ lines, total, spareShare, sure, planned }: Shopping, perArea: PerArea | null): string {
  const cents = (amount: number) => Number(amount.toFixed(2))
  return csvText([
    ['Item', 'Number', 'Price each', 'Sum'],
    ...lines.map(({ item, count, price, sum }) => [item, count, cents(price), cents(sum)]),
    ['Total', '', '', cents(total)],
    ...(perArea === null ? [] : [[`Estimate, ${perArea.per}`, '', '', cents(perArea.cost)]]),
    [''],
    ['Tubes to spare, percent on top, included', Number((100 * spareShare).toFixed(1))],
    ...sure.flatMap(({ bee, females, cocoons, sure: many }) => [
      [`Nesting females counted on, ${beeTable[bee].latin}`, females],
      ['Female cocoons, enough every other time', cocoons],
      ['Female cocoons, enough nine times in ten', many],
    ]),
    ...(planned.length === 0 ? [] : [[''], ['Planned already, lot', 'Bee', 'Female cocoons', 'Male cocoons']]),
    ...planned.map(({ lot, bee, females, males }) => [lot || 'without a lot', beeTable[bee].latin, females, males]),
  ])
}

/** The same to be pasted into a letter. */
export function shoppingText(
  { lines, total, spareShare, planned }: Shopping,
  { money, perArea }: { readonly money: (amount: number) => string; readonly perArea: PerArea | null },
): string {
  return [
    ...lines.map(({ item, count, price, sum }) => `${item}: ${count} at ${money(price)} = ${money(sum)}`),
    `Total: ${money(total)}`,
    ...(perArea === null ? [] : [`About ${money(perArea.cost)} ${perArea.per}`]),
    `Tubes include ${percent(spareShare)} to spare`,
    ...planned.map(
      ({ lot, bee, females, males }) =>
        `Planned already, ${lot === '' ? 'without a lot' : `lot ${lot}`}, ${beeTable[bee].latin}: ${females} female, ${males} male`,
    ),
  ].join('\n')
}
