import type { BeeId } from '../data/own'
import type { BeeSettings, Settings } from '../data/settings'
import { bestRelease, flightCurve, type NestingBatch } from '../flight/flight'
import { isStation, nameOf, type Plan, type Release, type Station, type StationSeason, seasonOf } from '../plan/plan'
import type { Plane } from '../space/plane'
import { type DailyCurve, endOf } from '../time/curve'
import { dayOfSeason } from '../time/day'
import { type FlyingTime, flyingTime } from '../weather/flying-time'
import type { BloomPair, StationInput } from './coverage'
import { timesFlyingTime } from './flying'
import { backgroundPull, decayLength, type Kernel, kernelOf } from './kernel'

/** A station in use in the season: what the engine takes, and what only the report needs. */
export type Supply = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly season: StationSeason
  readonly input: StationInput
  /** Flying time of its bee by the season's weather; null without weather. */
  readonly flying: FlyingTime | null
}

/** Stations that the season lists, in the order of the plan. */
export function suppliesOf(
  plan: Plan,
  year: number,
  options: { readonly settings: Settings; readonly plane: Plane; readonly blooms: readonly BloomPair[] },
): Supply[] {
  const used = seasonOf(plan, year)?.stations ?? {}
  const species = speciesCache(options.settings, options.blooms, bee => flyingTime(plan, year, bee, options.settings))
  return plan.features
    .filter(isStation)
    .filter(station => Object.hasOwn(used, station.id))
    .map(station => supplyOf(station, used[station.id]!, plan.bee, { ...options, year, species }))
}

/** What depends on the species alone, worked out once for all stations that hold it. */
type Species = {
  readonly kernel: Kernel
  readonly background: number
  readonly best: StationInput['best']
  readonly flying: FlyingTime | null
}

function speciesCache(
  settings: Settings,
  blooms: readonly BloomPair[],
  flyingOf: (bee: BeeId) => FlyingTime | null,
): (bee: BeeId) => Species {
  const known = new Map<BeeId, Species>()
  return bee => {
    const found = known.get(bee)
    if (found !== undefined) return found
    const values = settings.bees[bee]
    const alpha = decayLength(values.typicalForagingRadius)
    const range = values.maxForagingRange
    const species = {
      kernel: kernelOf(alpha, range),
      background: backgroundPull(settings.site.backgroundBlossom, alpha, range),
      // Measured in typical weather: published rates are those of typical springs.
      best: blooms.map(({ weight }) => bestRelease(weight, values)),
      flying: flyingOf(bee),
    }
    known.set(bee, species)
    return species
  }
}

function supplyOf(
  station: Station,
  season: StationSeason,
  defaultBee: BeeId,
  context: {
    readonly settings: Settings
    readonly plane: Plane
    readonly blooms: readonly BloomPair[]
    readonly year: number
    readonly species: (bee: BeeId) => Species
  },
): Supply {
  const bee = season.bee ?? defaultBee
  const values = context.settings.bees[bee]
  const batches = nestingBatches(season.releases ?? [], values, context.year)
  const { kernel, background, best, flying } = context.species(bee)
  const { x, y } = context.plane.toMetres(station.geometry.coordinates)
  const input = {
    x,
    y,
    kernel,
    radius: values.typicalForagingRadius,
    background,
    effectiveness: values.effectiveness,
    females: batches.reduce((sum, batch) => sum + batch.females, 0),
    flight: timesFlyingTime(flightOver(batches, values, context.blooms), flying),
    best,
  }
  return { id: station.id, name: nameOf(station), bee, season, input, flying }
}

/** Of `females` cocoons, emergence x establishment become nesting females. */
export function nestingBatches(releases: readonly Release[], values: BeeSettings, year: number): NestingBatch[] {
  return releases.map(({ date, females }) => ({
    day: dayOfSeason(date, year),
    females: females * values.emergence * values.establishment,
  }))
}

/** Flight over the days on which anything blooms; on other days it serves nothing. */
function flightOver(batches: readonly NestingBatch[], values: BeeSettings, blooms: readonly BloomPair[]): DailyCurve {
  if (blooms.length === 0) return { start: 0, values: new Float64Array(0) }
  const from = Math.min(...blooms.map(({ open }) => open.start))
  const to = Math.max(...blooms.map(({ open }) => endOf(open)))
  return flightCurve(batches, values, from, to)
}
