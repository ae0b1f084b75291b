import type { Bloom, Season } from '../plan/plan'
import { dayOfSeason, type IsoDate, isIsoDate } from '../time/day'

/** By how many days a crop's stages fall later in a season than in another one; negative = earlier. */
export type BloomShift = {
  readonly key: string
  readonly first: number
  readonly full: number
  readonly end: number
}

const stages = ['first', 'full', 'end'] as const

/**
 * How far bloom has moved between two seasons, by the dates of both, stage against the same stage: 17 April to 29 April of
 * another year is 12 days, whether or not one of them is a leap year. Keys that only one season dates have no shift.
 */
export function bloomShifts(before: Season, after: Season): readonly BloomShift[] {
  return Object.entries(after.bloom ?? {}).flatMap(([key, bloom]) => {
    const earlier = before.bloom && Object.hasOwn(before.bloom, key) ? before.bloom[key] : undefined
    if (earlier === undefined || !isDated(earlier) || !isDated(bloom)) return []
    return [shiftOf(key, [earlier, before.year], [bloom, after.year])]
  })
}

/** Days from 1 March of the season's year: from there on dates of leap years and others agree. */
function sinceMarch(date: IsoDate, year: number): number {
  return dayOfSeason(date, year) - dayOfSeason(`${String(year).padStart(4, '0')}-03-01`, year)
}

function isDated(bloom: Bloom): boolean {
  return stages.every(stage => isIsoDate(bloom[stage]))
}

function shiftOf(key: string, [earlier, from]: [Bloom, number], [later, to]: [Bloom, number]): BloomShift {
  const [first, full, end] = stages.map(stage => sinceMarch(later[stage], to) - sinceMarch(earlier[stage], from))
  return { key, first: first!, full: full!, end: end! }
}
