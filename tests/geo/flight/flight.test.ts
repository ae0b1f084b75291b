import { describe, expect, it } from 'vitest'
import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import { activeShare, bestRelease, flightCurve } from '#geo/flight/flight'
import { normalBelow } from '#geo/flight/normal'
import { releaseDay } from '#geo/flight/release-day'
import { sumOfProduct, valueOn } from '#geo/time/curve'

const bee = { lag: 8, spreadDays: 3, nestingLife: 18 }

describe('normalBelow', () => {
  it('has the values of the printed tables', () => {
    // Abramowitz & Stegun 1964, table 26.1.
    expect(normalBelow(0)).toBe(0.5)
    expect(normalBelow(1)).toBeCloseTo(0.841344746068543, 14)
    expect(normalBelow(1.96)).toBeCloseTo(0.97500210485178, 14)
    expect(normalBelow(-3)).toBeCloseTo(0.00134989803163, 14)
  })

  it('is symmetric and ends at 0 and 1', () => {
    for (const x of [0.1, 0.7, 2, 5, 7.9, 8.1, 40]) expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14)
  })
})

describe('activeShare', () => {
  it('is the sum of section 4, written out', () => {
    const share = activeShare(bee, 40)
    const first = (m: number) =>
      m === 0 ? normalBelow((1 - 8) / 3) : normalBelow((m + 1 - 8) / 3) - normalBelow((m - 8) / 3)
    for (const n of [0, 3, 10, 39]) {
      let sum = 0
      for (let m = 0; m <= n; m += 1) sum += first(m) * Math.exp(-(n - m) / 18)
      expect(share[n]).toBeCloseTo(sum, 13)
    }
  })

  it('works about nestingLife days in all: the sum of exp(-j / life)', () => {
    const days = activeShare(bee, 600).reduce((sum, value) => sum + value, 0)
    expect(days).toBeCloseTo(1 / (1 - Math.exp(-1 / 18)), 9)
  })

  it('refuses a spread or a life of nothing', () => {
    expect(() => activeShare({ ...bee, spreadDays: 0 }, 5)).toThrow(RangeError)
    expect(() => activeShare({ ...bee, nestingLife: 0 }, 5)).toThrow(RangeError)
  })
})

describe('flightCurve', () => {
  it('adds batches, and nothing flies before it is released', () => {
    const curve = flightCurve(
      [
        { day: 10, females: 40 },
        { day: 20, females: 60 },
      ],
      bee,
      0,
      60,
    )
    const share = activeShare(bee, 60)
    expect(valueOn(curve, 9)).toBe(0)
    expect(valueOn(curve, 15)).toBeCloseTo(40 * share[5]!, 12)
    expect(valueOn(curve, 30)).toBeCloseTo(40 * share[20]! + 60 * share[10]!, 12)
  })
})

describe('bestRelease', () => {
  const weight = bloomWeight(bloomCurve({ first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' }, 2026))

  it('beats every other day, and lies before full bloom by about the lag', () => {
    const best = bestRelease(weight, bee)
    const overlapOn = (day: number) => sumOfProduct({ start: day, values: activeShare(bee, 200) }, weight)
    for (let day = -60; day < 140; day += 1) expect(overlapOn(day)).toBeLessThanOrEqual(best.overlap + 1e-15)
    expect(overlapOn(best.day)).toBeCloseTo(best.overlap, 14)
    expect(best.day).toBeGreaterThan(90)
    expect(best.day).toBeLessThan(114)
  })

  it('is a share: at most all females at work on all of the bloom', () => {
    expect(bestRelease(weight, bee).overlap).toBeGreaterThan(0)
    expect(bestRelease(weight, { ...bee, nestingLife: 4000, spreadDays: 0.3 }).overlap).toBeLessThanOrEqual(1)
  })
})

describe('releaseDay', () => {
  const bloomFrom = (day: number) => bloomWeight({ start: day, values: Float64Array.of(0.2, 0.6, 1, 0.7, 0.4, 0.1) })
  const [early, late] = [bloomFrom(100), bloomFrom(130)]
  const dayOf = (...weights: readonly [number, number]) =>
    releaseDay(
      [early, late].map((days, i) => ({ days, weight: weights[i]! })),
      bee,
    )

  it('of one bloom is the best day there is for it', () => {
    expect(dayOf(1, 0)).toBe(bestRelease(early, bee).day)
    expect(dayOf(0, 5)).toBe(bestRelease(late, bee).day)
    expect(dayOf(1, 0)! + 30).toBe(dayOf(0, 1))
  })

  it('of several serves their weighed sum best, whatever the weights add up to', () => {
    const worth = (day: number, weights: readonly [number, number]) =>
      [early, late].reduce(
        (sum, days, i) => sum + weights[i]! * sumOfProduct({ start: day, values: activeShare(bee, 200) }, days),
        0,
      )
    for (const [a, b] of [
      [1, 1],
      [3, 1],
      [1, 9],
    ] as const) {
      const day = dayOf(a, b)!
      expect(dayOf(7 * a, 7 * b)).toBe(day)
      for (let other = 60; other < 136; other += 1)
        expect(worth(other, [a, b])).toBeLessThanOrEqual(worth(day, [a, b]) + 1e-12)
    }
  })

  it('is none where nothing blooms', () => {
    expect(dayOf(0, 0)).toBeNull()
    expect(releaseDay([], bee)).toBeNull()
  })
})
