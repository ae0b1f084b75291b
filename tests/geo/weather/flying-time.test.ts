import { describe, expect, it } from 'vitest'
import { bees } from '#geo/data/bees'
import type { Plan, WeatherDay } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { modelOf } from '#geo/report/model'
import { groundOf, unitInput } from '#geo/stocking/season-ground'
import { dateOfDay } from '#geo/time/day'
import { flightHours } from '#geo/weather/flight-hours'
import { flyingTime, withoutWeather } from '#geo/weather/flying-time'
import { hourlyTemperatures } from '#geo/weather/hours'
import { recordOf } from '#geo/weather/record'
import { daylight } from '#geo/weather/sun'
import { block, marks, planOf, spring, station } from '../../support/orchard'

const releases = [{ date: '2026-04-14', females: 200 }]
const bare = planOf({
  features: [block('early', [-30, -30, 30, 30]), station('s1', 0, 0), ...marks],
  stock: { s1: releases },
})

function withDays(days: readonly WeatherDay[], plan: Plan = bare): Plan {
  return { ...plan, seasons: plan.seasons.map(season => ({ ...season, weather: { days } })) }
}

/** The same weather from 1 March to the end of May. */
function every(of: (day: number) => readonly [number | null, number | null, number | null, number | null]) {
  return Array.from({ length: 92 }, (_, i): WeatherDay => [dateOfDay(60 + i, 2026), ...of(60 + i)])
}

function coverageOf(plan: Plan) {
  const outcome = evaluate(plan, 2026)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const told = (plan: Plan) =>
  coverageOf(plan)
    .problems.map(({ code }) => code)
    .filter(code => code.startsWith('weather'))

describe('hours of flight in a day', () => {
  const light = daylight(52.2, 110)
  const bee = { flightFrom: 12, flightFull: 15 }
  const day = { minimum: 6, maximum: 15, light, rain: 0, wind: 0 }

  it('are the sunlit hours, each by its temperature', () => {
    const hours = [...hourlyTemperatures([day])].filter((_, hour) => hour > light.sunrise && hour < light.sunset)
    const expected = hours.reduce((sum, degrees) => sum + Math.max(0, Math.min(1, (degrees - 12) / 3)), 0)
    expect(flightHours(day, bee)).toBeCloseTo(expected, 12)
    expect(flightHours({ ...day, minimum: 20, maximum: 30 }, bee)).toBe(hours.length)
    expect(flightHours({ ...day, maximum: 12 }, bee)).toBe(0)
  })

  it('are what the text beside the typical hours says: 6.2 and 9.0 on a dry day of 13.7 hours from 6 to 15 degC', () => {
    const april = { ...day, light: { sunrise: 12 - 6.85, sunset: 12 + 6.85, length: 13.7 } }
    expect(flightHours(april, bee)).toBeCloseTo(6.2, 0)
    expect(flightHours(april, { flightFrom: 10, flightFull: 14 })).toBeCloseTo(9, 0)
  })

  it('shrink with rain and wind, and not where those are unknown', () => {
    const whole = flightHours(day, bee)
    expect(flightHours({ ...day, rain: 5 }, bee)).toBeCloseTo(whole / Math.E, 12)
    expect(flightHours({ ...day, wind: 5 }, bee)).toBe(whole)
    expect(flightHours({ ...day, wind: 7.5 }, bee)).toBeCloseTo(whole / 2, 12)
    expect(flightHours({ ...day, wind: 11 }, bee)).toBe(0)
    expect(flightHours({ ...day, rain: null, wind: null }, bee)).toBe(whole)
  })
})

describe('flying time of a season', () => {
  it('is null without weather, and hangs on the species', () => {
    expect(flyingTime(bare, 2026, 'osmia-lignaria')).toBeNull()
    const cool = withDays(every(() => [3, 12, 0, 0]))
    const [lignaria, cornuta] = (['osmia-lignaria', 'osmia-cornuta'] as const).map(bee => flyingTime(cool, 2026, bee)!)
    expect(bees['osmia-lignaria'].parameters.flightFrom.value).toBe(12)
    expect(lignaria!.values[40]).toBe(0)
    expect(cornuta!.values[40]).toBeGreaterThan(0)
  })

  it('is that of the place: days are longer farther north in May', () => {
    const warm = withDays(every(() => [15, 25, 0, 0]))
    const empty = (lat: number): Plan => ({ ...warm, features: [], besides: { plan: { place: [0, lat] } } })
    const hours = [30, 62].map(lat => flyingTime(empty(lat), 2026, 'osmia-lignaria')!.values[85]!)
    expect(hours[1]).toBeGreaterThan(hours[0]!)
    expect(flyingTime({ ...warm, features: [], besides: {} }, 2026, 'osmia-lignaria')).toBeNull()
  })

  it('is typical, and marked unknown, where a day or a temperature is missing or the two are swapped', () => {
    const days: WeatherDay[] = [
      ['2026-04-20', 4, 16, 0, 0],
      ['2026-04-22', null, 16, 0, 0],
      ['2026-04-23', 16, 4, 0, 0],
      ['2026-04-24', 4, 16, null, 0],
      ['2026-04-24', 30, 40, 0, 0],
    ]
    const { start, values, known, isRainKnown } = flyingTime(withDays(days), 2026, 'osmia-lignaria')!
    expect(start).toBe(110)
    expect([...known]).toEqual([1, 0, 0, 0, 1])
    expect([...isRainKnown]).toEqual([1, 0, 0, 0, 0])
    expect([...values.subarray(1, 4)]).toEqual([1, 1, 1])
    expect(values[4]).toBeCloseTo(values[0]!, 1)
  })

  it('passes over days that cannot belong to the season', () => {
    expect(recordOf([['1999-05-01', 1, 2, 0, 0]], 2026)).toBeNull()
    expect(recordOf([['soon', 1, 2, 0, 0]], 2026)).toBeNull()
  })
})

describe('coverage with weather', () => {
  it('is none in a spring in which no bee could fly, and the best timing is still measured in typical days', () => {
    const { orchard, plantings } = coverageOf(withDays(every(() => [0, 8, 0, 0])))
    expect(orchard.coverage).toBe(0)
    expect(plantings[0]).toMatchObject({ timingMatch: 0, gains: { timing: 0 } })
  })

  it('grows in proportion to flying time', () => {
    const hours = (typicalFlyingHours: number) => {
      const plan = withDays(
        every(() => [6, 15, 0, 0]),
        { ...bare, parameters: { typicalFlyingHours } },
      )
      return coverageOf(plan).orchard.supplied!
    }
    expect(hours(12)).toBeCloseTo(hours(24) * 2, 6)
  })

  it('is the same with typical weather as without: 13 sunlit hours of full work a day, 13 typical', () => {
    // From 28 March to 15 April the sun at 52.2 N rises between five and six, so that 13 whole hours are sunlit.
    const bloom = { apple: { first: '2026-04-04', full: '2026-04-08', end: '2026-04-15' } }
    const plan = planOf({
      features: bare.features,
      stock: { s1: [{ date: '2026-03-28', females: 200 }] },
      bloom,
      parameters: { typicalFlyingHours: 13 },
    })
    const typical = withDays(
      every(() => [20, 25, 0, 5]),
      plan,
    )
    expect(coverageOf(typical)).toEqual(coverageOf(plan))
    expect(withoutWeather(typical, 2026)).toEqual(plan)
    expect(withoutWeather(plan, 2026)).toBe(plan)
  })

  it('falls back to typical days where temperatures are missing, and counts them', () => {
    const gaps = every(() => [null, null, 3, 3])
    const { orchard, problems } = coverageOf(withDays(gaps))
    expect(orchard).toEqual(coverageOf(bare).orchard)
    const [gap] = problems.filter(({ code }) => code === 'weather-gaps')
    // First blossom opens after 16.2 April, two days after release; the last falls before 6 May.
    expect(gap).toMatchObject({ severity: 'note', values: { year: 2026, first: '2026-04-17' } })
    expect(gap!.values.days).toBeLessThanOrEqual(19)
    expect(gap!.values.days).toBeGreaterThan(14)
    expect(told(withDays(every(() => [5, 15, 0, 0])))).toEqual([])
  })

  it('tells of days without rain figures', () => {
    expect(told(withDays(every(() => [8, 20, null, null])))).toEqual(['weather-no-rain'])
  })

  it('is the same for stocking and siting as for the report', () => {
    const plan = withDays(every(day => [4, 10 + (day % 7), day % 5, 2]))
    const ground = groundOf(plan, 2026)
    const model = modelOf(plan, 2026)
    if (!ground.ok || !model.ok) throw new Error('no result')
    const unit = unitInput(ground.value, { bee: 'osmia-lignaria', releases: [{ date: '2026-04-14', share: 1 }] })
    const stocked = ground.value.supplies[0]!.input
    const perFemale = stocked.flight.values.map(females => females / stocked.females)
    for (const [i, share] of unit.flight.values.entries()) expect(share).toBeCloseTo(perFemale[i]!, 12)
    const total = ground.value.coverage.totalsOf(0)
    expect(total.supplied).toBeCloseTo(model.value.report({ withLimits: false }).plantings[0]!.supplied!, 9)
    expect(spring.full).toBe('2026-04-24')
  })
})
