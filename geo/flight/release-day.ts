import { type DailyCurve, endOf } from '../time/curve'
import { bestRelease, type FlightSettings } from './flight'

/** A bloom as the share of its open flowers that falls on each day, and how much hangs on it. */
export type WeighedBloom = { readonly days: DailyCurve; readonly weight: number }

/**
 * The day of the season on which one release of a bee meets blooms best: where its females' days of work overlap most
 * with the days of all blooms, each by its weight. Null where no bloom has any. Whoever says when a single release
 * should be made, says this day.
 */
export function releaseDay(blooms: readonly WeighedBloom[], bee: FlightSettings): number | null {
  const weighed = blooms.filter(({ weight }) => weight > 0)
  if (weighed.length === 0) return null
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0)
  const start = Math.min(...weighed.map(({ days }) => days.start))
  const values = new Float64Array(Math.max(...weighed.map(({ days }) => endOf(days))) - start)
  for (const { days, weight } of weighed) {
    days.values.forEach((share, i) => {
      values[days.start + i - start]! += (share * weight) / total
    })
  }
  return bestRelease({ start, values }, bee).day
}
