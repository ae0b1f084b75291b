import { describe, expect, it } from 'vitest'
import { heatOf } from '#geo/bloom/heat'
import { cultivarBloom, cultivarDays, predictedBloom } from '#geo/bloom/predict'
import type { Bloom, Plan, Season, WeatherDay } from '#geo/plan/plan'
import { dateOfDay } from '#geo/time/day'
import { chillPortions } from '#geo/weather/chill'
import { dayReaching, heatSum } from '#geo/weather/degree-sum'
import { recordOf } from '#geo/weather/record'
import { winterChill } from '#geo/weather/winter-chill'
import { planOf, row, station } from '../../support/orchard'

const features = [row('r1', [0, 0], [20, 0], { cultivar: 'golden delicious' }), station('s1', 5, 5)]
const seen: Bloom = { first: '2025-04-17', full: '2025-04-21', end: '2025-05-02', observed: ['full'] }

/** Every day from 1 January at `degrees` on the mean. */
function even(year: number, degrees: number, until = 200): readonly WeatherDay[] {
  return Array.from({ length: until }, (_, i) => [dateOfDay(1 + i, year), degrees - 4, degrees + 4, 0, null])
}

function plan(...seasons: readonly Season[]): Plan {
  return { ...planOf({ features }), seasons }
}

describe('degree-days added up', () => {
  const gap = (from: number, to: number) =>
    even(2026, 10, 60).map(
      (day, i): WeatherDay => (i + 1 >= from && i + 1 <= to ? [day[0], null, null, null, null] : day),
    )
  const sumOf = (days: readonly WeatherDay[], start = 32) => heatSum(recordOf(days, 2026)!, start, 2)

  it('reach a total on the first day that is at least it', () => {
    const sum = sumOf(even(2026, 10))
    expect([sum.sums[0], sum.sums[1]]).toEqual([8, 16])
    expect(dayReaching(sum, 16)).toBe(33)
    expect(dayReaching(sum, 16.1)).toBe(34)
    expect(dayReaching(sum, 1e6)).toBeNull()
  })

  it('bridge a gap of five days by those beside it, and end at a longer one', () => {
    expect(sumOf(gap(40, 44))).toEqual({ ...sumOf(even(2026, 10, 60)), bridged: 5 })
    const stopped = sumOf(gap(40, 45))
    expect(stopped).toMatchObject({ end: 'gap', bridged: 0 })
    expect(stopped.sums).toHaveLength(8)
    expect(sumOf(gap(30, 45)).end).toBe('late')
    expect(sumOf(gap(58, 60))).toMatchObject({ end: 'weather', bridged: 0 })
  })
})

describe('bloom by heat', () => {
  it('is the day that reaches the total, with its stages and what it may be off', () => {
    // 8 degree-days a day over 2 from 1 February: 428 on the 54th day, 26 March.
    const found = predictedBloom(plan({ year: 2026, weather: { days: even(2026, 10) } }), 2026, 'apple')!
    expect(found).toMatchObject({ basis: 'degree-days', before: 9, after: 9 })
    expect(found.bloom).toEqual({ first: '2026-03-22', full: '2026-03-26', end: '2026-04-03' })
    expect(found.heat).toMatchObject({ from: '2026-02-01', total: 428, isRescaled: false, state: 'reached' })
  })

  it("takes the total of the grower's own date where its weather is there, and is then surer", () => {
    const last = { year: 2025, bloom: { apple: seen }, weather: { days: even(2025, 12) } }
    const found = predictedBloom(plan(last, { year: 2026, weather: { days: even(2026, 12) } }), 2026, 'apple')!
    // 10 degree-days on each of the 80 days from 1 February to 21 April.
    expect(found.heat).toMatchObject({
      isRescaled: true,
      total: 800,
      seasons: [{ year: 2025, full: '2025-04-21', total: 800 }],
    })
    expect(found).toMatchObject({ bloom: { full: '2026-04-21' }, before: 5, after: 5 })
  })

  it('does not take a date that was not seen, or whose weather is missing, for its own', () => {
    const { observed: _, ...typed } = seen
    const guessed = { year: 2025, bloom: { apple: typed }, weather: { days: even(2025, 12) } }
    const bare = { year: 2025, bloom: { apple: seen } }
    const short = { ...bare, weather: { days: even(2025, 12, 90) } }
    for (const last of [guessed, bare, short]) {
      expect(heatOf(plan(last, { year: 2026, weather: { days: even(2026, 10) } }), 2026, 'apple')).toMatchObject({
        isRescaled: false,
        total: 428,
      })
    }
  })

  it('says how far it has come where the weather stops, and falls back on the calendar', () => {
    const found = predictedBloom(plan({ year: 2026, weather: { days: even(2026, 10, 60) } }), 2026, 'apple')!
    expect(found.basis).toBe('calendar')
    expect(found.heat).toMatchObject({ state: 'weather', full: null, sum: 29 * 8, until: '2026-03-01' })
    expect(found.before).toBeGreaterThan(9)
    expect(predictedBloom(plan({ year: 2026 }), 2026, 'apple')!.heat).toMatchObject({ state: 'none', until: null })
  })
})

describe('bloom of other crops', () => {
  it('follows apple where that was seen, however warm it was: surer than a total from elsewhere', () => {
    const bloom = { apple: { first: '2026-04-10', full: '2026-04-14', end: '2026-04-25', observed: ['full'] } }
    const found = predictedBloom(plan({ year: 2026, bloom, weather: { days: even(2026, 10) } }), 2026, 'pear-european')!
    expect(found).toMatchObject({ basis: 'apple-observed', bloom: { full: '2026-04-03' }, before: 6, after: 6 })
    expect(predictedBloom(plan({ year: 2026, bloom }), 2026, 'apple')).toMatchObject({ basis: 'observed', before: 0 })
  })

  it("follows apple's heat where it has no total of its own", () => {
    const season = { year: 2026, weather: { days: even(2026, 10) } }
    expect(predictedBloom(plan(season), 2026, 'quince')).toMatchObject({
      basis: 'apple-degree-days',
      bloom: { full: '2026-03-26' },
    })
    expect(predictedBloom(plan(season), 2026, 'cherry-sweet')).toMatchObject({ basis: 'degree-days' })
  })

  it('is unknown for a crop without offsets, and that of the base for one that has a base', () => {
    const own = { 'my-apple': { basedOn: 'apple' }, odd: {} }
    const of = { ...plan({ year: 2026, weather: { days: even(2026, 10) } }), crops: own }
    expect(predictedBloom(of, 2026, 'odd')).toBeNull()
    expect(predictedBloom(of, 2026, 'apple')!.asCrop).toBeNull()
    expect(predictedBloom(of, 2026, 'my-apple')).toMatchObject({
      basis: 'degree-days',
      asCrop: 'apple',
      bloom: { full: '2026-03-26' },
    })
  })

  it('is moved by the cultivar that a planting names', () => {
    const of = plan({ year: 2026, weather: { days: even(2026, 10) } })
    const planting = features[0]!
    if (planting.properties.kind !== 'row') throw new TypeError('a row was expected')
    const { bloom } = predictedBloom(of, 2026, planting.properties.crop)!
    expect(cultivarBloom(of, planting as Parameters<typeof cultivarBloom>[1], bloom)).toEqual({
      days: 1,
      bloom: { first: '2026-03-23', full: '2026-03-27', end: '2026-04-04' },
    })
    expect(cultivarDays(of, 'plum-european', 'KRAMER-Hauszwetsche')).toBe(3)
    expect(cultivarDays(of, 'apple', '')).toBe(0)
    expect(cultivarDays(of, 'quince', 'Boskoop')).toBe(0)
  })
})

describe('chill of the winter before', () => {
  const days = Array.from({ length: 200 }, (_, i): WeatherDay => [dateOfDay(i - 120, 2026), 6, 6, 0, null])

  it('is counted from 1 October to 31 March', () => {
    const chill = winterChill(plan({ year: 2026, weather: { days } }), 2026)!
    expect(chill).toMatchObject({ from: '2025-10-01', until: '2026-03-20', missing: 0 })
    // 171 days at 6 degC throughout.
    expect(chill.hours).toBe(171 * 24)
    expect(chill.utah).toBe(171 * 24)
    expect(chill.portions).toBeCloseTo(chillPortions(Array.from({ length: 171 * 24 }, () => 6)), 9)
    expect(chill.growingHours).toBeCloseTo(79 * 24 * 0.4665, 0)
  })

  it('passes over days without temperatures and says how many', () => {
    const holes = days.map((day, i): WeatherDay => (i % 10 === 0 ? [day[0], null, 6, 0, null] : day))
    const chill = winterChill(plan({ year: 2026, weather: { days: holes } }), 2026)!
    expect(chill.missing).toBeGreaterThan(15)
    expect(chill.hours).toBe((171 - chill.missing) * 24)
    expect(winterChill(plan({ year: 2026 }), 2026)).toBeNull()
  })
})
