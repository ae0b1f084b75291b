import fc from 'fast-check'
import { mean, sampleStandardDeviation, sum } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { seededRandom } from '#geo/random'
import { type SampledTube, sampledShare, sampledTotal, tubesToOpen } from '#geo/seasons/sample'
import { studentQuantile, studentWithin } from '#geo/seasons/student'

describe("Student's t", () => {
  // Abramowitz & Stegun 1964, table 26.10, three decimals; the first two by their closed forms.
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [5, 2.571],
    [10, 2.228],
    [20, 2.086],
    [30, 2.042],
    [120, 1.98],
  ])('with %i degrees of freedom keeps within %f 95 times in 100', (degrees, t) => {
    expect(Math.abs(studentQuantile(0.95, degrees) - t)).toBeLessThan(0.0005 + 1e-9)
  })

  it('is where its own chances say', () => {
    expect(studentQuantile(0.95, 1)).toBeCloseTo(Math.tan(0.475 * Math.PI), 9)
    expect(studentQuantile(0.95, 2)).toBeCloseTo(0.95 * Math.sqrt(2 / (1 - 0.95 ** 2)), 9)
    for (const degrees of [1, 2, 7, 40])
      expect(studentWithin(studentQuantile(0.9, degrees), degrees)).toBeCloseTo(0.9, 12)
    expect(() => studentQuantile(0.95, 0)).toThrow(RangeError)
  })
})

const alike = (parts: readonly number[]): SampledTube[] => parts.map(part => ({ size: 8, part }))

describe('a share from opened tubes', () => {
  it('with tubes of one size is the mean over tubes, its interval that of a mean, on log odds', () => {
    const parts = [0, 3, 1, 2, 5, 1, 0, 2]
    const shares = parts.map(part => part / 8)
    const { share, low, high, tubes, cells } = sampledShare(alike(parts))!
    expect(share).toBeCloseTo(mean(shares), 12)
    expect({ tubes, cells }).toEqual({ tubes: 8, cells: 64 })
    const error = sampleStandardDeviation(shares) / Math.sqrt(shares.length)
    const reach = (studentQuantile(0.95, 7) * error) / (share * (1 - share))
    const odds = (value: number) => Math.log(value / (1 - value))
    expect(odds(low!)).toBeCloseTo(odds(share) - reach, 9)
    expect(odds(high!)).toBeCloseTo(odds(share) + reach, 9)
  })

  it('stays between 0 and 1, round the share, whatever the tubes', () => {
    const tube = fc
      .integer({ min: 1, max: 9 })
      .chain(size => fc.record({ size: fc.constant(size), part: fc.nat(size) }))
    fc.assert(
      fc.property(fc.array(tube, { minLength: 2, maxLength: 20 }), tubes => {
        const { share, low, high } = sampledShare(tubes)!
        return 0 <= low! && low! <= share && share <= high! && high! <= 1
      }),
      { seed: 20261125 },
    )
  })

  it('is not pretended: one tube has no interval, all tubes need none, no cells have no share', () => {
    expect(sampledShare([{ size: 8, part: 2 }])).toMatchObject({ share: 0.25, low: null, high: null })
    expect(sampledShare(alike([2, 4]), 2)).toMatchObject({ share: 0.375, low: 0.375, high: 0.375 })
    expect(sampledShare([])).toBeNull()
    expect(sampledShare([{ size: 0, part: 0 }])).toBeNull()
  })

  it('found nowhere may still hide in tubes not opened', () => {
    const { low, high } = sampledShare(alike([0, 0, 0, 0]))!
    expect(low).toBe(0)
    // 1 - 0.05^(1/4): four tubes of which none is lost.
    expect(high).toBeCloseTo(0.5271, 4)
    expect(sampledShare(alike([8, 8]))).toMatchObject({ high: 1 })
  })

  it('is wider where tubes differ than where cells do, for the same cells', () => {
    const clustered = sampledShare(alike([8, 0, 0, 8, 0, 0, 0, 0]))!
    const even = sampledShare(alike([2, 2, 3, 2, 1, 2, 2, 2]))!
    expect(clustered.share).toBe(even.share)
    expect(clustered.high! - clustered.low!).toBeGreaterThan(3 * (even.high! - even.low!))
  })

  it('lies in the interval about 95 times in 100, where tubes differ', () => {
    // Each tube has a loss share of its own, even between 0.05 and 0.45, and 4 to 9 cells.
    const random = seededRandom(20261125)
    const runs = 2000
    for (const opened of [6, 12, 25]) {
      let within = 0
      for (let run = 0; run < runs; run += 1) {
        const tubes = Array.from({ length: opened }, (): SampledTube => {
          const [size, chance] = [4 + Math.floor(6 * random()), 0.05 + 0.4 * random()]
          return { size, part: sum(Array.from({ length: size }, () => (random() < chance ? 1 : 0))) }
        })
        const { low, high } = sampledShare(tubes)!
        if (low! <= 0.25 && 0.25 <= high!) within += 1
      }
      // Four standard errors of 2000 runs are 2 points; few tubes cost a little more.
      expect(within / runs, `${opened} tubes`).toBeGreaterThan(0.92)
      expect(within / runs, `${opened} tubes`).toBeLessThan(0.975)
    }
  })
})

describe('a total from opened tubes', () => {
  it('is mean times tubes, as wide as tubes differ, and never under what was counted', () => {
    const counts = [2, 3, 1, 4, 2]
    const { total, low, high } = sampledTotal(counts, 40)!
    expect(total).toBeCloseTo(mean(counts) * 40, 12)
    const error = 40 * (sampleStandardDeviation(counts) / Math.sqrt(5)) * Math.sqrt(1 - 5 / 40)
    expect(high! - total).toBeCloseTo(studentQuantile(0.95, 4) * error, 9)
    expect(total - low!).toBeCloseTo(studentQuantile(0.95, 4) * error, 9)
    expect(sampledTotal([9, 0], 3)!.low).toBe(9)
  })

  it('of all tubes is what was counted; of one says no more than that', () => {
    expect(sampledTotal([2, 3], 2)).toEqual({ total: 5, low: 5, high: 5 })
    expect(sampledTotal([3], 10)).toEqual({ total: 30, low: null, high: null })
    expect(sampledTotal([], 10)).toBeNull()
  })
})

describe('how many tubes more to open', () => {
  const parts = [0, 3, 1, 2, 5, 1, 0, 2]

  it('is enough: as many tubes of the same kind give the width asked for, and one fewer does not', () => {
    const spread = sampleStandardDeviation(parts.map(part => part / 8))
    const reach = (tubes: number) =>
      ((studentQuantile(0.95, tubes - 1) * spread) / Math.sqrt(tubes)) * Math.sqrt(1 - tubes / 200)
    const more = tubesToOpen(alike(parts), 0.06, 200)!
    expect(reach(8 + more)).toBeLessThanOrEqual(0.06)
    expect(reach(8 + more - 1)).toBeGreaterThan(0.06)
  })

  it('is none where enough are open, at most all, and not told from one tube', () => {
    expect(tubesToOpen(alike(parts), 0.9, 200)).toBe(0)
    expect(tubesToOpen(alike(parts), 1e-6, 20)).toBe(12)
    expect(tubesToOpen(alike([2]), 0.1, 20)).toBeNull()
    expect(() => tubesToOpen(alike(parts), 0, 20)).toThrow(RangeError)
  })
})
