import type { Bloom } from '../plan/plan'
import type { DailyCurve } from '../time/curve'
import { sumOf } from '../time/curve'
import { dayOfSeason } from '../time/day'

/**
 * Openness b(t) relative to its peak: piecewise linear through 0.1 at `first` (BBCH 61), 1 at `full` (BBCH 65) and
 * 0 at `end` (BBCH 69). Only days on which it is above 0 are held.
 */
export function bloomCurve(bloom: Bloom, year: number): DailyCurve {
  const first = dayOfSeason(bloom.first, year)
  const full = dayOfSeason(bloom.full, year)
  const end = dayOfSeason(bloom.end, year)
  if (!(first < full && full < end)) throw new RangeError(`bloom out of order: ${first}, ${full}, ${end}`)
  const rise = (full - first) / 0.9
  const start = Math.floor(full - rise) + 1
  const values = new Float64Array(end - start)
  for (let i = 0; i < values.length; i += 1) {
    const day = start + i
    values[i] = day <= full ? (day - (full - rise)) / rise : (end - day) / (end - full)
  }
  return { start, values }
}

/** Bloom weight beta(t): the share of a bloom's open flowers that falls on each day; adds up to 1. */
export function bloomWeight(curve: DailyCurve): DailyCurve {
  const sum = sumOf(curve)
  return { start: curve.start, values: curve.values.map(value => value / sum) }
}

/** The bloom that a planting or forage area follows: its own where it has one, else its crop's. */
export function bloomOf(
  blooms: Readonly<Record<string, Bloom>> | undefined,
  id: string,
  crop: string | undefined,
): Bloom | undefined {
  if (blooms === undefined) return undefined
  if (Object.hasOwn(blooms, id)) return blooms[id]
  return crop !== undefined && Object.hasOwn(blooms, crop) ? blooms[crop] : undefined
}
