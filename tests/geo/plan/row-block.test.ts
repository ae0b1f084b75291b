import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Feature } from '#geo/plan/plan'
import { outlineOfRows, type RowLayout, rowBlock } from '#geo/plan/row-block'
import { planeAt, planeOf } from '#geo/space/plane'
import { blockPoints, blockRows } from '#geo/space/sample'
import { offset } from '#geo/space/shape'
import { mudFeature } from '../../support/builders'

const layout: fc.Arbitrary<RowLayout> = fc.record({
  start: fc.record({
    x: fc.double({ min: -500, max: 500, noNaN: true }),
    y: fc.double({ min: -500, max: 500, noNaN: true }),
  }),
  bearing: fc.double({ min: 0, max: 360, noNaN: true }),
  plants: fc.integer({ min: 1, max: 60 }),
  rows: fc.integer({ min: 1, max: 40 }),
  spacing: fc.double({ min: 0.3, max: 10, noNaN: true }),
  rowSpacing: fc.double({ min: 0.5, max: 12, noNaN: true }),
  side: fc.constantFrom('left', 'right'),
})

/** Where the plants are meant to stand, row by row away from the first. */
function meant({ start, bearing, plants, rows, spacing, rowSpacing, side }: RowLayout) {
  const across = bearing + (side === 'right' ? 90 : -90)
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: plants }, (_, i) => offset(offset(start, across, row * rowSpacing), bearing, i * spacing)),
  ).flat()
}

function farthest(points: Float64Array, wanted: readonly { x: number; y: number }[]): number {
  let most = 0
  for (const { x, y } of wanted) {
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < points.length; i += 2) {
      least = Math.min(least, Math.hypot(points[i]! - x, points[i + 1]! - y))
    }
    most = Math.max(most, least)
  }
  return most
}

describe('a block planted by rows', () => {
  it('samples to exactly the rows and plants that were wanted, the first row on its line', () => {
    fc.assert(
      fc.property(layout, wanted => {
        const corners = outlineOfRows(wanted)
        const points = blockPoints([[...corners, corners[0]!]], { ...wanted, bearing: wanted.bearing })
        expect(points.length / 2).toBe(wanted.plants * wanted.rows)
        // 1e-6 m is what the sampler itself takes for nothing.
        expect(farthest(points, meant(wanted))).toBeLessThan(1e-6)
      }),
      { seed: 20260407, numRuns: 60 },
    )
  })

  it('does so in the plan, where the plane has moved and positions are those of a file', () => {
    const at = [-1.7, 52.2] as const
    const others: readonly Feature[] = [mudFeature('mud-1')]
    const before = planeAt(at)
    fc.assert(
      fc.property(layout, wanted => {
        const { geometry, bearing } = rowBlock(wanted, before, others)
        const round = (value: number) => Number(value.toFixed(9))
        const rounded = geometry.coordinates.map(ring => ring.map(([lng, lat]) => [round(lng), round(lat)] as const))
        const after = planeOf([...others, { geometry: { coordinates: rounded } }])
        const rings = rounded.map(ring => ring.map(after.toMetres))
        const rows = blockRows(rings, { ...wanted, bearing })
        expect(rows).toHaveLength(wanted.rows)
        expect(rows.every(({ plants }) => plants.length === wanted.plants)).toBe(true)
        const points = blockPoints(rings, { ...wanted, bearing })
        const there = meant(wanted).map(place => after.toMetres(before.toLngLat(place)))
        // 1e-9 degrees are 0.11 mm; half of 1e-4 degrees turns 600 m by 0.52 mm.
        expect(farthest(points, there)).toBeLessThan(0.001)
      }),
      { seed: 20260408, numRuns: 60 },
    )
  })

  it('lists the same plants by row as it samples', () => {
    const ring = [
      { x: 0, y: 0 },
      { x: 30, y: 5 },
      { x: 24, y: 40 },
      { x: 2, y: 33 },
      { x: 0, y: 0 },
    ]
    const options = { spacing: 2.5, rowSpacing: 4, bearing: 17 }
    const flat = blockRows([ring], options).flatMap(({ plants }) => plants.flatMap(({ x, y }) => [x, y]))
    expect(flat).toEqual([...blockPoints([ring], options)])
  })
})
