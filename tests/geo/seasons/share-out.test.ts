import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dividedFairly } from '#geo/seasons/share-out'

const seed = 20261125
const question = fc.tuple(
  fc.nat(5000),
  fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { minLength: 1, maxLength: 40 }),
)

describe('dividing fairly', () => {
  it('shares 322.00 among 38 plots to the penny, and 352 cocoons', () => {
    const pennies = dividedFairly(32_200, Array(38).fill(1))
    expect(pennies.filter(share => share === 848)).toHaveLength(14)
    expect(pennies.filter(share => share === 847)).toHaveLength(24)
    expect(dividedFairly(352, Array(38).fill(20)).filter(share => share === 10)).toHaveLength(10)
  })

  it('gives what is left to the largest remainders', () => {
    expect(dividedFairly(10, [1, 2, 4])).toEqual([1, 3, 6])
    expect(dividedFairly(7, [0, 0])).toEqual([4, 3])
    expect(dividedFairly(9, [0.1, 0.2, 0.6])).toEqual([1, 2, 6])
    expect(dividedFairly(0, [3, 1])).toEqual([0, 0])
  })

  it('loses and makes nothing, and is never a whole one off', () => {
    fc.assert(
      fc.property(question, ([total, measures]) => {
        const shares = dividedFairly(total, measures)
        const all = measures.reduce((sum, measure) => sum + measure, 0)
        const isNear = shares.every(
          (share, i) => all === 0 || Math.abs(share - (total * measures[i]!) / all) < 1 + 1e-6,
        )
        return shares.reduce((sum, share) => sum + share, 0) === total && isNear
      }),
      { seed },
    )
  })

  it('refuses what cannot be divided', () => {
    expect(() => dividedFairly(1.5, [1])).toThrow(RangeError)
    expect(() => dividedFairly(3, [1, -1])).toThrow(RangeError)
  })
})
