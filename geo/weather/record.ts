import type { WeatherDay } from '../plan/plan'
import { dateOfDay, dayOfSeason, isIsoDate } from '../time/day'

/** Daily weather in a row from day `start` of a season on; NaN where a figure is not known. degC, mm, m/s. */
export type WeatherRecord = {
  readonly start: number
  readonly minimum: Float64Array
  readonly maximum: Float64Array
  readonly rain: Float64Array
  readonly wind: Float64Array
}

/** Days of a season before its 1 January, and after, that its weather may speak of; others are passed over. */
const before = 366
const after = 732

const kept = new WeakMap<readonly WeatherDay[], { readonly year: number; readonly record: WeatherRecord | null }>()

/**
 * Weather by day of the season `year`; null where no day is given. Of a day given twice the first holds. Temperatures
 * of a day count as unknown unless both are there and in order: one alone, or a pair the wrong way round, says nothing sure.
 */
export function recordOf(days: readonly WeatherDay[], year: number): WeatherRecord | null {
  const known = kept.get(days)
  if (known?.year === year) return known.record
  const record = madeRecord(days, year)
  kept.set(days, { year, record })
  return record
}

function madeRecord(days: readonly WeatherDay[], year: number): WeatherRecord | null {
  const numbered = days
    .filter(([date]) => isIsoDate(date))
    .map(day => ({ number: dayOfSeason(day[0], year), day }))
    .filter(({ number }) => number > -before && number <= after)
  if (numbered.length === 0) return null
  const start = numbered.reduce((least, { number }) => Math.min(least, number), Number.POSITIVE_INFINITY)
  const end = numbered.reduce((most, { number }) => Math.max(most, number), Number.NEGATIVE_INFINITY)
  const unknown = () => new Float64Array(end - start + 1).fill(Number.NaN)
  const record = { start, minimum: unknown(), maximum: unknown(), rain: unknown(), wind: unknown() }
  const seen = new Set<number>()
  for (const { number, day } of numbered) {
    if (seen.has(number)) continue
    seen.add(number)
    const [, minimum, maximum, rain, wind] = day
    const at = number - start
    if (minimum !== null && maximum !== null && minimum <= maximum) {
      record.minimum[at] = minimum
      record.maximum[at] = maximum
    }
    if (rain !== null) record.rain[at] = rain
    if (wind !== null) record.wind[at] = wind
  }
  return record
}

/** Of days of many years those that a season can use: from the 1 July before it, so that a whole winter is there, to its end. */
export function weatherOfSeason(days: readonly WeatherDay[], year: number): readonly WeatherDay[] {
  const [from, to] = [dateOfDay(-183, year), dateOfDay(366, year)]
  return days.filter(([date]) => date >= from && date <= to && date.slice(0, 4) <= dateOfDay(1, year).slice(0, 4))
}
