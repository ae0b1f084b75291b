import { describe, expect, it } from 'vitest'
import { cocoonsFor, wholeUp } from '#geo/stocking/cocoons'
import { tubesFor } from '#geo/stocking/tubes'

describe('whole numbers', () => {
  it('never buys one cocoon for a rounding error, and never rounds a real remainder away', () => {
    expect(wholeUp(70 / (0.35 * 0.8))).toBe(250)
    expect(wholeUp(250.001)).toBe(251)
    expect(wholeUp(0)).toBe(0)
    expect(wholeUp(1e-6)).toBe(1)
  })
})

describe('cocoonsFor', () => {
  it('is F / (emergence x establishment), and the males beside them', () => {
    expect(cocoonsFor(94.5, { emergence: 0.9, establishment: 0.5, malesPerFemale: 1.8 })).toEqual({
      female: 210,
      male: 378,
    })
  })

  it('asks for none where nothing can nest, rather than for infinitely many', () => {
    expect(cocoonsFor(10, { emergence: 0, establishment: 0.5, malesPerFemale: 1.8 })).toEqual({ female: 0, male: 0 })
  })
})

describe('tubesFor', () => {
  it('is F x tubes per female x (1 + spare), rounded up', () => {
    expect(tubesFor(50, 3, 0.2)).toBe(180)
    expect(tubesFor(50.1, 3, 0.2)).toBe(181)
  })
})
