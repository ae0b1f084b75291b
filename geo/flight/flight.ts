import type { DailyCurve } from '../time/curve'
import { sumOfProduct } from '../time/curve'
import { normalBelow } from './normal'

/** The four figures of a species that its flight follows from; days and shares. */
export type FlightSettings = {
  readonly lag: number
  readonly spreadDays: number
  readonly nestingLife: number
}

/**
 * Active share a(n) for n = 0 … days - 1 days after release: the share of a batch's nesting females at work.
 * First nesting days are normal (`lag`, `spreadDays`) cut into days; a female of age j is at work with chance exp(-j / nestingLife).
 */
export function activeShare(settings: FlightSettings, days: number): Float64Array {
  const { lag, spreadDays, nestingLife } = settings
  if (!(spreadDays > 0 && nestingLife > 0)) throw new RangeError(`no flight with ${spreadDays}, ${nestingLife} days`)
  const share = new Float64Array(Math.max(0, days))
  const survival = Math.exp(-1 / nestingLife)
  let started = 0
  let active = 0
  for (let n = 0; n < share.length; n += 1) {
    const startedBy = normalBelow((n + 1 - lag) / spreadDays)
    active = active * survival + (startedBy - started)
    started = startedBy
    share[n] = active
  }
  return share
}

/** A batch as the flight sees it: day of release and the females that will nest. */
export type NestingBatch = { readonly day: number; readonly females: number }

/** Females at work A(t) over the days `from` (inclusive) to `to` (exclusive). */
export function flightCurve(
  batches: readonly NestingBatch[],
  settings: FlightSettings,
  from: number,
  to: number,
): DailyCurve {
  const values = new Float64Array(Math.max(0, to - from))
  const earliest = batches.reduce((day, batch) => Math.min(day, batch.day), to)
  const share = activeShare(settings, to - earliest)
  for (const { day, females } of batches) {
    for (let t = Math.max(from, day); t < to; t += 1) values[t - from]! += females * share[t - day]!
  }
  return { start: from, values }
}

/**
 * The best that one batch can do for a bloom: `overlap` is Ostar, the largest sum over t of a(t - d) beta(t) over whole
 * release days d, and `day` the earliest d that reaches it.
 */
export function bestRelease(
  weight: DailyCurve,
  settings: FlightSettings,
): { readonly day: number; readonly overlap: number } {
  const { lag, spreadDays, nestingLife } = settings
  const end = weight.start + weight.values.length
  // Released earlier than this, the last of the batch is gone before the bloom begins (their share is under e^-20).
  const earliest = weight.start - Math.ceil(Math.max(0, lag) + 8 * spreadDays + 20 * nestingLife)
  const share = activeShare(settings, end - earliest)
  let best = { day: earliest, overlap: -1 }
  for (let day = earliest; day < end; day += 1) {
    const overlap = sumOfProduct({ start: day, values: share.subarray(0, end - day) }, weight)
    if (overlap > best.overlap) best = { day, overlap }
  }
  return best
}
