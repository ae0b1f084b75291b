import { describe, expect, it } from 'vitest'
import { bearing, centroid, isInside, offset, polygonArea, signedArea } from '#geo/space/shape'

const square = (size: number, at = 0) => [
  { x: at, y: at },
  { x: at + size, y: at },
  { x: at + size, y: at + size },
  { x: at, y: at + size },
  { x: at, y: at },
]

describe('shapes in metres', () => {
  it('takes holes off an area, whichever way the rings run', () => {
    expect(polygonArea([square(10), square(4, 2)])).toBe(84)
    expect(polygonArea([square(10).reverse(), square(4, 2)])).toBe(84)
    expect(signedArea(square(10))).toBe(100)
    expect(signedArea(square(10).reverse())).toBe(-100)
  })

  it('keeps its digits far from the origin', () => {
    const far = square(2).map(({ x, y }) => ({ x: x + 4_000_000, y: y + 6_000_000 }))
    expect(polygonArea([far])).toBe(4)
  })

  it('weighs the centroid by area and lets a hole push it away', () => {
    expect(centroid([square(10)])).toEqual({ x: 5, y: 5 })
    const pushed = centroid([square(10), square(2, 0.5)])
    expect(pushed.x).toBeCloseTo((100 * 5 - 4 * 1.5) / 96, 12)
  })

  it('knows inside from outside and from a hole', () => {
    const rings = [square(10), square(4, 3)]
    expect(isInside(rings, { x: 1, y: 1 })).toBe(true)
    expect(isInside(rings, { x: 5, y: 5 })).toBe(false)
    expect(isInside(rings, { x: 11, y: 5 })).toBe(false)
  })

  it('takes bearings clockwise from north', () => {
    const from = { x: 3, y: 4 }
    for (const degrees of [0, 45, 90, 180, 271]) {
      expect(bearing(from, offset(from, degrees, 20))).toBeCloseTo(degrees, 9)
    }
  })
})
