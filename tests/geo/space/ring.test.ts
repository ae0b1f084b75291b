import { kinks, polygon } from '@turf/turf'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LngLat } from '#geo/space/plane'
import { mostCorners, polygonFault, woundRight } from '#geo/space/ring'
import { signedArea } from '#geo/space/shape'

/** Corners in metres or so, near 52 degrees north; closed. */
function ring(...corners: [number, number][]): LngLat[] {
  return [...corners, corners[0]!].map(([x, y]) => [-1.7 + x * 1.5e-5, 52 + y * 9e-6])
}

const square = ring([0, 0], [100, 0], [100, 100], [0, 100])
const hole = ring([20, 20], [40, 20], [40, 40], [20, 40])

describe('a polygon that bounds an area', () => {
  it.each<[string, LngLat[][]]>([
    ['a square', [square]],
    ['the same the other way round', [square.toReversed()]],
    ['a hole', [square, hole]],
    ['two holes side by side along an edge', [square, hole, ring([40, 20], [60, 20], [60, 40], [40, 40])]],
    ['a hole from edge to edge', [square, ring([0, 20], [50, 20], [50, 40], [0, 40])]],
    ['a corner given twice by a double click', [[square[0]!, square[0]!, ...square.slice(1)]]],
    ['a triangle', [ring([0, 0], [10, 0], [0, 10])]],
    ['a deep bay', [ring([0, 0], [100, 0], [100, 100], [51, 100], [51, 1], [49, 1], [49, 100], [0, 100])]],
    ['a square with altitudes', [square.map(([lng, lat]) => [lng, lat, 80])]],
  ])('%s', (_, rings) => {
    expect(polygonFault(rings)).toBeNull()
  })
})

describe('a polygon that does not', () => {
  it.each<[string, LngLat[][], string, number]>([
    ['no ring', [], 'short', 0],
    ['an empty ring', [[]], 'short', 0],
    ['two corners', [ring([0, 0], [10, 0])], 'short', 0],
    ['one corner over and over', [ring([0, 0], [0, 0], [0, 0])], 'short', 0],
    ['an open ring', [square.slice(0, 4)], 'open', 0],
    ['an open hole', [square, hole.slice(0, 4)], 'open', 1],
    ['a bow tie', [ring([0, 0], [100, 100], [100, 0], [0, 100])], 'crossing', 0],
    [
      'a ring that touches itself in a corner',
      [ring([0, 0], [50, 50], [100, 0], [100, 100], [50, 50], [0, 100])],
      'crossing',
      0,
    ],
    ['a spike', [ring([0, 0], [100, 0], [100, 50], [150, 50], [100, 50], [100, 100])], 'crossing', 0],
    ['a hole that crosses itself', [square, ring([20, 20], [40, 40], [40, 20], [20, 40])], 'crossing', 1],
    ['a line there and back', [ring([0, 0], [50, 0], [100, 0])], 'flat', 0],
    ['a hole beside', [square, ring([120, 20], [140, 20], [140, 40])], 'outside', 1],
    ['a hole half out', [square, ring([80, 20], [120, 20], [120, 40], [80, 40])], 'outside', 1],
    ['a hole round the outline', [hole, square], 'outside', 1],
    [
      'a hole across a bay',
      [
        ring([0, 0], [100, 0], [100, 100], [60, 100], [60, 50], [40, 50], [40, 100], [0, 100]),
        ring([10, 60], [90, 60], [90, 80], [10, 80]),
      ],
      'outside',
      1,
    ],
    ['one hole in another', [square, hole, ring([25, 25], [30, 25], [30, 30], [25, 30])], 'overlap', 2],
    ['the same hole twice', [square, hole, hole], 'overlap', 2],
    ['two holes that cross', [square, hole, ring([30, 30], [60, 30], [60, 60], [30, 60])], 'overlap', 2],
  ])('%s', (_, rings, fault, number) => {
    expect(polygonFault(rings)).toEqual({ fault, ring: number })
  })

  it('more corners than can be looked through', () => {
    const corners = Array.from({ length: mostCorners }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / mostCorners
      return [100 * Math.cos(angle), 100 * Math.sin(angle)]
    })
    expect(polygonFault([ring(...corners)])).toEqual({ fault: 'long', ring: 0 })
    expect(polygonFault([ring(...corners.filter((_, i) => i % 2 === 0))])).toBeNull()
  })
})

it('finds crossings where another library does', () => {
  const corner = fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 }))
  const corners = fc.uniqueArray(corner, { minLength: 4, maxLength: 9, selector: String })
  fc.assert(
    fc.property(corners, each => {
      const one = ring(...each)
      const isCrossed = kinks(polygon([one.map(position => [...position])])).features.length > 0
      const fault = polygonFault([one])?.fault
      // The other library passes over pieces that lie upon each other; corners on another edge may fall either way.
      if (isCrossed) expect(fault).toBe('crossing')
      else expect(fault ?? 'none').toMatch(/none|flat|crossing/)
    }),
    { seed: 20260417, numRuns: 2000 },
  )
})

it('winds rings as RFC 7946 asks', () => {
  const areas = woundRight([square.toReversed(), hole]).map(each => signedArea(each.map(([x, y]) => ({ x, y }))))
  expect(areas[0]).toBeGreaterThan(0)
  expect(areas[1]).toBeLessThan(0)
  expect(woundRight([square])[0]).toBe(square)
})
