import type { Coverage, StationInput } from '../coverage/coverage'
import type { Metres } from '../space/plane'
import { coverageBy, type SeasonGround, type StationKind, unitInput } from '../stocking/season-ground'
import { type Cells, cellsOf, type ServiceMatrix, serviceMatrix } from '../stocking/service'
import { sharesOf, usualKind } from '../stocking/usual-kind'
import { type CandidateSite, type Candidates, candidatesOf, defaultSpacing, leastPitch } from './candidates'
import type { SitingProblem } from './objective'
import type { SuggestOptions } from './question'

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
  const fresh = usualKind(ground, options.bee ?? ground.plan.bee, options.releases)
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
  const near = clashesOf(sites, spacing)
  const clashes = services.flatMap((_, own) =>
    near.map((of, site) => {
      // At its own place a column of another placing clashes too; with itself it does not.
      const here = services.flatMap((__, p) => (p === own ? [] : [p * sites.length + site]))
      return [...services.flatMap((__, p) => of.map(other => p * sites.length + other)), ...here]
    }),
  )
  return {
    wanted: cells.wanted,
    base: cells.base,
    weight,
    ...all,
    kind: Uint16Array.from({ length: all.start.length - 1 }, (_, column) => Math.floor(column / sites.length)),
    count,
    clashes,
  }
}

/** For each place, those nearer to it than a spacing. */
export function clashesOf(sites: readonly Metres[], spacing: number): number[][] {
  const limit = (spacing - 1e-6) ** 2
  const clashes: number[][] = sites.map(() => [])
  if (!(spacing > 0)) return clashes
  for (let i = 0; i < sites.length; i += 1) {
    const { x, y } = sites[i]!
    for (let j = 0; j < i; j += 1) {
      if ((sites[j]!.x - x) ** 2 + (sites[j]!.y - y) ** 2 >= limit) continue
      clashes[i]!.push(j)
      clashes[j]!.push(i)
    }
  }
  return clashes
}

function scaled({ start, point, service }: ServiceMatrix, by: number): ServiceMatrix {
  const scaledService = new Float64Array(service.length)
  for (let entry = 0; entry < service.length; entry += 1) scaledService[entry] = service[entry]! * by
  return { start, point, service: scaledService }
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
