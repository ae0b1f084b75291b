import { bloomCurve } from '#geo/bloom/bloom'
import { flightCurve } from '#geo/flight/flight'
import { type Bloom, type Feature, isForage, isPlanting, isPresent, type Plan, seasonOf } from '#geo/plan/plan'
import type { DailyCurve } from '#geo/time/curve'
import { endOf, valueOn } from '#geo/time/curve'
import { dateOfDay, dayOfSeason } from '#geo/time/day'
import type { Band } from '../parts/chart'
import { cropsIn, plantingsIn, settingsOf, stationsInUse } from '../state/selectors'
import { dateText, dayAndMonth, honest, listed, percent } from '../text/words'
import { isInOrder } from './bloom/bloom-defaults'
import { cropTitle, titleOf } from './titles'

export type BloomBand = Band & { readonly kind: 'bloom'; readonly bloom: Bloom }
/** `females` at work on the busiest day, in the station's own species. */
export type FlightBand = Band & { readonly kind: 'flight'; readonly females: number; readonly releases: number }

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
    ...crops.map(id => ({ id, label: cropTitle(plan, id) })),
    ...own.map(feature => ({ id: feature.id, label: titleOf(feature) })),
  ]
  return all.flatMap(({ id, label }) => {
    const bloom = dates[id]
    if (bloom === undefined || !isInOrder(bloom)) return []
    return [{ id, label, kind: 'bloom' as const, bloom, curve: bloomCurve(bloom, year) }]
  })
}

/** Days that the flight is followed after the last release: by then hardly one in a thousand is left at work. */
const followed = 7

function flightBands(plan: Plan, year: number): FlightBand[] {
  const uses = seasonOf(plan, year)?.stations ?? {}
  const { bees } = settingsOf(plan)
  return stationsInUse(plan, year).flatMap(station => {
    const use = uses[station.id]
    const releases = (use?.releases ?? []).filter(({ females }) => females > 0)
    if (use === undefined || releases.length === 0) return []
    const bee = bees[use.bee ?? plan.bee]
    const batches = releases.map(({ date, females }) => ({
      day: dayOfSeason(date, year),
      females: females * bee.emergence * bee.establishment,
    }))
    const days = batches.map(({ day }) => day)
    const to = Math.ceil(Math.max(...days) + bee.lag + 3 * bee.spreadDays + followed * bee.nestingLife)
    const curve = trimmed(flightCurve(batches, bee, Math.min(...days), Math.min(to, Math.min(...days) + 400)))
    const females = Math.max(0, ...curve.values)
    if (females === 0) return []
    const scaled = { start: curve.start, values: curve.values.map(value => value / females) }
    return [
      {
        id: station.id,
        label: titleOf(station),
        kind: 'flight' as const,
        females,
        releases: releases.length,
        curve: scaled,
      },
    ]
  })
}

/** Without the days at both ends on which under two in a hundred of the peak are at work. */
function trimmed({ start, values }: DailyCurve): DailyCurve {
  const least = 0.02 * Math.max(...values)
  const first = values.findIndex(value => value >= least)
  const last = values.findLastIndex(value => value >= least)
  return first < 0
    ? { start, values: values.slice(0, 0) }
    : { start: start + first, values: values.slice(first, last + 1) }
}

/** The same with all stations' flights added up into one band, where there is no room for each. */
export function mergedFlights(bands: SeasonBands): SeasonBands {
  const { flights } = bands
  if (flights.length < 2) return bands
  const start = Math.min(...flights.map(({ curve }) => curve.start))
  const end = Math.max(...flights.map(({ curve }) => endOf(curve)))
  const sums = Float64Array.from({ length: end - start }, (_, i) =>
    flights.reduce((sum, { females, curve }) => sum + females * valueOn(curve, start + i), 0),
  )
  const females = Math.max(...sums)
  const merged: FlightBand = {
    id: 'all',
    label: `${flights.length} stations`,
    kind: 'flight',
    females,
    releases: flights.reduce((sum, { releases }) => sum + releases, 0),
    curve: { start, values: sums.map(value => value / females) },
  }
  return { ...bands, flights: [merged] }
}

/** First day, busiest day and last day of a band. */
export function daysOf({ curve }: Band): { readonly first: number; readonly peak: number; readonly last: number } {
  const peak = curve.values.indexOf(Math.max(...curve.values))
  return { first: curve.start, peak: curve.start + peak, last: endOf(curve) - 1 }
}

/** What goes on on a day: "24 April 2026: Apple in full bloom, plum 10% open; about 140 females at work." */
export function dayInWords({ blooms, flights }: SeasonBands, day: number, year: number): string {
  const date = dateText(dateOfDay(day, year))
  const open = blooms
    .map(({ label, curve }) => ({ label, share: valueOn(curve, day) }))
    .filter(({ share }) => share >= 0.005)
    .map(({ label, share }) => (share >= 0.95 ? `${label} in full bloom` : `${label} ${percent(share)} open`))
  const females = flights.reduce((sum, { curve, females }) => sum + females * valueOn(curve, day), 0)
  const flowers = open.length === 0 ? 'nothing drawn is in bloom' : listed(open)
  const bees =
    flights.length === 0
      ? ''
      : females < 0.5
        ? '; no female at work'
        : `; about ${honest(females)} ${females < 1.5 ? 'female' : 'females'} at work`
  return `${date}: ${flowers}${bees}.`
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
