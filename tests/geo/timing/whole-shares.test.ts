import fc from 'fast-check'
import { expect, it } from 'vitest'
import { wholeShares } from '#geo/timing/whole-shares'

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

it('shares out whole things, the largest remainders first', () => {
  expect(wholeShares(10, [0.45, 0.55])).toEqual([5, 5])
  expect(wholeShares(10, [0.4, 0.6])).toEqual([4, 6])
  expect(wholeShares(7, [0.2, 0.3, 0.5])).toEqual([1, 2, 4])
  expect(wholeShares(0, [0.5, 0.5])).toEqual([0, 0])
})

it('adds up exactly, and lots shared out one after another come to what all of them together would', () => {
  const parts = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 4 })
  const lots = fc.array(fc.nat({ max: 60 }), { minLength: 1, maxLength: 8 })
  fc.assert(
    fc.property(parts, lots, (weights, totals) => {
      const shares = weights.map(weight => weight / sum(weights))
      const given = { due: shares.map(() => 0), got: shares.map(() => 0) }
      for (const total of totals) {
        const whole = wholeShares(total, shares, given)
        expect(sum(whole)).toBe(total)
        expect(whole.every(value => Number.isInteger(value) && value >= 0)).toBe(true)
      }
      // A lot smaller than what its shares should even out leaves at most one thing too many or too few for each of the others.
      shares.forEach((share, i) => {
        expect(Math.abs(given.got[i]! - share * sum(totals))).toBeLessThanOrEqual(Math.max(1, shares.length - 1) + 1e-9)
      })
    }),
    { seed: 20260301, numRuns: 500 },
  )
})
