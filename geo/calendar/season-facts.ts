import { bloomCurve, bloomOf } from '../bloom/bloom'
import { timesFlyingTime } from '../coverage/flying'
import type { BeeId } from '../data/own'
import { seasonWork } from '../data/season-work'
import { type BeeSettings, cropName, type Settings } from '../data/settings'
import { flightCurve } from '../flight/flight'
import {
  type Bloom,
  type Feature,
  isForage,
  isPlanting,
  isPresent,
  isStation,
  nameOf,
  type Plan,
  type Release,
  type Station,
  seasonOf,
} from '../plan/plan'
import type { DailyCurve } from '../time/curve'
import { dayOfSeason, isIsoDate } from '../time/day'
import type { FlyingTime } from '../weather/flying-time'
import { oneLine } from '../wording/plain'

/** One batch of cocoons at one station. `number` is its place in the station's list, whatever its date. */
export type Batch = {
  readonly station: Station
  readonly name: string
  readonly bee: BeeId
  readonly number: number
  readonly day: number
  readonly release: Release
}

/** The flight of one species over all its stations; days of season. */
export type Flight = {
  readonly bee: BeeId
  readonly stations: readonly Station[]
  readonly firstRelease: number
  /** Expected first day of nesting. */
  readonly nesting: number
  readonly busiest: number
  /** Last day on which more than a share of the busiest day's females are at work, and its reach. */
  readonly last: { readonly value: number; readonly low: number; readonly high: number }
  /** Whether the weather of some of its days is known. */
  readonly hasWeather: boolean
}

/** `ids`: the plantings and forage areas that bloom so. */
export type NamedBloom = {
  readonly name: string
  readonly bloom: Bloom
  readonly curve: DailyCurve
  readonly ids: readonly string[]
}

/** Stations that the season `year` lists, in the order of the plan. */
export function stationsOf(plan: Plan, year: number): readonly Station[] {
  const uses = seasonOf(plan, year)?.stations ?? {}
  return plan.features.filter(isStation).filter(({ id }) => Object.hasOwn(uses, id))
}

/** Batches that hold cocoons, in the order of the plan. */
export function batchesOf(plan: Plan, year: number): readonly Batch[] {
  return stationsOf(plan, year).flatMap(station => {
    const use = seasonOf(plan, year)?.stations?.[station.id]
    const batches = (use?.releases ?? []).map((release, number) => ({ release, number }))
    return batches
      .filter(({ release }) => isIsoDate(release.date) && release.females + (release.males ?? 0) > 0)
      .map(({ release, number }) => ({
        station,
        name: oneLine(nameOf(station)) || station.id,
        bee: use?.bee ?? plan.bee,
        number,
        day: dayOfSeason(release.date, year),
        release,
      }))
  })
}

/** Flight by species, the earliest first. Batches without females fly no nests. */
export function flightsOf(
  batches: readonly Batch[],
  settings: Settings,
  flyingOf: (bee: BeeId) => FlyingTime | null,
): readonly Flight[] {
  const species = [...new Set(batches.map(({ bee }) => bee))]
  return species
    .flatMap(bee => {
      const own = batches.filter(batch => batch.bee === bee && batch.release.females > 0)
      return own.length === 0 ? [] : [flightOf(bee, own, settings.bees[bee], flyingOf(bee))]
    })
    .sort((a, b) => a.nesting - b.nesting)
}

/** Days that a flight is followed after the last release: by then hardly one in a thousand is left at work. */
const followed = 7

function flightOf(bee: BeeId, batches: readonly Batch[], figures: BeeSettings, flying: FlyingTime | null): Flight {
  const { emergence, establishment, lag, spreadDays, nestingLife } = figures
  const days = batches.map(({ day }) => day)
  const firstRelease = Math.min(...days)
  const to = Math.ceil(Math.max(...days) + lag + 3 * spreadDays + followed * nestingLife)
  const nesting = batches.map(({ day, release }) => ({ day, females: release.females * emergence * establishment }))
  const typical = flightCurve(nesting, figures, firstRelease, to)
  const curve = timesFlyingTime(typical, flying)
  // Held against the busiest of typical days: one fine day early on does not end the flight of all that follow.
  const most = Math.max(...typical.values)
  const busiest = curve.start + curve.values.indexOf(Math.max(...curve.values))
  const over = (share: number) =>
    Math.max(busiest, curve.start + curve.values.findLastIndex(value => value >= share * most))
  const hasWeather = curve.values.some((_, i) => flying !== null && flying.known[curve.start + i - flying.start] === 1)
  const { value, low, high } = seasonWork.flightOver
  return {
    bee,
    stations: [...new Map(batches.map(({ station }) => [station.id, station])).values()],
    firstRelease,
    nesting: Math.round(firstRelease + lag),
    busiest,
    hasWeather,
    last: { value: over(value), low: over(high), high: over(low) },
  }
}

/** Bloom of what stands in the ground, by crop, or by name where a planting or forage area has its own; earliest first. */
export function bloomsOf(plan: Plan, year: number): readonly NamedBloom[] {
  const dates = seasonOf(plan, year)?.bloom
  const named = new Map<string, NamedBloom>()
  for (const feature of plan.features) {
    if (!(isPlanting(feature) || isForage(feature)) || !isPresent(feature, year)) continue
    const crop = isPlanting(feature) ? feature.properties.crop : undefined
    const bloom = bloomOf(dates, feature.id, crop)
    if (bloom === undefined || !isInOrder(bloom)) continue
    const isOwn = crop === undefined || Object.hasOwn(dates ?? {}, feature.id)
    const name = oneLine(isOwn ? nameOf(feature as Feature) : cropName(crop, plan.crops))
    const key = isOwn ? `own ${feature.id}` : `crop ${crop}`
    const ids = [...(named.get(key)?.ids ?? []), feature.id]
    named.set(key, { name, bloom, curve: bloomCurve(bloom, year), ids })
  }
  return [...named.values()].sort((a, b) => (a.bloom.first < b.bloom.first ? -1 : 1))
}

function isInOrder({ first, full, end }: Bloom): boolean {
  return [first, full, end].every(isIsoDate) && first < full && full < end
}
