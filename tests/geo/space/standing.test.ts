import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planeAt } from '#geo/space/plane'
import { distance } from '#geo/space/shape'
import { type Fix, standingOf } from '#geo/space/standing'

const fixed = { seed: 20260614, numRuns: 100 }
const plane = planeAt([0.16, 52.59])
const fix = (x: number, y: number, accuracy: number): Fix => ({ at: plane.toLngLat({ x, y }), accuracy })
const metresOf = (at: readonly [number, number, ...number[]]) => plane.toMetres(at)

describe('standing still', () => {
  it('readings that agree are weighed by the inverse square of their accuracy', () => {
    // Weights 1/16, 1/16 and 1/4.
    const found = standingOf([fix(4, 0, 4), fix(0, 0, 4), fix(0, 0, 2)])!
    const { x } = metresOf(found.at)
    expect(x).toBeCloseTo(4 / 16 / (1 / 16 + 1 / 16 + 1 / 4), 4)
    expect(found.readings).toBe(3)
  })

  it('the ring never says more than the best reading, however many there are, and holds the mean among them', () => {
    const reading = fc.record({
      x: fc.double({ min: -3, max: 3, noNaN: true }),
      y: fc.double({ min: -3, max: 3, noNaN: true }),
      accuracy: fc.double({ min: 6, max: 30, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 60 }), readings => {
        const found = standingOf(readings.map(({ x, y, accuracy }) => fix(x, y, accuracy)))!
        expect(found.readings).toBe(readings.length)
        expect(found.radius).toBeGreaterThanOrEqual(Math.min(...readings.map(({ accuracy }) => accuracy)))
        const { x, y } = metresOf(found.at)
        // A micrometre for going to degrees and back.
        expect(Math.abs(x)).toBeLessThanOrEqual(Math.max(...readings.map(each => Math.abs(each.x))) + 1e-6)
        expect(Math.abs(y)).toBeLessThanOrEqual(Math.max(...readings.map(each => Math.abs(each.y))) + 1e-6)
      }),
      fixed,
    )
  })

  it('walking on begins anew', () => {
    const found = standingOf([fix(0, 0, 5), fix(1, 0, 5), fix(40, 0, 5), fix(41, 0, 5)])!
    expect(found.readings).toBe(2)
    expect(distance(metresOf(found.at), { x: 40.5, y: 0 })).toBeLessThan(1e-3)
  })

  it('readings that scatter more than they say widen the ring', () => {
    const found = standingOf([fix(-1.3, 0, 1), fix(0, 0, 1), fix(1.3, 0, 1), fix(-1.3, 0, 1), fix(0, 0, 1)])!
    expect(found.readings).toBe(5)
    expect(found.radius).toBeGreaterThan(1)
  })

  it('nothing usable says nothing', () => {
    expect(standingOf([])).toBeNull()
    expect(
      standingOf([
        { at: [Number.NaN, 52], accuracy: 5 },
        { at: [0, 52], accuracy: 0 },
      ]),
    ).toBeNull()
  })
})
