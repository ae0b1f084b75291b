import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gridSize, type PlotGrid, plotsOf, spotsIn } from '#geo/plan/plots'
import { distance, extentOf, isInside, polygonArea } from '#geo/space/shape'

const fixed = { seed: 20260613, numRuns: 50 }

const grid = fc.record({
  corner: fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) }),
  bearing: fc.integer({ min: 0, max: 359 }),
  rows: fc.integer({ min: 1, max: 5 }),
  columns: fc.integer({ min: 1, max: 6 }),
  length: fc.integer({ min: 2, max: 30 }),
  width: fc.integer({ min: 2, max: 30 }),
  pathBetween: fc.integer({ min: 1, max: 3 }),
  pathAcross: fc.integer({ min: 1, max: 3 }),
  first: fc.integer({ min: 0, max: 90 }),
  parts: fc.integer({ min: 1, max: 4 }),
  isWalked: fc.boolean(),
})

const closed = (corners: readonly { x: number; y: number }[]) => [...corners, corners[0]!]

it('every plot has its size, its own name and its own ground', () => {
  fc.assert(
    fc.property(grid, each => {
      const plots = plotsOf(each)
      expect(plots).toHaveLength(each.rows * each.columns * each.parts)
      expect(new Set(plots.map(({ name }) => name)).size).toBe(plots.length)
      const middles = plots.map(({ corners: [a, , c] }) => ({ x: (a!.x + c!.x) / 2, y: (a!.y + c!.y) / 2 }))
      for (const [i, { corners }] of plots.entries()) {
        // Coordinates of a thousand metres hold 1e-13 m.
        expect(polygonArea([closed(corners)])).toBeCloseTo((each.length * each.width) / each.parts, 6)
        expect(middles.filter(middle => isInside([closed(corners)], middle))).toEqual([middles[i]])
      }
      const corners = plots.flatMap(plot => plot.corners)
      const start = each.corner
      const { along, across } = gridSize(each)
      // The first corner of all is the corner of the grid: the farthest from it lies across the whole.
      const farthest = corners.reduce((most, corner) => Math.max(most, distance(start, corner)), 0)
      expect(farthest).toBeCloseTo(Math.hypot(along, across), 6)
    }),
    fixed,
  )
})

it('numbers run along the rows, backwards in every second one where it is walked so', () => {
  const plain: PlotGrid = {
    corner: { x: 0, y: 0 },
    bearing: 90,
    rows: 2,
    columns: 3,
    length: 10,
    width: 25,
    pathBetween: 1,
    pathAcross: 2,
    first: 12,
    parts: 2,
    isWalked: false,
  }
  const west = (walked: boolean, name: string) =>
    extentOf(plotsOf({ ...plain, isWalked: walked }).find(plot => plot.name === name)!.corners)
  expect(west(false, '12A').minX).toBeCloseTo(0, 9)
  expect(west(false, '12A').maxX).toBeCloseTo(5, 9)
  expect(west(false, '12B').maxX).toBeCloseTo(10, 9)
  expect(west(false, '15A').minX).toBeCloseTo(0, 9)
  expect(west(true, '15A').minX).toBeCloseTo(22, 9)
  // Heading east, the next row lies to the right: south.
  expect(west(false, '15A').maxY).toBeCloseTo(-27, 9)
})

it('plants stand within their plot, apart from each other', () => {
  fc.assert(
    fc.property(grid, fc.integer({ min: 1, max: 12 }), (each, count) => {
      const plot = plotsOf(each)[0]!
      const spots = spotsIn(plot, count)
      expect(spots).toHaveLength(count)
      for (const spot of spots) expect(isInside([closed(plot.corners)], spot)).toBe(true)
      const long = Math.max(each.length / each.parts, each.width)
      for (let i = 1; i < count; i += 1) expect(distance(spots[i - 1]!, spots[i]!)).toBeCloseTo(long / count, 6)
    }),
    fixed,
  )
})
