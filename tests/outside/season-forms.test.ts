import { describe, expect, test } from 'vitest'
import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import { activeShare, bestRelease, flightCurve } from '#geo/flight/flight'
import { normalBelow } from '#geo/flight/normal'
import type { Plant } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { type DailyCurve, sumOf, sumOfProduct, valueOn } from '#geo/time/curve'
import { dateOfDay } from '#geo/time/day'
import { at, planOf, station } from '../support/orchard'

/** Bloom and flight, day by day, against forms that are known in closed form. */

/** A bloom that rises from 0 at `start` to 1 `rise` days later, where `rise` is a multiple of ten, and falls to 0 at `end`. */
function triangle(start: number, rise: number, end: number): DailyCurve {
  const of = (day: number) => dateOfDay(day, 2026)
  return bloomCurve({ first: of(start + rise / 10), full: of(start + rise), end: of(end) }, 2026)
}

describe('bloom', () => {
  test.each([
    [10, 10],
    [10, 25],
    [20, 13],
    [30, 2],
  ])('rising %d days and falling %d holds half of their sum', (rise, fall) => {
    // The sum over whole days of a curve with corners on whole days is its area.
    expect(sumOf(triangle(80, rise, 80 + rise + fall))).toBeCloseTo((rise + fall) / 2, 12)
    const weight = bloomWeight(triangle(80, rise, 80 + rise + fall))
    expect(sumOf(weight)).toBeCloseTo(1, 12)
    // Its centre lies a third of the difference of its sides behind the peak, summed over days as well as integrated.
    const moment = weight.values.reduce((sum, value, i) => sum + value * (weight.start + i - 80 - rise), 0)
    expect(moment).toBeCloseTo((fall - rise) / 3, 12)
  })

  test.each([1, 2, 3, 4, 7, 10, 18])('opens over %d days from first to full: the arithmetic series', days => {
    const curve = bloomCurve(
      { first: dateOfDay(110, 2026), full: dateOfDay(110 + days, 2026), end: dateOfDay(140, 2026) },
      2026,
    )
    const rise = days / 0.9
    // Open before full bloom: 1 - i / rise for i = 0, 1, … while above 0; after it, (fall - i) / fall.
    const before = Math.ceil(rise - 1e-9)
    const fall = 30 - days
    expect(sumOf(curve)).toBeCloseTo(before - (before * (before - 1)) / (2 * rise) + (fall - 1) / 2, 12)
    expect(valueOn(curve, 110)).toBeCloseTo(0.1, 12)
    expect(valueOn(curve, 110 + days)).toBeCloseTo(1, 12)
    expect(valueOn(curve, 140)).toBe(0)
  })

  test('a share of a triangle (0, 10, 30) in days 5 to 20 is its area by the formula', () => {
    const curve = triangle(100, 10, 130)
    let share = (valueOn(curve, 105) + valueOn(curve, 120)) / 2
    for (let day = 106; day < 120; day += 1) share += valueOn(curve, day)
    // 1 - 5^2 / (10 x 30) - 10^2 / (20 x 30)
    expect(share / 15).toBeCloseTo(1 - 25 / 300 - 100 / 600, 12)
  })

  // Integral of the product of two triangles of height 1 and half-base h, shifted by t h: h (2/3 - t^2 + t^3 / 2), h (2 - t)^3 / 6.
  test.each([
    [0, 20 / 3],
    [6, 4.1466666667],
    [10, 1.6666666667],
    [14, 0.36],
    [20, 0],
  ])('two blooms of ten days up and ten down, %d days apart, overlap as their integral', (shift, integral) => {
    const found = sumOfProduct(triangle(100, 10, 120), triangle(100 + shift, 10, 120 + shift))
    // Between corners the product is a parabola; the sum over days is over its integral by a twelfth of what its slope changes.
    const corners = [...new Set([100, 110, 120, 100 + shift, 110 + shift, 120 + shift])].sort((a, b) => a - b)
    const height = (day: number, start: number) => Math.max(0, 1 - Math.abs(day - start - 10) / 10)
    const slope = (day: number, start: number) => (Math.abs(day - start - 10) >= 10 ? 0 : day < start + 10 ? 0.1 : -0.1)
    let over = 0
    for (let i = 1; i < corners.length; i += 1) {
      const [from, to] = [corners[i - 1]!, corners[i]!]
      const middle = (from + to) / 2
      const [a, b] = [slope(middle, 100), slope(middle, 100 + shift)]
      if (height(middle, 100) === 0 || height(middle, 100 + shift) === 0) continue
      over += (2 * a * b * (to - from)) / 12
    }
    expect(found - over).toBeCloseTo(integral, 9)
  })
})

describe('flight', () => {
  // Standard normal distribution: printed tables, and Phi(0.4) - Phi(-2).
  test('counts starters by the normal distribution', () => {
    expect(normalBelow(0.4) - normalBelow(-2)).toBeCloseTo(0.6326716097, 10)
    expect(normalBelow(1.3)).toBeCloseTo(0.9031995154, 10)
    expect(2 * normalBelow(-0.6)).toBeCloseTo(0.5485062355, 10)
  })

  /** Emergence normal about day 100 with deviation 4, loss of 0.06 a day, seen on day 110: e^(mu(m-t) + mu2 s2/2) Phi((t-m)/s - mu s). */
  const continuous = 0.5581195316

  test('in whole days lies between the share of a moment and one day of losses more', () => {
    // Released on day 80: those of the day that ends at day 110 are the thirtieth.
    const share = activeShare({ lag: 20, spreadDays: 4, nestingLife: 1 / 0.06 }, 30)[29]!
    expect(share).toBeGreaterThan(continuous)
    expect(share * Math.exp(-0.06)).toBeLessThan(continuous)
    // Half a day of losses is the mean that counting by days leaves out; the rest is of second order in 0.06.
    expect(Math.abs(share * Math.exp(-0.03) - continuous)).toBeLessThan((0.06 ** 2 / 8) * continuous)
  })

  test('cut ever finer, becomes the share of a moment', () => {
    for (const parts of [10, 100, 1000]) {
      const fine = { lag: 20 * parts, spreadDays: 4 * parts, nestingLife: parts / 0.06 }
      const share = activeShare(fine, 30 * parts)[30 * parts - 1]!
      const loss = 0.06 / parts
      // The one in a million that start before release are counted from release on.
      expect(Math.abs(share * Math.exp(-loss / 2) - continuous)).toBeLessThan((loss * loss) / 8 + normalBelow(-5))
    }
  })

  test('cut into days, is the sum of starters of each day less the losses since, with the normal curve integrated', () => {
    const [lag, spread, life] = [8, 3, 18]
    const density = (t: number) => Math.exp(-((t - lag) ** 2) / (2 * spread ** 2)) / (spread * Math.sqrt(2 * Math.PI))
    // Simpson's rule in steps of a hundredth of a day: under 1e-11 off.
    const between = (from: number, to: number): number => {
      const steps = Math.round((to - from) * 100)
      let sum = density(from) + density(to)
      for (let i = 1; i < steps; i += 1) sum += (i % 2 === 1 ? 4 : 2) * density(from + (i * (to - from)) / steps)
      return (sum * (to - from)) / steps / 3
    }
    const share = activeShare({ lag, spreadDays: spread, nestingLife: life }, 60)
    for (const n of [0, 1, 5, 8, 20, 59]) {
      let sum = 0
      for (let m = 0; m <= n; m += 1) sum += between(m === 0 ? -30 : m, m + 1) * Math.exp(-(n - m) / life)
      expect(share[n]).toBeCloseTo(sum, 9)
    }
  })

  test('of all starters in one day is one exponential, and the whole work of a batch is the sum of a geometric series', () => {
    const life = 15
    const share = activeShare({ lag: 10.5, spreadDays: 1e-3, nestingLife: life }, 400)
    for (const n of [10, 11, 30]) expect(share[n]).toBeCloseTo(Math.exp(-(n - 10) / life), 12)
    expect(share[9]).toBe(0)
    const work = share.reduce((sum, value) => sum + value, 0)
    expect(work).toBeCloseTo((1 - Math.exp(-390 / life)) / (1 - Math.exp(-1 / life)), 9)
  })

  test('of two batches is that of each, added, wherever the days begin', () => {
    const bee = { lag: 8, spreadDays: 3, nestingLife: 18 }
    const share = activeShare(bee, 60)
    const both = [
      { day: 95, females: 40 },
      { day: 103, females: 25 },
    ]
    const { start, values } = flightCurve(both, bee, 98, 140)
    for (const day of [98, 102, 103, 120, 139]) {
      expect(values[day - start]).toBeCloseTo(40 * share[day - 95]! + 25 * (share[day - 103] ?? 0), 12)
    }
  })
})

describe('the best release', () => {
  test('for starters of one day is the one whose losses over the bloom, summed day by day, are least', () => {
    const weight = bloomWeight(triangle(100, 10, 120))
    const bee = { lag: 10.5, spreadDays: 1e-3 }
    const life = 15
    const sums = Array.from({ length: 60 }, (_, i) => {
      const start = 70 + i + 10
      let sum = 0
      for (let day = start; day < 121; day += 1) sum += valueOn(weight, day) * Math.exp(-(day - start) / life)
      return { day: 70 + i, sum }
    })
    const best = sums.reduce((a, b) => (b.sum > a.sum ? b : a))
    const found = bestRelease(weight, { ...bee, nestingLife: life })
    expect(found.day).toBe(best.day)
    expect(found.overlap).toBeCloseTo(best.sum, 12)
  })

  test('gives one crop with all blossom in range as much service as there are females, over the reference share', () => {
    const trees: Plant = {
      type: 'Feature',
      id: 'trees',
      geometry: { type: 'MultiPoint', coordinates: [at(0, 0), at(30, 10), at(-20, 45)] },
      properties: { kind: 'plant', crop: 'apple', spread: 4 },
    }
    const bee = { emergence: 0.9, establishment: 0.5, lag: 8, spreadDays: 3, nestingLife: 18 }
    const dates = { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' }
    const day = bestRelease(bloomWeight(bloomCurve(dates, 2026)), bee).day
    const report = evaluate(
      planOf({
        features: [trees, station('s', 5, 5)],
        stock: { s: [{ date: dateOfDay(day, 2026), females: 100 }] },
        bloom: { apple: dates },
        parameters: { backgroundBlossom: 0, referenceCropShare: 0.85, 'osmia-lignaria': bee },
      }),
      2026,
    )
    expect(report.ok && report.value.orchard.supplied! * 0.85).toBeCloseTo(45, 9)
    expect(report.ok && report.value.plantings[0]!.timingMatch).toBeCloseTo(1, 12)
  })
})
