import type { BloomRegion } from '../data/own'
import { appleFullBloomDay, type BloomOffset, type CropSettings, type ForageSettings } from '../data/settings'
import type { Bloom } from '../plan/plan'
import { dateOfDay, type IsoDate } from '../time/day'

/** The region whose springs serve as a pattern, the season, and whether the orchard lies south of the equator. */
export type BloomPlace = { readonly region: BloomRegion; readonly year: number; readonly isSouthern: boolean }

/** Bloom dates to start from, and the range in which full bloom must be expected. */
export type DefaultBloom = { readonly bloom: Bloom; readonly earliestFull: IsoDate; readonly latestFull: IsoDate }

/** Half a year, in days: a southern spring is taken to follow a northern one at this distance (assumed). */
const southernShift = 183

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
function bloomAt(stages: Blooming, offsets: BloomOffset, { region, year, isSouthern }: BloomPlace): DefaultBloom {
  const apple = appleFullBloomDay[region]
  const offset = offsets[region]
  const full = Math.round(apple.mid + offset.mid + (isSouthern ? southernShift : 0))
  const before = Math.hypot(apple.mid - apple.low, offset.mid - offset.low)
  const after = Math.hypot(apple.high - apple.mid, offset.high - offset.mid)
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

/** Whole days, one at least: first, full and end must be three days in order. */
function atLeastOne(days: number): number {
  return Math.max(1, Math.round(days))
}
