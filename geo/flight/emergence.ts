import { malesBefore, outdoorSpread, searchDays, searchSpread, type Wintering } from '../data/emergence-figures'
import type { BeeId } from '../data/own'
import type { Parameter } from '../data/parameter'
import type { DailyCurve } from '../time/curve'
import { activeShare, type FlightSettings } from './flight'
import { normalBelow } from './normal'

/** A day, and how far it may be off: days of season, or days after release. */
export type DaySpan = { readonly value: number; readonly low: number; readonly high: number }

/** One sex of a batch coming out of its cocoons. */
export type Emerging = {
  /** Share that comes out on each day; adds up to 1. */
  readonly daily: DailyCurve
  /** The day by which half are out, and between which days that is expected. */
  readonly half: DaySpan
  /** The days by which one in twenty, and all but one in twenty, are out. */
  readonly first: number
  readonly last: number
}

export type BatchEmergence = {
  readonly males: Emerging
  readonly females: Emerging
  /** Share of the batch's nesting females at work, as coverage counts them. */
  readonly nesting: DailyCurve
}

export type EmergenceOptions = {
  readonly bee: BeeId
  readonly flight: FlightSettings
  /** The bee's lag, with its range; a value of the grower's own has none. */
  readonly lag: Pick<Parameter, 'value' | 'low' | 'high'>
  readonly wintering: Wintering
}

/** Share at which coming out, or nesting, counts as begun; it is done when as little is left. */
export const tail = 0.05
/** Beyond so many deviations hardly one bee in ten thousand comes out. */
const followed = 4

/**
 * A batch set out on `day`, from the first males to the end of nesting. Females are half out `searchDays` before their mean
 * first day of nesting, males before them; both normal. Cocoons from a cold store cannot begin before they are set out,
 * those of the open can: for them the day stands for the warmth that starts them.
 */
export function batchEmergence(day: number, { bee, flight, lag, wintering }: EmergenceOptions): BatchEmergence {
  const females = shifted(lag, searchDays)
  const males = shifted(females, malesBefore[bee][wintering])
  const sd = deviation(flight, wintering)
  const to = Math.ceil(flight.lag + followed * flight.spreadDays + 3 * flight.nestingLife)
  return {
    males: emerging(day, males, sd, wintering),
    females: emerging(day, females, sd, wintering),
    nesting: { start: day, values: activeShare(flight, to) },
  }
}

/** Under this deviation, in days, a spread of the grower's own leaves nothing to tell days apart. */
const leastSpread = 0.5

/** Standard deviation of the day of coming out, in days. */
export function deviation({ spreadDays }: Pick<FlightSettings, 'spreadDays'>, wintering: Wintering): number {
  const cold = Math.max(leastSpread, spreadDays - searchSpread.value)
  return wintering === 'cold' ? cold : Math.max(cold, outdoorSpread.value)
}

/** One estimate less another; their doubts, taken to be independent, combine as the root of their squares. */
function shifted(from: DaySpan, by: DaySpan): DaySpan {
  const value = from.value - by.value
  return {
    value,
    low: value - Math.hypot(from.value - from.low, by.high - by.value),
    high: value + Math.hypot(from.high - from.value, by.value - by.low),
  }
}

function emerging(day: number, after: DaySpan, sd: number, wintering: Wintering): Emerging {
  const earliest = Math.floor(after.value - followed * sd)
  const start = wintering === 'cold' ? Math.max(0, earliest) : earliest
  const days = Math.max(1, Math.ceil(after.value + followed * sd) - start)
  const values = new Float64Array(days)
  // Of the normal curve, what lies on these days: everyone comes out once.
  const by = (n: number) => normalBelow((start + n - after.value) / sd)
  const all = by(days) - by(0)
  for (let i = 0; i < days; i += 1) values[i] = all > 0 ? (by(i + 1) - by(i)) / all : 1 / days
  const daily = { start: day + start, values }
  const least = wintering === 'cold' ? 0 : Number.NEGATIVE_INFINITY
  const onDay = (n: number) => day + Math.floor(Math.max(least, n))
  return {
    daily,
    half: { value: onDay(after.value), low: onDay(after.low), high: onDay(after.high) },
    first: outBy(daily, tail),
    last: outBy(daily, 1 - tail),
  }
}

/** The day by whose end a share of the bees is out. */
export function outBy({ start, values }: DailyCurve, share: number): number {
  let sum = 0
  for (let i = 0; i < values.length; i += 1) {
    sum += values[i]!
    if (sum >= share) return start + i
  }
  return start + values.length - 1
}
