import { describe, expect, it } from 'vitest'
import { blockPoints, cellPoints, plantsInRow, rowPoints } from '#geo/space/sample'
import { polygonArea } from '#geo/space/shape'

const box = (west: number, south: number, east: number, north: number) => [
  { x: west, y: south },
  { x: east, y: south },
  { x: east, y: north },
  { x: west, y: north },
  { x: west, y: south },
]
const pairs = (points: Float64Array) =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]] as [number, number])

describe('rowPoints', () => {
  it('sets plants at the spacing from the first vertex, both ends planted', () => {
    expect(
      pairs(
        rowPoints(
          [
            { x: 0, y: 0 },
            { x: 0, y: 10 },
          ],
          { spacing: 2.5 },
        ),
      ),
    ).toEqual([
      [0, 0],
      [0, 2.5],
      [0, 5],
      [0, 7.5],
      [0, 10],
    ])
  })

  it('does not lose the last plant to the last bit of a length', () => {
    expect(plantsInRow(0.1 + 0.2, 0.1)).toBe(4)
    expect(plantsInRow(9.999_999_9, 2.5)).toBe(5)
    expect(plantsInRow(9.99, 2.5)).toBe(4)
  })

  it('follows the bend of a row', () => {
    const bent = [
      { x: 0, y: 0 },
      { x: 3, y: 0 },
      { x: 3, y: 3 },
    ]
    expect(pairs(rowPoints(bent, { spacing: 2 }))).toEqual([
      [0, 0],
      [2, 0],
      [3, 1],
      [3, 3],
    ])
  })

  it('spreads a given count evenly from first to last vertex; one plant stands in the middle', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 9, y: 0 },
    ]
    expect(pairs(rowPoints(line, { spacing: 2, count: 4 }))).toEqual([
      [0, 0],
      [3, 0],
      [6, 0],
      [9, 0],
    ])
    expect(pairs(rowPoints(line, { spacing: 2, count: 1 }))).toEqual([[4.5, 0]])
    expect(pairs(rowPoints(line, { spacing: 2, count: 0 }))).toEqual([])
  })
})

describe('blockPoints', () => {
  it('sets rows half a row spacing in and plants half a spacing in', () => {
    const points = pairs(blockPoints([box(0, 0, 8, 6)], { spacing: 3, rowSpacing: 4, bearing: 0 }))
    expect(points).toEqual([
      [2, 1.5],
      [2, 4.5],
      [6, 1.5],
      [6, 4.5],
    ])
  })

  it('leaves a hole unplanted and starts again behind it', () => {
    const rings = [box(0, 0, 4, 20), box(1, 5, 3, 15)]
    const ys = pairs(blockPoints(rings, { spacing: 2, rowSpacing: 4, bearing: 0 })).map(([, y]) => y)
    expect(ys).toEqual([1, 3, 16, 18])
  })

  it('turns with the bearing: rows run along it', () => {
    const points = pairs(blockPoints([box(0, 0, 30, 4)], { spacing: 10, rowSpacing: 4, bearing: 90 }))
    expect(points.map(([x, y]) => [Math.round(x * 1e9) / 1e9, Math.round(y * 1e9) / 1e9])).toEqual([
      [5, 2],
      [15, 2],
      [25, 2],
    ])
  })

  it('plants as many as the ground holds, whichever way the rows run', () => {
    for (const bearing of [0, 17, 45, 90, 133]) {
      const count = blockPoints([box(0, 0, 200, 200)], { spacing: 2, rowSpacing: 4, bearing }).length / 2
      expect(Math.abs(count - 5000)).toBeLessThan(100)
    }
  })
})

describe('cellPoints', () => {
  it('cuts 2 m cells whose areas add up to the bed', () => {
    const triangle = [
      [
        { x: 0, y: 0 },
        { x: 13, y: 0 },
        { x: 0, y: 9 },
        { x: 0, y: 0 },
      ],
    ]
    const { points, cellArea } = cellPoints(triangle)
    expect((points.length / 2) * cellArea).toBeCloseTo(polygonArea(triangle), 9)
    expect(pairs(points)[0]).toEqual([1, 1])
  })

  it('makes a bed too small for one cell a single cell at its centroid, holes counted', () => {
    const { points, cellArea } = cellPoints([box(0, 0, 0.6, 0.5)])
    expect(pairs(points)).toEqual([[0.3, 0.25]])
    expect(cellArea).toBeCloseTo(0.3, 12)
  })
})
