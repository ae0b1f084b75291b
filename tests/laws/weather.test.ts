import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { meanDegreeDays, sineDegreeDays } from '#geo/weather/degree-days'
import { flightHours } from '#geo/weather/flight-hours'
import { hourlyTemperatures } from '#geo/weather/hours'
import { daylight } from '#geo/weather/sun'

const fixed = { seed: 20260501, numRuns: 300 }
const degrees = fc.double({ min: -20, max: 40, noNaN: true })
const latitude = fc.double({ min: -75, max: 75, noNaN: true })
const day = fc.integer({ min: -200, max: 600 })
const bee = fc
  .record({ from: fc.double({ min: 0, max: 20, noNaN: true }), over: fc.double({ min: 0.1, max: 10, noNaN: true }) })
  .map(({ from, over }) => ({ flightFrom: from, flightFull: from + over }))
const weather = fc
  .record({
    low: degrees,
    range: fc.double({ min: 0, max: 25, noNaN: true }),
    rain: fc.option(fc.double({ min: 0, max: 60, noNaN: true })),
    wind: fc.option(fc.double({ min: 0, max: 20, noNaN: true })),
    latitude,
    day,
  })
  .map(({ low, range, rain, wind, ...when }) => ({
    minimum: low,
    maximum: low + range,
    rain,
    wind,
    light: daylight(when.latitude, when.day),
  }))

describe('laws of flying time', () => {
  it('lies between none and the hours of daylight', () => {
    fc.assert(
      fc.property(weather, bee, (one, thresholds) => {
        const hours = flightHours(one, thresholds)
        expect(hours).toBeGreaterThanOrEqual(0)
        // Whole hours strictly between sunrise and sunset: at most one more than fit in between.
        expect(hours).toBeLessThanOrEqual(Math.ceil(one.light.length))
      }),
      fixed,
    )
  })

  it('is never less on a warmer day, nor more on a wetter or windier one', () => {
    fc.assert(
      fc.property(weather, bee, fc.double({ min: 0, max: 15, noNaN: true }), (one, thresholds, more) => {
        const hours = flightHours(one, thresholds)
        const small = 1e-9
        expect(flightHours({ ...one, maximum: one.maximum + more }, thresholds)).toBeGreaterThanOrEqual(hours - small)
        const warmer = { ...one, minimum: one.minimum + more, maximum: one.maximum + more }
        expect(flightHours(warmer, thresholds)).toBeGreaterThanOrEqual(hours - small)
        expect(flightHours({ ...one, rain: (one.rain ?? 0) + more }, thresholds)).toBeLessThanOrEqual(hours + small)
        expect(flightHours({ ...one, wind: (one.wind ?? 0) + more }, thresholds)).toBeLessThanOrEqual(hours + small)
      }),
      fixed,
    )
  })
})

describe('laws of temperatures by the hour', () => {
  it('stay between the lowest and highest of the days around, and join at midnight', () => {
    const days = fc.array(fc.record({ low: degrees, range: fc.double({ min: 0, max: 25, noNaN: true }) }), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(days, fc.double({ min: -60, max: 60, noNaN: true }), day, (list, where, first) => {
        const row = list.map(({ low, range }, i) => ({
          minimum: low,
          maximum: low + range,
          light: daylight(where, first + i),
        }))
        const lowest = Math.min(...row.map(({ minimum }) => minimum))
        const highest = Math.max(...row.map(({ maximum }) => maximum))
        for (const degree of hourlyTemperatures(row)) {
          expect(degree).toBeGreaterThanOrEqual(lowest - 1e-9)
          expect(degree).toBeLessThanOrEqual(highest + 1e-9)
        }
      }),
      fixed,
    )
  })
})

describe('laws of degree-days', () => {
  it('the sine is never below the mean, equals it on warm days, and both fall as the base rises', () => {
    fc.assert(
      fc.property(degrees, fc.double({ min: 0, max: 25, noNaN: true }), degrees, (low, range, base) => {
        const high = low + range
        const [mean, sine] = [meanDegreeDays(low, high, base), sineDegreeDays(low, high, base)]
        expect(sine).toBeGreaterThanOrEqual(mean - 1e-9)
        if (base <= low) expect(sine).toBeCloseTo(mean, 9)
        expect(sineDegreeDays(low, high, base + 1)).toBeLessThanOrEqual(sine + 1e-9)
        expect(meanDegreeDays(low, high, base + 1)).toBeLessThanOrEqual(mean)
      }),
      fixed,
    )
  })
})
