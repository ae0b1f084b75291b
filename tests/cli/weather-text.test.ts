import { describe, expect, test } from 'vitest'
import type { Bloom, Plan, Season, WeatherDay } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { dateOfDay } from '#geo/time/day'
import { weatherText } from '../../src/cli/weather-text'
import { planOf, row, station } from '../support/orchard'

const features = [row('r1', [0, 0], [30, 0]), row('q1', [0, 9], [30, 9], { crop: 'quince' }), station('s1', 5, 5)]
const stock = { s1: [{ date: '2026-04-14', females: 100 }] }

function days(from: number, to: number, year = 2026): readonly WeatherDay[] {
  return Array.from({ length: to - from + 1 }, (_, i) => [dateOfDay(from + i, year), 3, 13, 0, null])
}

function textOf(
  weather: readonly WeatherDay[],
  units: Plan['units'] = 'metric',
  others: readonly Season[] = [],
): string {
  const plan = planOf({ features, stock })
  const seasons = plan.seasons.map(season => (weather.length > 0 ? { ...season, weather: { days: weather } } : season))
  const whole = { ...plan, seasons: [...others, ...seasons] }
  const outcome = evaluate(whole, 2026)
  if (!outcome.ok) throw new RangeError('the plan has a report')
  return weatherText(whole, outcome.value, units).join('\n')
}

describe('what the weather of a season says', () => {
  test('is nothing where it holds none', () => {
    expect(textOf([])).toBe('')
  })

  test('is coverage with and without it, flying time, chill and full bloom by heat', () => {
    const text = textOf(days(-91, 150))
    expect(text).toMatch(/Coverage +\d+% in this weather, \d+% on typical spring days/)
    expect(text).toMatch(/Flying time, Blue orchard bee +\d+% of a typical spring day's, over 19 days of bloom/)
    expect(text).toMatch(/Winter chill .*portions.* \(1 October 2025 to 31 March 2026, estimated\)/)
    // 119 days of 6 degree-days from 1 February to 30 May; the sine counts the warm hours below a mean of 2 as well.
    expect(text).toMatch(
      /Heat over 2 °C +714 °C d by daily means, 714 by single sine \(1 February 2026 to 30 May 2026\)/,
    )
    expect(text).toMatch(/Chill needed +Apple 50 portions/)
    // 6 degree-days a day from 1 February: the 72nd day.
    expect(text).toMatch(
      /Apple +24 April 2026 +13 April 2026 +9 +428 °C d over 2 °C from 1 February 2026, a total from/,
    )
    expect(text).toMatch(/Quince +not known +13 April 2026 .*apple's full bloom by heat/)
    expect(text).not.toMatch(/NaN|undefined|null/)
  })

  test('is in degrees Fahrenheit for those who count in them', () => {
    expect(textOf(days(1, 150), 'us')).toContain('770.4 °F d over 35.6 °F from 1 February 2026')
  })

  test('says how much heat is still missing, and which dates of its own the total comes from', () => {
    expect(textOf(days(1, 60))).toMatch(/the usual calendar; heat so far 41% of what it takes, up to 1 March 2026/)
    const seen: Bloom = { first: '2025-04-10', full: '2025-04-15', end: '2025-04-25', observed: ['full'] }
    const last = { year: 2025, bloom: { apple: seen }, weather: { days: days(1, 150, 2025) } }
    expect(textOf(days(1, 150), 'metric', [last])).toMatch(
      /15 April 2026 +5 +444 °C d .*by full bloom seen on 15 April 2025/,
    )
  })

  test('counts the days without temperatures against the chill', () => {
    const holes = days(-91, 150).map((day, i): WeatherDay => (i === 9 ? [day[0], null, null, null, null] : day))
    expect(textOf(holes)).toContain('at least; 1 day missing')
  })
})
