import { bloomErrors } from '../data/bloom-heat'
import { cultivarOffsets } from '../data/cultivars'
import { type CropSettings, settingsFor, tableCropOf } from '../data/settings'
import { isSouthern } from '../plan/home'
import { type Bloom, isObserved, type Plan, type Planting, seasonOf } from '../plan/plan'
import { addDays, dayOfSeason, daysBetween, isIsoDate } from '../time/day'
import { type AppleDay, defaultBloom, ownAppleDay } from './defaults'
import { type Heat, heatOf } from './heat'

/** Where a date comes from: seen; heat reached; days from apple as seen or by its heat; the calendar of the place. */
export type BloomBasis = 'observed' | 'degree-days' | 'apple-observed' | 'apple-degree-days' | 'calendar'

/** When a crop blooms in a season, as near as it can be said. */
export type PredictedBloom = {
  readonly bloom: Bloom
  /** By how many days full bloom may come earlier or later (one standard deviation, or the spread of the table). */
  readonly before: number
  readonly after: number
  readonly basis: BloomBasis
  /** The crop's own heat, used or not; null where the tables have no total for it. */
  readonly heat: Heat | null
  /** The crop of the tables whose figures stand in, for a crop of the grower's own that was never seen: it may differ. */
  readonly asCrop: string | null
}

/**
 * Bloom of a crop in the season `year`: as seen, else by whichever of its own heat, apple's date and the calendar is
 * surest. null for a crop that none of them speaks of.
 */
export function predictedBloom(plan: Plan, year: number, crop: string): PredictedBloom | null {
  const heat = heatOf(plan, year, crop)
  const seen = seenBloom(plan, year, crop)
  if (seen !== null) return { bloom: seen, before: 0, after: 0, basis: 'observed', heat, asCrop: null }
  const settings = settingsFor(plan).crops[crop]
  if (settings === undefined) return null
  const options = [byHeat(settings, heat), byApple(plan, year, settings), byCalendar(plan, year, settings)]
  const best = options
    .filter(option => option !== null)
    .reduce<Option | null>((one, two) => (one === null || spread(two) < spread(one) ? two : one), null)
  const table = tableCropOf(crop, plan.crops)?.id ?? null
  const isOwn = best?.basis === 'degree-days' && heat?.isRescaled === true
  return best && { ...best, heat, asCrop: isOwn || table === crop ? null : table }
}

/** Dates of a crop moved by what is known of a planting's cultivar; null where the tables do not tell it from its crop. */
export function cultivarBloom(
  plan: Plan,
  { properties: { crop, cultivar = '' } }: Planting,
  { first, full, end }: Bloom,
): { readonly bloom: Bloom; readonly days: number } | null {
  const days = cultivarDays(plan, crop, cultivar)
  if (days === 0) return null
  return { bloom: { first: addDays(first, days), full: addDays(full, days), end: addDays(end, days) }, days }
}

type Option = Omit<PredictedBloom, 'heat' | 'asCrop'>

const spread = ({ before, after }: Option) => before + after

function seenBloom(plan: Plan, year: number, key: string): Bloom | null {
  const blooms = seasonOf(plan, year)?.bloom ?? {}
  const bloom = Object.hasOwn(blooms, key) ? blooms[key]! : null
  return bloom !== null && isObserved(bloom, 'full') && isIsoDate(bloom.full) ? bloom : null
}

function byHeat({ firstToFull, fullToEnd }: CropSettings, heat: Heat | null): Option | null {
  if (heat === null || heat.full === null) return null
  const { value } = heat.isRescaled ? bloomErrors.ownTotal : bloomErrors.tableTotal
  const bloom = {
    first: addDays(heat.full, -Math.max(1, Math.round(firstToFull))),
    full: heat.full,
    end: addDays(heat.full, Math.max(1, Math.round(fullToEnd))),
  }
  return { bloom, before: value, after: value, basis: 'degree-days' }
}

/** Days from apple's full bloom of this very season, seen or by its heat. */
function byApple(plan: Plan, year: number, settings: CropSettings): Option | null {
  if (settings.id === 'apple') return null
  const seen = seenBloom(plan, year, 'apple')
  const heat = seen === null ? heatOf(plan, year, 'apple') : null
  const full = seen?.full ?? heat?.full
  if (full == null) return null
  const { value } = heat?.isRescaled ? bloomErrors.ownTotal : bloomErrors.tableTotal
  const error = seen === null ? value : 0
  const apple = { day: dayOfSeason(full, year), before: error, after: error }
  return byDefault(plan, year, settings, apple, seen === null ? 'apple-degree-days' : 'apple-observed')
}

function byCalendar(plan: Plan, year: number, settings: CropSettings): Option | null {
  const date = seasonOf(plan, year)?.appleFullBloom
  const apple =
    date !== undefined && isIsoDate(date) ? ownAppleDay(date, { region: plan.bloomRegion, year }) : undefined
  return byDefault(plan, year, settings, apple, 'calendar')
}

function byDefault(
  plan: Plan,
  year: number,
  settings: CropSettings,
  apple: AppleDay | undefined,
  basis: BloomBasis,
): Option | null {
  const place = { region: plan.bloomRegion, year, isSouthern: isSouthern(plan), apple }
  const found = defaultBloom(settings, place)
  if (found === null) return null
  const { bloom, earliestFull, latestFull } = found
  return { bloom, before: daysBetween(earliestFull, bloom.full), after: daysBetween(bloom.full, latestFull), basis }
}

/** Whole days from a crop's full bloom to a cultivar's; 0 where the tables do not know it. */
export function cultivarDays(plan: Plan, crop: string, cultivar: string): number {
  const known = cultivarOffsets[tableCropOf(crop, plan.crops)?.id ?? ''] ?? {}
  const name = plainName(cultivar)
  const found = Object.entries(known).find(([each]) => name !== '' && plainName(each) === name)
  return found ? Math.round(found[1].value) || 0 : 0
}

/** 'Golden delicious' and "GOLDEN-DELICIOUS" are one. */
function plainName(text: string): string {
  return text
    .normalize('NFD')
    .replace(/[^\p{L}\p{N}]/gu, '')
    .toLowerCase()
}
