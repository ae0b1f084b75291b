import { Coverage, type StationInput } from '../coverage/coverage'
import { type Demand, demandOf } from '../coverage/demand'
import { type Field, fieldOf } from '../coverage/field'
import { type Supply, suppliesOf } from '../coverage/supply'
import { type Settings, settingsFor } from '../data/settings'
import { computableSeason } from '../plan/computable'
import type { Plan, Season } from '../plan/plan'
import type { Outcome } from '../problem'
import { type Plane, planeOf } from '../space/plane'

/** A season laid out for asking after days: what stands where, what it wants, when it blooms, who is there. */
export type TimingGround = {
  readonly plan: Plan
  readonly year: number
  readonly season: Season
  readonly settings: Settings
  readonly plane: Plane
  readonly demand: Demand
  readonly field: Field
  readonly supplies: readonly Supply[]
}

/** Lays a season out, or says why nothing can be computed of it. */
export function timingGround(plan: Plan, year: number): Outcome<TimingGround> {
  const computable = computableSeason(plan, year)
  if (!computable.ok) return computable
  const season = computable.value
  const settings = settingsFor(plan)
  const plane = planeOf(plan.features)
  const demand = demandOf(plan, year, settings, plane)
  const supplies = suppliesOf(plan, year, { settings, plane, blooms: demand.blooms })
  const field = fieldOf(demand.grounds.map(({ points }) => points))
  return { ok: true, value: { plan, year, season, settings, plane, demand, field, supplies }, problems: [] }
}

/** Coverage of the ground by these stations. */
export function coverageBy({ demand, field, settings }: TimingGround, stations: readonly StationInput[]): Coverage {
  const groups = demand.grounds.map(({ group }) => group)
  const coverage = new Coverage(field, groups, demand.blooms, settings.site.referenceCropShare)
  coverage.setStations(stations)
  return coverage
}

/** Supplies of the same ground if the season's stations were used otherwise. */
export function suppliesWith(
  ground: TimingGround,
  stations: Season['stations'],
  features = ground.plan.features,
): readonly Supply[] {
  const { plan, year, season, settings, plane, demand } = ground
  const other: Plan = { ...plan, features, seasons: [{ ...season, stations: stations ?? {} }] }
  return suppliesOf(other, year, { settings, plane, blooms: demand.blooms })
}
