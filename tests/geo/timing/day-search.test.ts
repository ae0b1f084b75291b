import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Batch, bestOne, bestThree, bestTwo, type DayProblem, servedBy, shareSteps } from '#geo/timing/day-search'

const seed = 20260318

/** Crops that open one after another, each wanted by a few cells; bees of a day serve a crop the nearer it lies. */
const problem = fc
  .record({
    days: fc.integer({ min: 1, max: 14 }),
    cells: fc.array(
      fc.record({
        peak: fc.integer({ min: 0, max: 14 }),
        wanted: fc.double({ min: 0.1, max: 3, noNaN: true }),
        got: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    stock: fc.double({ min: 0.5, max: 9, noNaN: true }),
    width: fc.integer({ min: 1, max: 6 }),
  })
  .map(
    ({ days, cells, stock, width }): DayProblem => ({
      wanted: Float64Array.from(cells.map(({ wanted }) => wanted)),
      base: Float64Array.from(cells.map(({ got }) => got)),
      byDay: Array.from({ length: days }, (_, day) =>
        Float64Array.from(cells.map(({ peak }) => stock * Math.max(0, 1 - Math.abs(peak - day) / width))),
      ),
    }),
  )

/** Every schedule there is, of so many batches at most. */
function bruteForce(of: DayProblem, most: 1 | 2 | 3): number {
  let best = Number.NEGATIVE_INFINITY
  const visit = (batches: readonly Batch[], left: number): void => {
    if (left === 0) best = Math.max(best, servedBy(of, batches))
    const from = batches.length === 0 ? 0 : batches.at(-1)!.day + 1
    if (left === 0 || batches.length === most) return
    for (let day = from; day < of.byDay.length; day += 1) {
      const isLast = batches.length === most - 1
      for (let steps = isLast ? left : 1; steps <= left; steps += 1) {
        visit([...batches, { day, share: steps / shareSteps }], left - steps)
      }
    }
  }
  visit([], shareSteps)
  return best
}

it('one and two batches equal brute force', () => {
  fc.assert(
    fc.property(problem, each => {
      expect(bestOne(each).served).toBeCloseTo(bruteForce(each, 1), 12)
      const two = bestTwo(each)
      expect(two.served).toBeCloseTo(bruteForce(each, 2), 12)
      expect(two.served).toBe(servedBy(each, two.batches))
    }),
    { seed, numRuns: 150 },
  )
})

it('three batches are never below two, and within a hundredth of brute force', () => {
  fc.assert(
    fc.property(problem, each => {
      const three = bestThree(each)
      const best = bruteForce(each, 3)
      expect(three.served).toBeGreaterThanOrEqual(bestTwo(each).served)
      expect(three.served).toBeLessThanOrEqual(best + 1e-9)
      expect(three.served).toBeGreaterThanOrEqual(0.99 * best)
      expect(three.batches.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
    }),
    { seed, numRuns: 40 },
  )
})

it('more days than are tried pair by pair lead to the same pair', () => {
  const days = 260
  const bump = (peak: number) => (day: number) => Math.max(0, 1 - Math.abs(day - peak) / 15)
  const byDay = Array.from({ length: days }, (_, day) => Float64Array.from([3 * bump(71)(day), 3 * bump(208)(day)]))
  const found = bestTwo({ wanted: Float64Array.of(1, 2), base: new Float64Array(2), byDay })
  // 0.35 to the first crop and 0.65 to the other, which then lacks a twentieth.
  expect(found.batches).toEqual([
    { day: 71, share: 0.35 },
    { day: 208, share: 0.65 },
  ])
  expect(found.served).toBeCloseTo(2.95, 12)
})
