import { meanDegreeDays } from './degree-days'
import type { WeatherRecord } from './record'

/** Longest run of days without temperatures that is bridged by the days beside it, days. */
const longestGap = 5

/** Degree-days added up day by day from `start` on, as far as the weather goes without too long a gap. */
export type HeatSum = {
  readonly start: number
  /** Sum up to and with each day, degC d. */
  readonly sums: Float64Array
  /** Days among them that were bridged. */
  readonly bridged: number
  /** Why it ends: the weather does, or it has a gap; `late` where it begins too long after `start`. */
  readonly end: 'weather' | 'gap' | 'late'
}

/** Degree-days of a day over a base, degC d, from its lowest and highest temperature. */
type DegreeDays = (minimum: number, maximum: number, base: number) => number

/**
 * Degree-days over `base`, by the mean of each day unless said otherwise; days without temperatures count as the mean of
 * those beside them.
 */
export function heatSum(
  record: WeatherRecord,
  start: number,
  base: number,
  degreeDays: DegreeDays = meanDegreeDays,
): HeatSum {
  const degreesOn = (day: number): number | null => {
    const low = record.minimum[day - record.start]
    return low === undefined || Number.isNaN(low) ? null : degreeDays(low, record.maximum[day - record.start]!, base)
  }
  const values: number[] = []
  let sum = 0
  let bridged = 0
  const finish = (end: HeatSum['end']): HeatSum => ({ start, sums: Float64Array.from(values), bridged, end })
  const add = (degrees: number) => {
    sum += degrees
    values.push(sum)
  }
  const last = record.start + record.minimum.length
  let before: number | null = null
  for (let day = start; day < last; day += 1) {
    let next = day
    while (next < last && degreesOn(next) === null) next += 1
    if (next - day > longestGap) return finish(values.length === 0 ? 'late' : next === last ? 'weather' : 'gap')
    // Days missing at the very end of the record are not bridged: nothing is known after them.
    if (next === last) return finish('weather')
    const after = degreesOn(next)!
    for (; day < next; day += 1) {
      add(before === null ? after : (before + after) / 2)
      bridged += 1
    }
    add(after)
    before = after
  }
  return finish(values.length === 0 ? 'late' : 'weather')
}

/** The first day on which a sum reaches `total`; null where it does not. */
export function dayReaching({ start, sums }: HeatSum, total: number): number | null {
  const at = sums.findIndex(sum => sum >= total)
  return at < 0 ? null : start + at
}
