import { Coverage, type StationInput } from '../coverage/coverage'
import { type Demand, demandOf } from '../coverage/demand'
import { type Field, fieldOf } from '../coverage/field'
import { type Supply, suppliesOf } from '../coverage/supply'
import { weatherGaps } from '../coverage/weather-gaps'
import type { BeeId } from '../data/own'
import { type BeeSettings, type Settings, settingsFor } from '../data/settings'
import { computableSeason } from '../plan/computable'
import { type Plan, type Season, type Station, seasonOf } from '../plan/plan'
import type { Outcome } from '../problem'
import { type LngLat, type Plane, planeOf } from '../space/plane'
import type { IsoDate } from '../time/day'

/** A release date and the share of a station's cocoons that goes out on it. */
export type ReleaseShare = { readonly date: IsoDate; readonly share: number }

/** What a station holds, apart from how much and where: bee and release dates. Shares add up to 1. */
export type StationKind = { readonly bee: BeeId; readonly releases: readonly ReleaseShare[] }

/** A season laid out for siting and stocking. */
export type SeasonGround = {
  readonly plan: Plan
  readonly year: number
  readonly season: Season
  readonly settings: Settings
  readonly plane: Plane
  readonly demand: Demand
  readonly supplies: readonly Supply[]
  readonly field: Field
  /** Coverage of the season by all its stations. */
  readonly coverage: Coverage
  /** Plantings are the first so many of the grounds; forage areas follow. */
  readonly plantings: number
}

/** Lays out a season that the plan has; the plan's errors are the caller's to tell first. */
export function seasonGround(plan: Plan, year: number): SeasonGround {
  const season = seasonOf(plan, year)
  if (season === undefined) throw new RangeError(`the plan has no season ${year}`)
  const settings = settingsFor(plan)
  const plane = planeOf(plan.features)
  const demand = demandOf(plan, year, settings, plane)
  const supplies = suppliesOf(plan, year, { settings, plane, blooms: demand.blooms })
  const field = fieldOf(demand.grounds.map(ground => ground.points))
  const coverage = coverageBy(
    { settings, demand, field },
    supplies.map(({ input }) => input),
  )
  const firstForage = demand.grounds.findIndex(({ group }) => group.isForage)
  const plantings = firstForage < 0 ? demand.grounds.length : firstForage
  return { plan, year, season, settings, plane, demand, supplies, field, coverage, plantings }
}

/** Coverage of the same ground by other stations. */
export function coverageBy(
  { settings, demand, field }: Pick<SeasonGround, 'settings' | 'demand' | 'field'>,
  stations: readonly StationInput[],
): Coverage {
  const groups = demand.grounds.map(({ group }) => group)
  const coverage = new Coverage(field, groups, demand.blooms, settings.site.referenceCropShare)
  coverage.setStations(stations)
  return coverage
}

/** A station of one kind with one nesting female; its place is yet to be given. */
export function unitInput(ground: SeasonGround, kind: StationKind): StationInput {
  const { settings, plane, demand, year } = ground
  const share = nestingShare(settings.bees[kind.bee])
  const station: Station = {
    type: 'Feature',
    id: 'unit',
    geometry: { type: 'Point', coordinates: plane.centre },
    properties: { kind: 'station' },
  }
  const releases = kind.releases.map(({ date, share: part }) => ({ date, females: part / share }))
  const season = { ...ground.season, stations: { unit: { bee: kind.bee, releases } } }
  const plan = { ...ground.plan, features: [station], seasons: [season] }
  return suppliesOf(plan, year, { settings, plane, blooms: demand.blooms })[0]!.input
}

/** Share of female cocoons that become nesting females. */
export function nestingShare({ emergence, establishment }: BeeSettings): number {
  return emergence * establishment
}

/** A position with as many decimals as a plan file keeps, so that what was computed is what is saved. */
export function keptPosition([lng, lat]: LngLat): LngLat {
  return [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
}

/** A season laid out, or why it cannot be computed. */
export function groundOf(plan: Plan, year: number): Outcome<SeasonGround> {
  const season = computableSeason(plan, year)
  if (!season.ok) return season
  const ground = seasonGround(plan, year)
  const gaps = weatherGaps(ground.supplies, { blooms: ground.demand.blooms, year })
  return { ok: true, value: ground, problems: [...season.problems, ...ground.demand.problems, ...gaps] }
}
