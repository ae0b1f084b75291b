import { describe, expect, it } from 'vitest'
import { backgroundPull, decay, decayLength, halfTripRatio, kernelOf, lookUp } from '#geo/coverage/kernel'

describe('distance decay', () => {
  it('puts half of the trips over uniform blossom within the typical foraging radius', () => {
    const within = 1 - (1 + halfTripRatio) * Math.exp(-halfTripRatio)
    expect(within).toBeCloseTo(0.5, 15)
    expect(67 / decayLength(67)).toBeCloseTo(halfTripRatio, 14)
  })

  it('counts the range itself in and nothing beyond', () => {
    expect(decay(300, 40, 300)).toBe(Math.exp(-7.5))
    expect(decay(300.0000001, 40, 300)).toBe(0)
  })

  it.each([
    [decayLength(67), 300],
    [decayLength(134.3), 600],
    [decayLength(25.2), 100],
    [32, 1024],
    [0.5, 40],
    [900, 5000],
  ])('is looked up within 1e-12 of exp for alpha %f m and range %f m', (alpha, range) => {
    const kernel = kernelOf(alpha, range)
    let worst = 0
    for (let i = 0; i <= 200_000; i += 1) {
      const distance = (i / 200_000) * range
      const exact = Math.exp(-distance / alpha)
      worst = Math.max(worst, Math.abs(lookUp(kernel, distance) - exact) / exact)
    }
    expect(worst).toBeLessThan(1e-12)
  })

  it('is looked up just as well half way between two entries, where the error is largest', () => {
    const kernel = kernelOf(40, 300)
    for (let entry = 0; entry < 300 * kernel.perMetre; entry += 1) {
      for (const side of [0.4999999, 0.5, 0.5000001]) {
        const distance = (entry + side) / kernel.perMetre
        expect(Math.abs(lookUp(kernel, distance) / Math.exp(-distance / 40) - 1)).toBeLessThan(1e-12)
      }
    }
  })

  it('pulls as a fine sum over rings says', () => {
    let sum = 0
    const step = 0.01
    for (let r = step / 2; r < 300; r += step) sum += 3 * Math.exp(-r / 40) * 2 * Math.PI * r * step
    expect(backgroundPull(3, 40, 300) / sum).toBeCloseTo(1, 7)
  })

  it.each([
    [0, 300],
    [40, 0],
    [Number.NaN, 300],
  ])('is refused for alpha %f and range %f', (alpha, range) => {
    expect(() => kernelOf(alpha, range)).toThrow(RangeError)
  })
})
