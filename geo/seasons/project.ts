import type { BeeParameterName } from '../data/bees'
import { judging } from '../data/judging-figures'
import type { BeeId } from '../data/own'
import { type BeeSettings, settingsFor } from '../data/settings'
import { type Plan, type Season, seasonOf } from '../plan/plan'
import type { Outcome } from '../problem'
import { Model, modelOf } from '../report/model'
import { tubesFor } from '../stocking/tubes'
import { type Harvest, type StationYear, stationYears } from './record'
import { beeSpreads, type End, ends, jointValues, type Spread, spreadOf } from './spread'
import { withStockTimes } from './year'

export type Care = 'takenIn' | 'outside'

export type ProjectOptions = {
  /**
   * Cocoons taken in, sorted, kept cold and set out at all stations as in the season before; or nests left where they are,
   * each station living on what it raised. Without it: taken in.
   */
  readonly care?: Care
  /** Share of each harvest that is kept, the rest being given away; without it as in the season's own share-out, else all. */
  readonly shareKept?: number
  /** Coverage at which the stock is said to carry the orchard. */
  readonly target?: number
}

export type ProjectedSeason = {
  readonly year: number
  /** Cocoons of both sexes set out, or left in the nests. */
  readonly cocoons: Spread
  /** Females that nest. */
  readonly females: Spread
  /** Tubes that they fill. */
  readonly tubes: Spread
  /** Orchard's coverage by these females, bloom as in the first season; its own uncertainty is not in it. */
  readonly coverage: Spread | null
  /** Tubes to add at each station for the middle of the three, so that none go short. */
  readonly tubesToAdd: readonly { readonly id: string; readonly name: string; readonly tubes: number }[]
  /** Whether the grower's counts stand in place of computed figures for this season. */
  readonly isCounted: boolean
}

export type Projection = {
  readonly from: number
  readonly care: Care
  readonly shareKept: number
  readonly target: number
  readonly seasons: readonly ProjectedSeason[]
  /** First season from which on coverage reaches the target; null = not within these. */
  readonly carries: { readonly low: number | null; readonly mid: number | null; readonly high: number | null }
}

export const mostSeasons = 10

/** Figures that a season's growth is the product of; `keeping` by the care taken. */
const ofFlight = ['emergence', 'establishment'] as const
const ofNests = ['tubesUsedPerFemale', 'cellsPerTube', 'femaleShare'] as const
const keepingOf = { outside: 'keepingOutside', takenIn: 'keepingTakenIn' } as const satisfies Record<
  Care,
  BeeParameterName
>

/** Female cocoons and cocoons of both sexes, by station. */
type Stock = ReadonlyMap<string, { readonly females: number; readonly cocoons: number }>

/**
 * The seasons after `year`: cocoons, females, filled tubes and coverage, each as low, mid and high. Tubes filled are at
 * most those there are. The low and the high way take all figures of growth so far towards their ends that their
 * product errs as independent figures do, and hold on to them in every season: what is not known about these bees stays
 * unknown. A year in which everything goes well at once lies above the high way (Bosch & Kemp 1999: 5.44 daughters a
 * female in sweet cherry), and no season should be planned on it. A season's counts in the plan (capped tubes, cocoons
 * found, what was set out) take the place of computed figures, and from there the ways start anew, closer together.
 */
export function project(plan: Plan, year: number, seasons: number, options: ProjectOptions = {}): Outcome<Projection> {
  if (!(Number.isInteger(seasons) && seasons >= 1 && seasons <= mostSeasons)) {
    throw new RangeError(`cannot project ${seasons} seasons`)
  }
  const model = modelOf(plan, year)
  if (!model.ok) return model
  const { care = 'takenIn', target = judging.usualTarget } = options
  const shareKept = options.shareKept ?? keptOf(plan, year)
  const ways = Object.fromEntries(
    ends.map(end => [end, wayOf(plan, year, seasons, { care, shareKept, end })]),
  ) as unknown as Readonly<Record<End, readonly Step[]>>
  const rows = Array.from({ length: seasons }, (_, i): ProjectedSeason => {
    const figure = (of: (step: Step) => number): Spread => ordered(spreadOf(end => of(ways[end][i]!)))
    const coverages = ends.map(end => ways[end][i]!.coverage)
    const mid = ways.mid[i]!
    return {
      year: year + 1 + i,
      cocoons: figure(step => sumOf(step.stations, each => each.cocoons)),
      females: figure(step => sumOf(step.stations, each => each.nesting)),
      tubes: figure(step => sumOf(step.stations, each => each.filled)),
      coverage: coverages.every(each => each !== null) ? figure(step => step.coverage!) : null,
      tubesToAdd: mid.stations.flatMap(({ id, name, toAdd }) => (toAdd > 0 ? [{ id, name, tubes: toAdd }] : [])),
      isCounted: mid.isCounted,
    }
  })
  const carriesFrom = (end: End) => {
    const first = rows.findIndex((_, i) =>
      rows.slice(i).every(row => row.coverage !== null && row.coverage[end] >= target),
    )
    return first < 0 ? null : rows[first]!.year
  }
  const value = { from: year, care, shareKept, target, seasons: rows, carries: spreadOfYears(carriesFrom) }
  return { ok: true, value, problems: model.problems }
}

function spreadOfYears(of: (end: End) => number | null): Projection['carries'] {
  return { low: of('low'), mid: of('mid'), high: of('high') }
}

/** Share of a season's cocoons that was not given away; 1 where that cannot be told. */
function keptOf(plan: Plan, year: number): number {
  const found = stationYears(plan, year).reduce(
    (sum, { daughters, sons }) => sum + (daughters?.count ?? 0) + (sons?.count ?? 0),
    0,
  )
  const given = (seasonOf(plan, year)?.shareOut?.shares ?? []).reduce((sum, { cocoons }) => sum + (cocoons ?? 0), 0)
  return found > 0 ? Math.max(0, 1 - given / found) : 1
}

type StationStep = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly females: number
  readonly cocoons: number
  readonly nesting: number
  readonly filled: number
  readonly toAdd: number
  /** Live female cocoons, and cocoons of both sexes, in the spring after. */
  readonly daughters: number
  readonly offspring: number
}
type Step = { readonly stations: readonly StationStep[]; readonly coverage: number | null; readonly isCounted: boolean }

type Way = { readonly care: Care; readonly shareKept: number; readonly end: End }

function wayOf(plan: Plan, year: number, seasons: number, way: Way): readonly Step[] {
  // The season whose places, batches, tubes and bloom stand for the next: the last one that was counted.
  let pattern = seasonOf(plan, year)!
  const steps: Step[] = [stepOf(plan, pattern, null, way)]
  for (let i = 1; i <= seasons; i += 1) {
    const inPlan = seasonOf(plan, year + i)
    const isCounted = inPlan !== undefined && stationYears(plan, inPlan.year).some(isCountedAt)
    if (isCounted) pattern = inPlan
    steps.push(stepOf(plan, pattern, isCounted ? null : nextStock(plan, pattern, steps.at(-1)!, way), way))
  }
  return steps.slice(1)
}

function isCountedAt({ capped, daughters }: StationYear): boolean {
  return capped !== null || daughters !== null
}

/** One season: of the stock given, or, where it is null, of what `season` itself set out and counted. */
function stepOf(plan: Plan, season: Season, stock: Stock | null, { care, end }: Way): Step {
  const names = [...ofFlight, ...ofNests, keepingOf[care]]
  const spreads = beeSpreads(plan, names)
  const { site, bees } = settingsFor(plan)
  const counted = stationYears(plan, season.year)
  const stations = counted.map((station): StationStep => {
    const { bee } = station
    const values = jointValues(names, at => spreads(bee, at), end) as Readonly<Record<BeeParameterName, number>>
    const mid: BeeSettings = bees[bee]
    const own = stock === null ? station : null
    const females = stock === null ? station.released.females : (stock.get(station.id)?.females ?? 0)
    const cocoons =
      stock === null
        ? females + (station.released.males ?? females * mid.malesPerFemale)
        : (stock.get(station.id)?.cocoons ?? 0)
    const emerged = females * values.emergence * values.establishment
    const nesting = own?.nested ? own.nested[end] : emerged
    const wouldFill = nesting * values.tubesUsedPerFemale
    const filled = own?.capped ?? Math.min(station.tubes ?? wouldFill, wouldFill)
    const alive = filled * values.cellsPerTube * values[keepingOf[care]]
    const computed = alive * values.femaleShare
    const daughters = own ? countedAt(own.daughters, end, computed) : computed
    const sons = own ? countedAt(own.sons, end, alive - computed) : alive - computed
    const wanted = tubesFor(nesting, mid.tubesPerFemale, site.spareTubes)
    return {
      id: station.id,
      name: station.name,
      bee,
      females,
      cocoons,
      nesting,
      filled,
      toAdd: station.tubes === null ? 0 : Math.max(0, wanted - station.tubes),
      daughters,
      offspring: daughters + sons,
    }
  })
  return { stations, isCounted: stock === null, coverage: coverageOf(plan, season, stations) }
}

/** What was counted; where an end of it is not known, the computed end, no nearer than the count itself. */
function countedAt(harvest: Harvest | null, end: End, computed: number): number {
  if (harvest === null) return computed
  if (end === 'mid') return harvest.count
  const found = harvest[end]
  if (found !== null) return found
  return end === 'low' ? Math.min(harvest.count, computed) : Math.max(harvest.count, computed)
}

/** What is set out next: each station's own brood, or, once taken in, all of a bee's shared out as this season's were. */
function nextStock(plan: Plan, pattern: Season, before: Step, { care, shareKept }: Way): Stock {
  if (care === 'outside') {
    return new Map(
      before.stations.map(({ id, daughters, offspring }) => [id, { females: daughters, cocoons: offspring }]),
    )
  }
  const places = stationYears(plan, pattern.year)
  const stock = new Map<string, { females: number; cocoons: number }>()
  for (const bee of new Set(before.stations.map(each => each.bee))) {
    const raised = before.stations.filter(each => each.bee === bee)
    const at = places.filter(each => each.bee === bee)
    const released = sumOf(at, each => each.released.females)
    for (const { id, released: own } of at) {
      const share = released > 0 ? own.females / released : 1 / at.length
      stock.set(id, {
        females: shareKept * share * sumOf(raised, each => each.daughters),
        cocoons: shareKept * share * sumOf(raised, each => each.offspring),
      })
    }
  }
  return stock
}

/** Coverage of the season with these females at its stations, in the batches that it has there. */
function coverageOf(plan: Plan, { year }: Season, stations: readonly StationStep[]): number | null {
  const { bees } = settingsFor(plan)
  const nesting = new Map(stations.map(each => [each.id, each.nesting]))
  const factors = stationYears(plan, year).flatMap(({ id, bee, released }) => {
    const planned = released.females * bees[bee].emergence * bees[bee].establishment
    return planned > 0 ? [[id, (nesting.get(id) ?? 0) / planned] as const] : []
  })
  return new Model(withStockTimes(plan, year, new Map(factors)), year, []).report({ withLimits: false }).orchard
    .coverage
}

/** Low and high may change places where tubes are full: more tubes filled by each female leave room for fewer of them. */
function ordered({ low, mid, high }: Spread): Spread {
  return { low: Math.min(low, mid, high), mid, high: Math.max(low, mid, high) }
}

function sumOf<T>(entries: readonly T[], of: (entry: T) => number): number {
  return entries.reduce((sum, entry) => sum + of(entry), 0)
}
