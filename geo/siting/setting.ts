import type { Coverage, StationInput } from '../coverage/coverage'
import type { Supply } from '../coverage/supply'
import type { BeeId } from '../data/own'
import { isStation, type Station } from '../plan/plan'
import type { Metres } from '../space/plane'
import { coverageBy, type SeasonGround, type StationKind, unitInput } from '../stocking/season-ground'
import { type Cells, cellsOf, type ServiceMatrix, serviceMatrix } from '../stocking/service'
import { kindsOfPlaces, sharesOf } from '../stocking/usual-kind'
import { releaseAdvice } from '../timing/release-advice'
import { type CandidateSite, type Candidates, candidatesOf, defaultSpacing, leastPitch } from './candidates'
import type { SitingProblem } from './objective'
import type { Role, SuggestOptions } from './question'

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
  /** The first is the new station; one for each that moves with its stock follows. */
  readonly placings: readonly Placing[]
  /** Stations that move and are stocked anew, for a target: each saves a new station. */
  readonly movers: readonly Standing[]
  /** Stations that stand unused, by id: a new place at one of them needs no new station. */
  readonly unused: ReadonlySet<string>
  /** What a new station holds at a place. */
  readonly kindAt: (place: Metres) => StationKind
  readonly candidates: Candidates
  /** Places so far; finer ones are added as the search closes in. */
  readonly sites: CandidateSite[]
  readonly cells: Cells
  /** Weight of each cell's planting. */
  readonly weight: Float64Array
  /** Service by one female: for each placing, of all sites. */
  readonly services: ServiceMatrix[]
  readonly unitAt: (placing: number, place: Metres) => StationInput
}

export type Standing = Metres & { readonly id: string }

/** More pairs of points and places than this, and points are taken together in cells. */
const mostPairs = 1.5e6

export function settingOf(ground: SeasonGround, options: SuggestOptions): Setting {
  const { plan } = ground
  const freshBee = options.bee ?? plan.bee
  const isTarget = options.question.kind === 'target'
  const rolesLeft = ground.supplies.map(supply => ({ supply, role: roleOf(supply, options, freshBee) }))
  const stays = rolesLeft.filter(({ role }) => role === 'keep').map(({ supply }) => supply)
  const moving = rolesLeft.filter(({ role }) => role === 'move').map(({ supply }) => supply)
  const kept = coverageBy(
    ground,
    stays.map(({ input }) => input),
  )
  const fresh = kindsOfPlaces(ground, freshBee, { given: options.releases, advised: advisedDates(ground, options) })
  const units = fresh.kinds.map(kind => unitInput(ground, kind))
  const placings: Placing[] = [
    { moves: null, kind: fresh.kinds[0]!, unit: units[0]! },
    ...(isTarget ? [] : moving).map(({ id, bee, season }) => {
      const kind = { bee, releases: sharesOf(season.releases ?? []) }
      return { moves: id, kind, unit: unitInput(ground, kind) }
    }),
  ]
  const unitAt = (p: number, place: Metres) => (p === 0 ? units[fresh.at(place)]! : placings[p]!.unit)
  const candidates = candidatesOf(
    ground,
    stays.map(({ input }) => input),
    options.places,
  )
  // Where a station stands now it may stand on; one that stands unused may be used.
  const unused = unusedStations(ground, options).filter(station => candidates.isUsable(station))
  const standing = moving.map(({ id }) => plan.features.find((each): each is Station => each.id === id)!)
  const sites = [...[...standing, ...unused].map(station => candidates.standing(station)), ...candidates.sites]
  const side = ground.field.x.length * sites.length > mostPairs ? placings[0]!.unit.kernel.alpha / 5 : 0
  const cells = cellsOf(ground, kept, side)
  const weight = Float64Array.from(cells.ground, g => options.weights?.[ground.demand.grounds[g]!.id] ?? 1)
  const setting = {
    ground,
    options,
    kept,
    placings,
    movers: isTarget ? moving.map(({ id, input: { x, y } }) => ({ id, x, y })) : [],
    unused: new Set(unused.map(({ id }) => id)),
    kindAt: (place: Metres) => fresh.kinds[fresh.at(place)]!,
    candidates,
    sites,
    cells,
    weight,
    unitAt,
  }
  return { ...setting, services: placings.map((_, p) => servicesOf(setting, p, sites)) }
}

/** Most batches that are advised: each is one more round with cocoons in hand. */
const mostBatches = 3

/** The dates advised for the season's stations, where a question asks for them and there is advice. */
function advisedDates({ plan, year }: SeasonGround, { dates }: SuggestOptions) {
  if (dates !== 'advice') return undefined
  const advice = releaseAdvice(plan, year, { scope: 'orchard', batches: mostBatches })
  return advice.ok ? new Map(advice.value.stations.map(({ id, batches }) => [id, batches])) : undefined
}

/**
 * What becomes of a station in use. One that moves takes its bees along, so one without any stays; for a target it is
 * stocked anew with the bee of the new ones, so one that holds another bee stays.
 */
function roleOf({ id, bee, input }: Supply, { roles = {}, question }: SuggestOptions, freshBee: BeeId): Role {
  const role = roles[id] ?? 'keep'
  const canMove = question.kind === 'target' ? bee === freshBee : input.females > 0
  return role === 'move' && !canMove ? 'keep' : role
}

/** Stations of the plan that stand in this year and are not in the season. */
function unusedStations({ plan, season, year }: SeasonGround, { roles = {} }: SuggestOptions): Station[] {
  return plan.features.filter(isStation).filter(({ id, properties: { since, until } }) => {
    const isThere = (since === undefined || since <= year) && (until === undefined || year <= until)
    return isThere && !Object.hasOwn(season.stations ?? {}, id) && roles[id] !== 'drop'
  })
}

function servicesOf(
  { ground, cells, unitAt }: Pick<Setting, 'ground' | 'cells' | 'unitAt'>,
  placing: number,
  sites: readonly Metres[],
): ServiceMatrix {
  return serviceMatrix(
    ground,
    cells,
    sites.map(site => ({ x: site.x, y: site.y, unit: unitAt(placing, site) })),
  )
}

/** Price of opening each place: that of a station, none where one stands unused. */
export function openingOf({ sites, unused }: Setting, station: number): number[] {
  return sites.map(({ id }) => (unused.has(id) ? 0 : station))
}

/** Adds places to a setting. */
export function addSites(setting: Setting, more: readonly CandidateSite[]): void {
  const { services, sites } = setting
  services.forEach((service, p) => {
    services[p] = joined(service, servicesOf(setting, p, more))
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
