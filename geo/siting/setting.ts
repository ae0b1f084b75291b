import type { Coverage, StationInput } from '../coverage/coverage'
import { bestRelease } from '../flight/flight'
import type { Metres } from '../space/plane'
import { dateOfDay } from '../time/day'
import { type CandidateSite, type Candidates, candidatesOf, defaultSpacing, leastPitch } from './candidates'
import type { SitingProblem } from './objective'
import type { SuggestOptions } from './question'
import { coverageBy, type ReleaseShare, type SeasonGround, type StationKind, unitInput } from './season-ground'
import { type Cells, cellsOf, type ServiceMatrix, serviceMatrix } from './service'

/** A station that is to be placed: new, or one that moves with the stock it has. */
export type Placing = {
  /** Id of the station that moves; null for a new one. */
  readonly moves: string | null
  readonly kind: StationKind
  readonly unit: StationInput
}

/** A question of siting laid out: the ground, what stays, what is to be placed and where it may stand. */
export type Setting = {
  readonly ground: SeasonGround
  readonly options: SuggestOptions
  /** Coverage by the stations that stay. */
  readonly kept: Coverage
  /** The first is the new station; one for each that moves follows. */
  readonly placings: readonly Placing[]
  readonly candidates: Candidates
  /** Places so far; finer ones are added as the search closes in. */
  readonly sites: CandidateSite[]
  readonly cells: Cells
  /** Weight of each cell's planting. */
  readonly weight: Float64Array
  /** Service by one female: for each placing, of all sites. */
  readonly services: ServiceMatrix[]
}

/** More pairs of points and places than this, and points are taken together in cells. */
const mostPairs = 1.5e6

export function settingOf(ground: SeasonGround, options: SuggestOptions): Setting {
  const roleOf = (id: string) => options.roles?.[id] ?? 'keep'
  const stays = ground.supplies.filter(({ id }) => roleOf(id) === 'keep')
  const moving = ground.supplies.filter(({ id, input }) => roleOf(id) === 'move' && input.females > 0)
  const kept = coverageBy(
    ground,
    stays.map(({ input }) => input),
  )
  const fresh = newKind(ground, options)
  const placings = [
    { moves: null, kind: fresh, unit: unitInput(ground, fresh) },
    ...moving.map(({ id, bee, season }) => {
      const kind = { bee, releases: sharesOf(season.releases ?? []) }
      return { moves: id, kind, unit: unitInput(ground, kind) }
    }),
  ]
  const candidates = candidatesOf(
    ground,
    stays.map(({ input }) => input),
    options.places,
  )
  // Where a station stands now it may stand on.
  const standing = moving.map(({ id, input: { x, y } }) => ({
    ...candidates.describe({ x, y, source: 'station' }, id),
    x,
    y,
  }))
  const sites = [...standing, ...candidates.sites]
  const side = ground.field.x.length * sites.length > mostPairs ? placings[0]!.unit.kernel.alpha / 5 : 0
  const cells = cellsOf(ground, kept, side)
  const weight = Float64Array.from(cells.ground, g => options.weights?.[ground.demand.grounds[g]!.id] ?? 1)
  const services = placings.map(({ unit }) =>
    serviceMatrix(
      ground,
      cells,
      sites.map(({ x, y }) => ({ x, y, unit })),
    ),
  )
  return { ground, options, kept, placings, candidates, sites, cells, weight, services }
}

/** Adds places to a setting. */
export function addSites(setting: Setting, more: readonly CandidateSite[]): void {
  const { ground, cells, placings, services, sites } = setting
  placings.forEach(({ unit }, p) => {
    services[p] = joined(
      services[p]!,
      serviceMatrix(
        ground,
        cells,
        more.map(({ x, y }) => ({ x, y, unit })),
      ),
    )
  })
  sites.push(...more)
}

/** Finer places round chosen ones, twice finer each time; false where there are none left to add. */
export function refine(setting: Setting, chosen: readonly Metres[], round: number): boolean {
  const { pitch } = setting.candidates
  const radius = Math.max(leastPitch, pitch / 4 ** round)
  const step = Math.max(leastPitch, radius / 4)
  if (pitch === 0 || (round > 0 && radius <= leastPitch)) return false
  const more = setting.candidates.around(chosen, radius, step)
  if (more.length > 0) addSites(setting, more)
  return more.length > 0
}

/**
 * The plain matrix: a column for each placing at each place, with `females[p]` nesting females of placing p. Columns of
 * placing p at place s stand at `p x places + s`.
 */
export function matrixOf(setting: Setting, females: readonly number[], count: readonly number[]): SitingProblem {
  const { services, cells, weight, sites, options } = setting
  let all = scaled(services[0]!, females[0]!)
  for (let p = 1; p < services.length; p += 1) all = joined(all, scaled(services[p]!, females[p]!))
  const spacing = options.places?.spacing ?? defaultSpacing
  const near = nearSites(sites, spacing)
  const clashes = services.flatMap(() =>
    near.map((of, site) =>
      services.flatMap((_, p) => of.map(other => p * sites.length + other).concat(p * sites.length + site)),
    ),
  )
  // A column does not clash with itself.
  const others = clashes.map((of, column) => Uint32Array.from(of.filter(other => other !== column)))
  return {
    wanted: cells.wanted,
    base: cells.base,
    weight,
    ...all,
    kind: Uint16Array.from({ length: all.start.length - 1 }, (_, column) => Math.floor(column / sites.length)),
    count,
    clashes: others,
  }
}

function nearSites(sites: readonly Metres[], spacing: number): number[][] {
  const limit = (spacing - 1e-6) ** 2
  return sites.map((a, i) =>
    sites.flatMap((b, j) => (i !== j && spacing > 0 && (a.x - b.x) ** 2 + (a.y - b.y) ** 2 < limit ? [j] : [])),
  )
}

function scaled({ start, point, service }: ServiceMatrix, by: number): ServiceMatrix {
  return { start, point, service: service.map(value => value * by) }
}

function joined(a: ServiceMatrix, b: ServiceMatrix): ServiceMatrix {
  const start = new Uint32Array(a.start.length + b.start.length - 1)
  start.set(a.start)
  b.start.forEach((value, i) => {
    start[a.start.length - 1 + i] = a.point.length + value
  })
  const point = new Uint32Array(a.point.length + b.point.length)
  point.set(a.point)
  point.set(b.point, a.point.length)
  const service = new Float64Array(point.length)
  service.set(a.service)
  service.set(b.service, a.service.length)
  return { start, point, service }
}

/** Bee and release dates of new stations. */
function newKind(ground: SeasonGround, options: SuggestOptions): StationKind {
  const bee = options.bee ?? ground.plan.bee
  if (options.releases !== undefined && options.releases.length > 0) return { bee, releases: options.releases }
  const same = ground.supplies.filter(supply => supply.bee === bee).flatMap(({ season }) => season.releases ?? [])
  const releases = sharesOf(same)
  return { bee, releases: releases.length > 0 ? releases : [{ date: bestDate(ground, bee), share: 1 }] }
}

/** Shares of the cocoons that go out on each date. */
export function sharesOf(releases: readonly { readonly date: string; readonly females: number }[]): ReleaseShare[] {
  const byDate = new Map<string, number>()
  for (const { date, females } of releases) {
    if (females > 0) byDate.set(date, (byDate.get(date) ?? 0) + females)
  }
  const total = [...byDate.values()].reduce((sum, females) => sum + females, 0)
  return [...byDate.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([date, females]) => ({ date, share: females / total }))
}

/** The day on which one release meets the blooms best, each bloom weighed by what its plantings want. */
function bestDate({ demand, settings, year }: SeasonGround, bee: StationKind['bee']): string {
  const wanted = demand.blooms.map(() => 0)
  for (const { group, points } of demand.grounds) {
    if (group.bloom !== null) wanted[group.bloom]! += (group.wanted * points.length) / 2
  }
  const total = wanted.reduce((sum, each) => sum + each, 0)
  if (!(total > 0)) return dateOfDay(90, year)
  const from = Math.min(...demand.blooms.map(({ weight }) => weight.start))
  const to = Math.max(...demand.blooms.map(({ weight }) => weight.start + weight.values.length))
  const values = new Float64Array(to - from)
  demand.blooms.forEach(({ weight }, bloom) => {
    weight.values.forEach((value, i) => {
      values[weight.start + i - from]! += (value * wanted[bloom]!) / total
    })
  })
  return dateOfDay(bestRelease({ start: from, values }, settings.bees[bee]).day, year)
}
