import { judging } from '../data/judging-figures'
import type { BeeId } from '../data/own'
import { compose, type Edit } from '../plan/edits'
import { setStationSeason } from '../plan/edits-seasons'
import { type Plan, type Release, seasonOf } from '../plan/plan'
import type { Outcome } from '../problem'
import { fewestFemales, mostServed, type StockProblem, wholeUnits } from './fewest'
import { keptLots } from './kept-lots'
import {
  coverageBy,
  groundOf,
  nestingShare,
  type ReleaseShare,
  type SeasonGround,
  seasonGround,
  unitInput,
} from './season-ground'
import { type Cells, cellsOf, serviceMatrix } from './service'
import { assumedPrices, costOf, mostCocoons, type Prices, releasesOf, type Stock, shareOfReach, stockOf } from './stock'
import { sureCocoons } from './sure'
import { sharesOf, usualKind } from './usual-kind'

export type StockOptions = {
  /** Share of what every planting wants; the usual target unless told. */
  readonly target?: number
  /** Female cocoons are sold in sets of so many. */
  readonly setOf?: number
  /** Tubes of a station whose tubes the plan does not say; no limit unless told. */
  readonly tubes?: number
  /** Buy tubes as needed: those that hang there set no limit. */
  readonly isFree?: boolean
  readonly prices?: Prices
}

/** What a station is to be stocked with. */
export type StationStock = Stock & {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly releases: readonly Release[]
  /** Most female cocoons whose nests its tubes hold; null without a limit. */
  readonly most: number | null
  /** Female cocoons with which these females nest nine times in ten: those told are enough every other time. */
  readonly sure: number
}

/** Fewest bees for a target at the stations there are. */
export type StockResult = {
  readonly year: number
  readonly target: number
  /** Whether every planting with bloom dates reaches the target. */
  readonly reached: boolean
  /** Nesting females at all stations. */
  readonly females: number
  /** No stock that reaches as much has fewer nesting females. */
  readonly bound: number
  readonly cost: number
  readonly before: { readonly coverage: number | null }
  readonly after: { readonly coverage: number | null }
  readonly stations: readonly StationStock[]
  readonly plantings: readonly {
    readonly id: string
    readonly name: string
    /** As it is planned now; null without bloom dates. */
    readonly before: number | null
    /** With this stock; null without bloom dates. */
    readonly coverage: number | null
    /** Females short of the target (not of all that is wanted). */
    readonly shortBy: number | null
    /** Coverage with every station full; where stations have no limit, of the plants in reach of one. */
    readonly most: number | null
    /** This planting keeps the target from being reached. */
    readonly isStopping: boolean
  }[]
}

/** More pairs of points and stations than this, and points are taken together in cells. */
const mostPairs = 4e6

/** Fewest nesting females for a target at fixed stations and release dates (section 8 of the model). */
export function stockFor(plan: Plan, year: number, options: StockOptions = {}): Outcome<StockResult> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  return { ok: true, value: stocked(ground.value, options), problems: ground.problems }
}

/** A stock as one edit. Cocoons that are planned for the same day keep their lot. */
export function acceptStock({ year, stations }: Pick<StockResult, 'year' | 'stations'>): Edit {
  const edits = stations.map(({ id, bee, releases }): Edit => {
    const set = (planned: readonly Release[] | undefined) => {
      const kept = keptLots(releases, planned)
      return setStationSeason(year, id, { bee, releases: kept.length > 0 ? kept : undefined })
    }
    return { ...set(undefined), apply: plan => set(seasonOf(plan, year)?.stations?.[id]?.releases).apply(plan) }
  })
  return compose('Accept the suggested stock', edits)
}

/** A season's stations as columns of the programme. */
type Standing = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly shares: readonly ReleaseShare[]
  readonly share: number
  /** Female cocoons at most. */
  readonly most: number
  readonly input: ReturnType<typeof unitInput>
}

function stocked(ground: SeasonGround, options: StockOptions): StockResult {
  const { target = judging.usualTarget, setOf = 1, prices = assumedPrices } = options
  const { settings } = ground
  const stations = standingIn(ground, options)
  const { problem, groundOf: groups } = problemOf(ground, stations, options)
  const most = mostServed(problem)
  const wanted = wantedBy(problem)
  // Where stations have no limit, the last of what they reach is not asked for.
  const share = isUnlimited(problem) ? shareOfReach : 1
  const need = wanted.map((all, g) => (most[g]! >= target * all * (1 - 1e-9) ? target * all : share * most[g]!))
  const exact = fewestFemales({ ...problem, need })
  if (exact === null) throw new RangeError('no stock for needs that full stations meet')
  const unit = stations.map(station => setOf * Math.max(station.share, 1e-12))
  const { cocoons, changed } = wholeStock(ground, stations, { ...problem, need }, { exact: exact.females, unit, setOf })
  const after = seasonGround(changed, ground.year)
  const stock = stations.map((station, s) =>
    rowOf(station, stockOf(cocoons[s]!, settings.bees[station.bee], settings.site)),
  )
  const plantings = plantingRows(ground, after, groups, { target, most, wanted })
  return {
    year: ground.year,
    target,
    reached: plantings.every(({ shortBy }) => shortBy === null || shortBy === 0),
    females: stock.reduce((sum, { females }) => sum + females, 0),
    bound: exact.bound,
    cost: stock.reduce((sum, each) => sum + costOf(each, prices), 0),
    before: { coverage: coverageOf(ground) },
    after: { coverage: coverageOf(after) },
    stations: stock,
    plantings,
  }
}

function standingIn(ground: SeasonGround, options: StockOptions): Standing[] {
  const { settings } = ground
  return ground.supplies.map(({ id, name, bee, season, input: { x, y } }) => {
    const own = sharesOf(season.releases ?? [])
    const kind = own.length > 0 ? { bee, releases: own } : usualKind(ground, bee, { x, y })
    const tubes = options.isFree === true ? undefined : (season.tubes ?? options.tubes)
    const most =
      tubes === undefined
        ? Number.POSITIVE_INFINITY
        : mostCocoons(tubes, settings.bees[bee], settings.site, options.setOf ?? 1)
    const share = nestingShare(settings.bees[bee])
    return { id, name, bee, shares: kind.releases, share, most, input: { ...unitInput(ground, kind), x, y } }
  })
}

function problemOf(ground: SeasonGround, stations: readonly Standing[], { setOf = 1 }: StockOptions) {
  const pairs = ground.field.x.length * stations.length
  const side = pairs > mostPairs ? (stations[0]?.input.kernel.alpha ?? 0) / 5 : 0
  const cells: Cells = cellsOf(ground, coverageBy(ground, []), side)
  const sites = stations.map(({ input }) => ({ x: input.x, y: input.y, unit: input }))
  const grounds = [...new Set(cells.ground)]
  const groupOf = new Map(grounds.map((g, i) => [g, i]))
  const problem: StockProblem = {
    services: serviceMatrix(ground, cells, sites),
    wanted: cells.wanted,
    base: cells.base,
    group: cells.ground.map(g => groupOf.get(g)!),
    groups: grounds.length,
    need: new Float64Array(grounds.length),
    most: stations.map(({ most, share }) => (share > 0 ? setOf * Math.floor(most / setOf) * share : 0)),
    cost: stations.map(() => 1),
  }
  return { problem, groundOf: grounds }
}

function isUnlimited({ most }: StockProblem): boolean {
  return most.some(limit => !Number.isFinite(limit))
}

function wantedBy({ wanted, group, groups }: StockProblem): Float64Array {
  const sums = new Float64Array(groups)
  wanted.forEach((value, i) => {
    sums[group[i]!]! += value
  })
  return sums
}

/**
 * Whole cocoons, checked with the coverage of the plan as it would be: cells and cocoons shared among release dates
 * leave small differences, so what a planting is still short of is asked for on top until the target holds.
 */
function wholeStock(
  ground: SeasonGround,
  stations: readonly Standing[],
  problem: StockProblem,
  { exact, unit, setOf }: { readonly exact: Float64Array; readonly unit: readonly number[]; readonly setOf: number },
): { readonly cocoons: readonly number[]; readonly changed: Plan } {
  const { settings, plan, year } = ground
  const planned = (units: readonly number[]) => {
    const cocoons = units.map(count => count * setOf)
    const rows = stations.map((station, s) =>
      rowOf(station, stockOf(cocoons[s]!, settings.bees[station.bee], settings.site)),
    )
    return { cocoons, changed: acceptStock({ year, stations: rows }).apply(plan) }
  }
  const full = problem.most.map((limit, s) => Math.floor(limit / unit[s]! + 1e-9))
  const groundIndex = plantingsAsked(ground)
  let need = problem.need
  let answer = planned(wholeUnits({ ...problem, need }, exact, unit) ?? full)
  for (let round = 0; round < 8; round += 1) {
    const { coverage } = seasonGround(answer.changed, year)
    const short = problem.need.map((least, g) => Math.max(0, least - coverage.totalsOf(groundIndex[g]!).served))
    if (short.every((value, g) => value <= 1e-9 * problem.need[g]!)) break
    need = need.map((least, g) => least + short[g]! * (1 + round))
    const units = wholeUnits({ ...problem, need }, exact, unit)
    if (units === null) break
    answer = planned(units)
  }
  return answer
}

/** Plantings that want bees and bloom, in the order in which cells are made of them. */
function plantingsAsked({ demand }: SeasonGround): number[] {
  return demand.grounds.flatMap(({ group, points }, g) =>
    !group.isForage && group.bloom !== null && group.wanted > 0 && points.length > 0 ? [g] : [],
  )
}

function rowOf({ id, name, bee, shares, share, most }: Standing, stock: Stock): StationStock {
  const releases = releasesOf(stock, shares)
  const sure = sureCocoons(stock, share)
  return { id, name, bee, ...stock, releases, most: Number.isFinite(most) ? most : null, sure }
}

function plantingRows(
  now: SeasonGround,
  after: SeasonGround,
  groups: readonly number[],
  { target, most, wanted }: { readonly target: number; readonly most: Float64Array; readonly wanted: Float64Array },
): StockResult['plantings'] {
  const { demand, plantings, coverage } = after
  return demand.grounds.slice(0, plantings).map(({ id, name }, g) => {
    const group = groups.indexOf(g)
    if (group < 0) return { id, name, before: null, coverage: null, shortBy: null, most: null, isStopping: false }
    const totals = coverage.totalsOf(g)
    // A planting that has all but a billionth of its target has it.
    const short = target * totals.wanted - totals.served
    const shortBy = short > 1e-6 * totals.wanted ? short : 0
    const share = Math.min(1, most[group]! / wanted[group]!)
    return {
      id,
      name,
      before: Math.min(1, now.coverage.totalsOf(g).served / totals.wanted),
      coverage: Math.min(1, totals.served / totals.wanted),
      shortBy,
      most: share,
      isStopping: shortBy > 0,
    }
  })
}

/** Coverage of all plantings whose bloom is known. */
function coverageOf({ coverage, demand, plantings }: SeasonGround): number | null {
  let wanted = 0
  let served = 0
  for (let g = 0; g < plantings; g += 1) {
    if (demand.grounds[g]!.group.bloom === null) continue
    const totals = coverage.totalsOf(g)
    wanted += totals.wanted
    served += totals.served
  }
  return wanted > 0 ? Math.min(1, served / wanted) : null
}
