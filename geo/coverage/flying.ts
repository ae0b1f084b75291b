import type { DailyCurve } from '../time/curve'
import type { FlyingTime } from '../weather/flying-time'

/** Females at work, in terms of a typical day's: a flight curve times the day's flying time. */
export function timesFlyingTime(flight: DailyCurve, flying: FlyingTime | null): DailyCurve {
  if (flying === null) return flight
  const values = flight.values.map((females, i) => females * (flying.values[flight.start + i - flying.start] ?? 1))
  return { start: flight.start, values }
}
