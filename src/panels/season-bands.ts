import { bloomCurve } from '#geo/bloom/bloom'
import type { Settings } from '#geo/data/settings'
import { flightCurve } from '#geo/flight/flight'
import {
  type Bloom,
  bloomStages,
  type Feature,
  isForage,
  isObserved,
  isPlanting,
  isPresent,
  type Plan,
  type StationSeason,
  seasonOf,
} from '#geo/plan/plan'
import type { DailyCurve } from '#geo/time/curve'
import { endOf } from '#geo/time/curve'
import { dayAndMonth } from '#geo/time/date-text'
import { dateOfDay, dayOfSeason, daysBetween } from '#geo/time/day'
import type { Band } from '../parts/chart'
import { cropsIn, plantingsIn, settingsOf, stationsInUse } from '../state/selectors'
import { defaultForCrop, isInOrder, isSameBloom } from './bloom/bloom-defaults'
import { cropTitle, titleOf } from './titles'

/** By how many days dates may be off that are defaults; null where they were set or seen. */
export type Doubt = { readonly before: number; readonly after: number }
export type BloomBand = Band & {
  readonly kind: 'bloom'
  readonly bloom: Bloom
  readonly doubt: Doubt | null
  /** Null for a forage area. */
  readonly crop: string | null
}
/** `females` at work on the busiest day, in the station's own species. */
export type FlightBand = Band & {
  readonly kind: 'flight'
  readonly females: number
  readonly releases: number
  /** Stations whose bees are in it. */
  readonly stations: number
}

export type SeasonBands = {
  readonly blooms: readonly BloomBand[]
  readonly flights: readonly FlightBand[]
  /** First and last day of season that the bands touch, with a margin. */
  readonly from: number
  readonly to: number
}

const margin = 4

/** Bloom of every crop, planting and forage area with dates, earliest first, and flight at every station with releases. */
export function seasonBands(plan: Plan, year: number): SeasonBands {
  const blooms = bloomBands(plan, year).sort((a, b) => a.bloom.full.localeCompare(b.bloom.full))
  const flights = flightBands(plan, year)
  const curves = [...blooms, ...flights].map(({ curve }) => curve)
  const from = Math.min(...curves.map(({ start }) => start)) - margin
  const to = Math.max(...curves.map(endOf)) + margin
  return curves.length === 0 ? { blooms, flights, from: 60, to: 150 } : { blooms, flights, from, to }
}

function bloomBands(plan: Plan, year: number): BloomBand[] {
  const dates = seasonOf(plan, year)?.bloom ?? {}
  const own = plan.features.filter(
    (feature): feature is Feature =>
      Object.hasOwn(dates, feature.id) && (isPlanting(feature) || isForage(feature)) && isPresent(feature, year),
  )
  const ownIds = new Set(own.map(({ id }) => id))
  const crops = cropsIn(plan, year).filter(
    crop =>
      Object.hasOwn(dates, crop) &&
      plantingsIn(plan, year).some(planting => planting.properties.crop === crop && !ownIds.has(planting.id)),
  )
  const all = [
    ...crops.map(id => ({ id, label: cropTitle(plan, id), crop: id })),
    ...own.map(feature => ({
      id: feature.id,
      label: titleOf(feature),
      crop: isPlanting(feature) ? feature.properties.crop : null,
    })),
  ]
  return all.flatMap(({ id, label, crop }) => {
    const bloom = dates[id]
    if (bloom === undefined || !isInOrder(bloom)) return []
    const doubt = crop === null ? null : doubtOf(plan, year, crop, bloom)
    return [{ id, label, kind: 'bloom' as const, crop, bloom, doubt, curve: bloomCurve(bloom, year) }]
  })
}

/** Dates that are the crop's defaults, none of them seen, may be off by as much as the defaults are. */
function doubtOf(plan: Plan, year: number, crop: string, bloom: Bloom): Doubt | null {
  const byDefault = defaultForCrop(plan, year, crop)
  const isSeen = bloomStages.some(stage => isObserved(bloom, stage))
  if (byDefault === null || isSeen || !isSameBloom(byDefault.bloom, bloom)) return null
  return {
    before: daysBetween(byDefault.earliestFull, bloom.full),
    after: daysBetween(bloom.full, byDefault.latestFull),
  }
}

/** Days that the flight is followed after the last release: by then hardly one in a thousand is left at work. */
const followed = 7

function flightBands(plan: Plan, year: number): FlightBand[] {
  const uses = seasonOf(plan, year)?.stations ?? {}
  const { bees } = settingsOf(plan)
  return stationsInUse(plan, year).flatMap(station => {
    const use = uses[station.id]
    const flight = use === undefined ? null : flightOf(use, bees[use.bee ?? plan.bee], year)
    return flight === null ? [] : [{ id: station.id, label: titleOf(station), kind: 'flight', stations: 1, ...flight }]
  })
}

type Bee = Settings['bees'][keyof Settings['bees']]
type Flight = Pick<FlightBand, 'females' | 'releases' | 'curve'>

/** The flight last worked out for each station's season: an edit elsewhere leaves that object and the bee's figures as they are. */
const known = new WeakMap<StationSeason, { readonly bee: Bee; readonly year: number; readonly flight: Flight | null }>()

function flightOf(use: StationSeason, bee: Bee, year: number): Flight | null {
  const last = known.get(use)
  if (last?.bee === bee && last.year === year) return last.flight
  const flight = workedOut(use, bee, year)
  known.set(use, { bee, year, flight })
  return flight
}

function workedOut(use: StationSeason, bee: Bee, year: number): Flight | null {
  const releases = (use.releases ?? []).filter(({ females }) => females > 0)
  if (releases.length === 0) return null
  const batches = releases.map(({ date, females }) => ({
    day: dayOfSeason(date, year),
    females: females * bee.emergence * bee.establishment,
  }))
  const days = batches.map(({ day }) => day)
  const to = Math.ceil(Math.max(...days) + bee.lag + 3 * bee.spreadDays + followed * bee.nestingLife)
  const curve = trimmed(flightCurve(batches, bee, Math.min(...days), Math.min(to, Math.min(...days) + 400)))
  const females = Math.max(0, ...curve.values)
  if (females === 0) return null
  const scaled = { start: curve.start, values: curve.values.map(value => value / females) }
  return { females, releases: releases.length, curve: scaled }
}

/** Without the days at both ends on which under two in a hundred of the peak are at work. */
export function trimmed({ start, values }: DailyCurve): DailyCurve {
  const least = 0.02 * Math.max(...values)
  const first = values.findIndex(value => value >= least)
  const last = values.findLastIndex(value => value >= least)
  return first < 0
    ? { start, values: values.slice(0, 0) }
    : { start: start + first, values: values.slice(first, last + 1) }
}

/** First day, busiest day and last day of a band. */
export function daysOf({ curve }: Band): { readonly first: number; readonly peak: number; readonly last: number } {
  const peak = curve.values.indexOf(Math.max(...curve.values))
  return { first: curve.start, peak: curve.start + peak, last: endOf(curve) - 1 }
}

/** The season in a sentence, for those who do not see the picture. */
export function bandsSummary({ blooms, flights }: SeasonBands, year: number): string {
  const day = (at: number) => dayAndMonth(dateOfDay(at, year))
  const parts = [
    ...blooms.map(band => `${band.label} blooms ${dayAndMonth(band.bloom.first)} to ${dayAndMonth(band.bloom.end)}`),
    ...flights.map(band => {
      const { first, last } = daysOf(band)
      return `bees fly at ${band.label} ${day(first)} to ${day(last)}`
    }),
  ]
  return parts.length === 0 ? 'No bloom and no flight yet.' : `${parts.join('; ')}.`
}
