import type { WeatherDay } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { addDays, daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { counted, dateSpan } from '../../text/words'

export type WeatherSummary = {
  readonly from: IsoDate
  readonly to: IsoDate
  /** Days with a line of their own, by date. */
  readonly days: number
  /** Dates between the first and the last without a line. */
  readonly missing: readonly IsoDate[]
  /** Days that lack a figure. */
  readonly withoutTemperature: number
  readonly withoutRain: number
  readonly withoutWind: number
}

/** What a season's weather holds and lacks; null where it holds no day. Lines with a date that is none are passed over. */
export function weatherSummary(lines: readonly WeatherDay[]): WeatherSummary | null {
  const byDate = new Map<IsoDate, WeatherDay>()
  for (const line of lines) if (isIsoDate(line[0]) && !byDate.has(line[0])) byDate.set(line[0], line)
  const dates = [...byDate.keys()].sort()
  const [from] = dates
  const to = dates.at(-1)
  if (from === undefined || to === undefined) return null
  const span = daysBetween(from, to)
  const missing = Array.from({ length: span }, (_, i) => addDays(from, i)).filter(date => !byDate.has(date))
  const without = (column: 1 | 2 | 3 | 4) => [...byDate.values()].filter(line => line[column] === null).length
  const withoutTemperature = [...byDate.values()].filter(([, low, high]) => low === null || high === null).length
  return { from, to, days: dates.length, missing, withoutTemperature, withoutRain: without(3), withoutWind: without(4) }
}

/** "120 days, 1 February to 31 May 2026; 3 days are missing, the first 4 April 2026; no wind." */
export function weatherText({ from, to, days, missing, ...without }: WeatherSummary): string {
  const { withoutTemperature, withoutRain, withoutWind } = without
  const [first] = missing
  const gaps =
    first === undefined
      ? 'none missing'
      : `${missing.length === 1 ? '1 day is' : `${missing.length} days are`} missing, the first ${dateText(first)}`
  const lacks = [
    lackText(withoutTemperature, days, 'temperatures'),
    lackText(withoutRain, days, 'rain'),
    lackText(withoutWind, days, 'wind'),
  ].filter(Boolean)
  return `${counted(days, 'day')}, ${from === to ? dateText(from) : dateSpan(from, to)}; ${[gaps, ...lacks].join('; ')}.`
}

function lackText(lacking: number, days: number, what: string): string {
  if (lacking === 0) return ''
  return lacking === days ? `no ${what}` : `no ${what} on ${counted(lacking, 'day')}`
}
