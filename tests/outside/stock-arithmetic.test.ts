import { describe, expect, it } from 'vitest'
import { cocoonsFor, wholeUp } from '#geo/stocking/cocoons'
import { mostTubes, usualFemales } from '#geo/stocking/stock'
import { chanceOf, cocoonsToBeSure } from '#geo/stocking/sure'
import { tubesFor } from '#geo/stocking/tubes'

describe('stock arithmetic', () => {
  it('250 females at a share of 0.36 that nests: 695 cocoons by division, 740 to be nine times in ten sure', () => {
    expect(cocoonsFor(250, { emergence: 0.36, establishment: 1, malesPerFemale: 1 }).female).toBe(695)
    expect(cocoonsToBeSure(250, 0.36, 0.9)).toBe(740)
    // Binomial tail: 739 are not enough, 740 are.
    expect(chanceOf(739, 250, 0.36)).toBeLessThan(0.9)
    expect(chanceOf(740, 250, 0.36)).toBeGreaterThanOrEqual(0.9)
    expect(chanceOf(695, 250, 0.36)).toBeGreaterThan(0.45)
    expect(chanceOf(695, 250, 0.36)).toBeLessThan(0.55)
  })

  it('chances of few cocoons by hand', () => {
    expect(chanceOf(2, 1, 0.5)).toBeCloseTo(0.75, 12)
    expect(chanceOf(3, 2, 0.5)).toBeCloseTo(0.5, 12)
    expect(chanceOf(3, 4, 0.5)).toBe(0)
    expect(chanceOf(3, 0, 0.5)).toBe(1)
    expect(cocoonsToBeSure(1, 0.5, 0.9)).toBe(4)
    expect(cocoonsToBeSure(10, 1, 0.99)).toBe(10)
  })

  it('buys no cocoon for a rounding error: quotients that floating point puts just above a whole number', () => {
    expect(70 / (0.35 * 0.8)).toBeGreaterThan(250)
    expect(wholeUp(70 / (0.35 * 0.8))).toBe(250)
    expect(wholeUp(210 / (0.35 * 0.96))).toBe(625)
    expect(wholeUp(410 / (0.5 * 0.82))).toBe(1000)
  })

  it('published release sums: 600 established females from about 1,333 female cocoons at 0.9 x 0.5, 1.8 to 2 males each', () => {
    // Blue orchard bee in almond: 1,333 by division; the last third of a cocoon is bought whole.
    const { female, male } = cocoonsFor(600, { emergence: 0.9, establishment: 0.5, malesPerFemale: 1.8 })
    expect(600 / (0.9 * 0.5)).toBeCloseTo(1333.33, 2)
    expect(female).toBe(1334)
    expect(male).toBe(2400)
  })

  it('three holes a female: 250 females, the usual number for an acre, take 750 holes', () => {
    expect(tubesFor(250, 3, 0)).toBe(750)
  })

  it('a usual station stays under the tubes at which a second place does more (about 200, Koh et al.)', () => {
    expect(tubesFor(usualFemales, 3, 0.1)).toBeLessThanOrEqual(mostTubes)
  })

  it('a starter of 10 to 12 cocoons begins a house that need not be filled (common practice, no source)', () => {
    // Five or six of them female: at 0.9 x 0.5 two or three nest, in under a dozen tubes.
    const females = 6 * 0.9 * 0.5
    expect(females).toBeGreaterThanOrEqual(2)
    expect(tubesFor(females, 3, 0)).toBeLessThan(12)
  })
})
