import type { BloomRegion } from '../data/own'
import { appleFullBloomDay, type BloomOffset, type CropSettings, type ForageSettings } from '../data/settings'
import { southernShift } from '../plan/home'
import type { Bloom } from '../plan/plan'
import { dateOfDay, dayOfSeason, type IsoDate } from '../time/day'

/** The day of the year that all offsets count from, and how many days earlier or later it might be. */
export type AppleDay = { readonly day: number; readonly before: number; readonly after: number }

/**
 * The region whose springs serve as a pattern, the season, and whether the orchard lies south of the equator. With `apple`
 * the calendar hangs on the grower's own apple date instead of the region's.
 */
export type BloomPlace = {
  readonly region: BloomRegion
  readonly year: number
  readonly isSouthern: boolean
  readonly apple?: AppleDay | undefined
}

/** Bloom dates to start from, and the range in which full bloom must be expected. */
export type DefaultBloom = { readonly bloom: Bloom; readonly earliestFull: IsoDate; readonly latestFull: IsoDate }

/**
 * The grower's own apple date as the hinge of the season `year`. A date of that year stands for itself. One of another year
 * says how early the place is, and nothing of how early the year will be: it keeps its day of the year and the whole spread
 * that the region's years have about their middle.
 */
export function ownAppleDay(date: IsoDate, { region, year }: Pick<BloomPlace, 'region' | 'year'>): AppleDay {
  const ofYear = Number(date.slice(0, 4))
  const day = dayOfSeason(date, ofYear)
  if (ofYear === year) return { day, before: 0, after: 0 }
  const { low, mid, high } = appleFullBloomDay[region]
  return { day, before: mid - low, after: high - mid }
}

type Blooming = { readonly firstToFull: number; readonly fullToEnd: number }

/**
 * Bloom of a crop where nothing was observed: the region's day of apple full bloom and the crop's days from it. A place to
 * start from, to be replaced by dates seen: years lie weeks apart. null for a crop without offsets.
 */
export function defaultBloom(crop: CropSettings, where: BloomPlace): DefaultBloom | null {
  return crop.bloomOffset && bloomAt(crop, crop.bloomOffset, where)
}

/** The same for a forage plant of the table. */
export function defaultForageBloom(forage: ForageSettings, where: BloomPlace): DefaultBloom {
  return bloomAt(forage, forage.bloomOffset, where)
}

/**
 * The reach of full bloom joins two spreads, of apple between years and of the crop against apple, as the root of the sum
 * of their squares: they have different causes (weather, cultivar), so both ends seldom fall together.
 */
function bloomAt(
  stages: Blooming,
  offsets: BloomOffset,
  { region, year, isSouthern, apple }: BloomPlace,
): DefaultBloom {
  const offset = offsets[region]
  const hinge = apple ?? appleDayOf(region, isSouthern)
  const full = Math.round(hinge.day + offset.mid)
  const before = Math.hypot(hinge.before, offset.mid - offset.low)
  const after = Math.hypot(hinge.after, offset.high - offset.mid)
  return {
    bloom: {
      first: dateOfDay(full - atLeastOne(stages.firstToFull), year),
      full: dateOfDay(full, year),
      end: dateOfDay(full + atLeastOne(stages.fullToEnd), year),
    },
    earliestFull: dateOfDay(full - Math.round(before), year),
    latestFull: dateOfDay(full + Math.round(after), year),
  }
}

function appleDayOf(region: BloomRegion, isSouthern: boolean): AppleDay {
  const { low, mid, high } = appleFullBloomDay[region]
  return { day: mid + (isSouthern ? southernShift : 0), before: mid - low, after: high - mid }
}

/** Whole days, one at least: first, full and end must be three days in order. */
function atLeastOne(days: number): number {
  return Math.max(1, Math.round(days))
}
