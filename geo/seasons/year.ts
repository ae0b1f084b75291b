import { type Plan, seasonOf } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { Model, modelOf } from '../report/model'
import type { Report } from '../report/report'
import type { Prices } from '../stocking/stock'
import { usageOf } from './mixed-stock'
import { type StationYear, stationYears } from './record'
import { type End, type Spread, spreadOf } from './spread'

/** Sums over the stations that were counted; null where none was. */
export type OrchardYear = {
  /** Stations in use, those whose capped tubes were counted, and those whose nests were opened. */
  readonly stations: number
  readonly counted: number
  readonly opened: number
  /** Female cocoons set out at all stations. */
  readonly released: number
  readonly capped: number | null
  readonly nested: Spread | null
  /** Of the females set out at the stations that were counted. */
  readonly establishment: Spread | null
  readonly cellsPerTube: number | null
  readonly femaleShare: number | null
  readonly lossShare: number | null
  readonly losses: Readonly<Record<string, number>> | null
  readonly daughters: number | null
  readonly sons: number | null
  /** Daughters per female set out, at the stations that were opened. */
  readonly return: number | null
  /** Cocoons given away, and those left of all that were found; null where either is not known. */
  readonly givenAway: number | null
  readonly stockLeft: number | null
}

export type YearRecord = {
  readonly year: number
  readonly stations: readonly StationYear[]
  readonly orchard: OrchardYear
  /** Coverage by the females that the plan reckons with, and by those that really nested; null where nothing was counted. */
  readonly coverage: { readonly planned: number | null; readonly found: Spread | null }
  /** Money for each hectare covered as planned, by the prices given; null where they or the coverage are missing. */
  readonly costPerCoveredHectare: number | null
}

/** What a season's counts say, beside what was planned. `prices` as typed; nothing is assumed. */
export function yearRecord(plan: Plan, year: number, { prices }: { prices?: Prices } = {}): Outcome<YearRecord> {
  const model = modelOf(plan, year)
  if (!model.ok) return model
  const report = model.value.report({ withLimits: false })
  const stations = stationYears(plan, year)
  const value = {
    year,
    stations,
    orchard: orchardYear(plan, year, stations),
    coverage: { planned: report.orchard.coverage, found: foundCoverage(plan, year, stations, report) },
    costPerCoveredHectare: prices === undefined ? null : costPerHectare(stations, report, prices),
  }
  return { ok: true, value, problems: [...report.problems, ...shareOutProblems(value)] }
}

function shareOutProblems({ year, orchard: { givenAway, daughters, sons } }: YearRecord): readonly Problem[] {
  if (givenAway === null || daughters === null || sons === null) return []
  const [given, found] = [givenAway, Math.round(daughters + sons)]
  return given > found ? [{ code: 'share-out-over', severity: 'warning', at: '', values: { year, given, found } }] : []
}

export function orchardYear(plan: Plan, year: number, stations: readonly StationYear[]): OrchardYear {
  const season = seasonOf(plan, year)
  const total = (of: (station: StationYear) => number | null, from = stations): number | null => {
    const known = from.map(of).filter(value => value !== null)
    return known.length > 0 ? known.reduce((sum, value) => sum + value, 0) : null
  }
  const counted = stations.filter(({ nested }) => nested !== null)
  const opened = stations.filter(({ daughters }) => daughters !== null)
  const released = (of: readonly StationYear[]) => of.reduce((sum, station) => sum + station.released.females, 0)
  const nested = counted.length > 0 ? spreadOf(end => total(station => station.nested![end], counted)!) : null
  const ratio = (part: (station: StationYear) => number | null, whole: (station: StationYear) => number | null) => {
    const both = stations.filter(station => part(station) !== null && whole(station) !== null)
    const sum = total(whole, both)
    return sum ? total(part, both)! / sum : null
  }
  const daughters = total(station => station.daughters?.count ?? null)
  const sons = total(station => station.sons?.count ?? null)
  const givenAway = givenAwayOf(season?.shareOut)
  const left = daughters !== null && sons !== null && givenAway !== null ? daughters + sons - givenAway : null
  const losses: Record<string, number> = {}
  for (const station of stations) {
    for (const [cause, lost] of Object.entries(station.losses ?? {})) losses[cause] = (losses[cause] ?? 0) + lost
  }
  return {
    stations: stations.length,
    counted: counted.length,
    opened: opened.length,
    released: released(stations),
    capped: total(station => station.capped),
    nested,
    establishment: nested && released(counted) > 0 ? spreadOf(end => nested[end] / released(counted)) : null,
    cellsPerTube: ratio(cellsOf, station => (cellsOf(station) === null ? null : station.tubesOpened)),
    femaleShare: ratio(
      station => station.daughters?.count ?? null,
      ({ daughters: d, sons: s }) => (d && s ? d.count + s.count : null),
    ),
    lossShare: ratio(
      ({ lossShare }) => lossShare && lossShare.share * lossShare.cells,
      ({ lossShare }) => lossShare?.cells ?? null,
    ),
    losses: Object.keys(losses).length > 0 ? losses : null,
    daughters,
    sons,
    return: ratio(
      station => station.daughters?.count ?? null,
      station => (station.daughters && station.released.females > 0 ? station.released.females : null),
    ),
    givenAway,
    // More given away than found: one of the two is wrong.
    stockLeft: left !== null && left >= 0 ? left : null,
  }
}

function cellsOf({ cellsPerTube, tubesOpened }: StationYear): number | null {
  return cellsPerTube === null || tubesOpened === null ? null : cellsPerTube * tubesOpened
}

/** Cocoons given away: nothing where nothing is written down, null where a share was not counted. */
function givenAwayOf(shareOut: NonNullable<Plan['seasons'][number]['shareOut']> | undefined): number | null {
  if (shareOut === undefined) return 0
  return shareOut.shares.reduce<number | null>(
    (sum, { cocoons }) => (sum === null || typeof cocoons !== 'number' ? null : sum + cocoons),
    0,
  )
}

/** Coverage with the females that really nested in place of those planned, where they were counted. */
export function foundCoverage(
  plan: Plan,
  year: number,
  stations: readonly StationYear[],
  report: Report,
): Spread | null {
  const planned = new Map(report.stations.map(({ id, females }) => [id, females]))
  const isCounted = ({ id, nested }: StationYear) => nested !== null && (planned.get(id) ?? 0) > 0
  if (!stations.some(isCounted)) return null
  const coverageAt = (end: End): number | null => {
    const factors = new Map(stations.filter(isCounted).map(({ id, nested }) => [id, nested![end] / planned.get(id)!]))
    return new Model(withStockTimes(plan, year, factors), year, []).report({ withLimits: false }).orchard.coverage
  }
  const [low, mid, high] = [coverageAt('low'), coverageAt('mid'), coverageAt('high')]
  return low === null || mid === null || high === null ? null : { low, mid, high }
}

/** The plan with the female cocoons of a season's stations times a factor each; for computing, not for keeping. */
export function withStockTimes(plan: Plan, year: number, factors: ReadonlyMap<string, number>): Plan {
  const season = seasonOf(plan, year)!
  const entries = Object.keys(season.stations ?? {}).map(id => {
    const use = usageOf(season, id)
    const factor = factors.get(id)
    if (factor === undefined) return [id, use] as const
    const releases = (use.releases ?? []).map(release => ({ ...release, females: release.females * factor }))
    return [id, { ...use, releases }] as const
  })
  const changed = { ...season, stations: Object.fromEntries(entries) }
  return { ...plan, seasons: plan.seasons.map(each => (each === season ? changed : each)) }
}

function costPerHectare(stations: readonly StationYear[], report: Report, prices: Prices): number | null {
  const covered = report.plantings.reduce((sum, { area, coverage }) => sum + area * (coverage ?? 0), 0) / 10_000
  if (!(covered > 0)) return null
  const cost = stations.reduce((sum, { released, tubes }) => {
    const cocoons = released.females * prices.femaleCocoon + (released.males ?? 0) * prices.maleCocoon
    return sum + prices.station + cocoons + (tubes ?? 0) * prices.tube
  }, 0)
  return cost / covered
}
