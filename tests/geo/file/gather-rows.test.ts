import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { samplePlanting } from '#geo/coverage/demand'
import { gatheredRows, mostOff, type TreeInRow } from '#geo/file/gather-rows'
import type { Row } from '#geo/plan/plan'
import { planeAt } from '#geo/space/plane'
import { distance, offset } from '#geo/space/shape'

const plane = planeAt([-1.7, 52.2])
const at = (row: number, tree: number, { bearing = 0, spacing = 3, rowSpacing = 5 } = {}) =>
  plane.toLngLat(offset(offset({ x: 0, y: 0 }, bearing, tree * spacing), bearing + 90, row * rowSpacing))

function tree(row: number, number: number, properties: object = {}, place = at(row, number)): TreeInRow {
  return { at: place, row: String(row), tree: number, properties: { kind: 'plant', crop: 'apple', ...properties } }
}
const trees = (rows: number, count: number, of: (row: number, number: number) => object = () => ({})) =>
  Array.from({ length: rows * count }, (_, i) => {
    const [row, number] = [Math.floor(i / count) + 1, (i % count) + 1]
    return tree(row, number, of(row, number))
  })
const kinds = (things: ReturnType<typeof gatheredRows>['things']) =>
  things.map(({ properties, geometry }) => [properties.kind, properties.name, properties.cultivar, geometry.type])

describe('trees known by row and number', () => {
  it('are rows where they stand evenly, with what is between trees and rows', () => {
    const { things, ...fit } = gatheredRows(trees(4, 20))
    expect(fit).toMatchObject({ rows: 4, trees: 80, others: 0 })
    expect(fit.worst).toBeLessThan(1e-3)
    expect(things[0]!.properties).toEqual({ kind: 'row', crop: 'apple', name: 'Row 1', spacing: 3, rowSpacing: 5 })
  })

  it('every row has its trees where they were, whatever its direction and spacing', () => {
    fc.assert(
      fc.property(
        fc.record({
          bearing: fc.integer({ min: 0, max: 359 }),
          spacing: fc.double({ min: 0.5, max: 12, noNaN: true }),
          count: fc.integer({ min: 2, max: 150 }),
        }),
        ({ bearing, spacing, count }) => {
          const given = Array.from({ length: count }, (_, i) => tree(1, i + 1, {}, at(0, i, { bearing, spacing })))
          const { things } = gatheredRows(given)
          expect(things).toHaveLength(1)
          const row = { type: 'Feature', id: 'r', ...things[0] } as unknown as Row
          const crop = { spacing: 9, rowSpacing: 9 } as Parameters<typeof samplePlanting>[1]
          const { points } = samplePlanting(row, crop, plane)
          expect(points).toHaveLength(2 * count)
          // Half of the centimetre that a row has to spare at its end.
          for (const [i, { at: place }] of given.entries())
            expect(distance(plane.toMetres(place), { x: points[2 * i]!, y: points[2 * i + 1]! })).toBeLessThan(0.006)
        },
      ),
      { seed: 20261125, numRuns: 60 },
    )
  })

  it('a missing tree, and another cultivar, end a part; every fifth of another is one thing', () => {
    const gap = trees(1, 10).filter(({ tree: number }) => number !== 4)
    expect(kinds(gatheredRows(gap).things)).toEqual([
      ['row', 'Row 1', undefined, 'LineString'],
      ['row', 'Row 1 part 2', undefined, 'LineString'],
    ])
    const mixed = trees(1, 10, (_, number) => ({ cultivar: number % 5 === 0 ? 'Pollen' : 'Main' }))
    expect(kinds(gatheredRows(mixed, 4).things)).toEqual([
      ['row', 'Row 1', 'Main', 'LineString'],
      ['row', 'Row 1 part 2', 'Main', 'LineString'],
      ['plant', 'Row 1 Pollen', 'Pollen', 'MultiPoint'],
    ])
    // A single tree in a row stands for as much ground as the others do.
    const [, , single] = gatheredRows(mixed, 4).things
    expect(Math.PI * (Number(single!.properties.spread) / 2) ** 2).toBeCloseTo(3 * 4, 4)
  })

  it('stay single where they do not stand evenly, or a number is given twice, and that is counted', () => {
    const crooked = trees(2, 10).map(each =>
      each.row === '2' && each.tree === 5
        ? { ...each, at: plane.toLngLat({ x: plane.toMetres(each.at).x + 2 * mostOff, y: plane.toMetres(each.at).y }) }
        : each,
    )
    expect(gatheredRows(crooked)).toMatchObject({ rows: 1, trees: 10, others: 10 })
    expect(gatheredRows([...trees(1, 3), tree(1, 2)])).toMatchObject({ rows: 0, others: 4 })
    expect(gatheredRows([tree(1, 1)])).toMatchObject({ rows: 0, others: 1 })
    expect(gatheredRows([])).toMatchObject({ rows: 0, trees: 0, others: 0 })
  })

  it('tells how far the worst tree is off', () => {
    const off = trees(1, 21).map(each => {
      const { x, y } = plane.toMetres(each.at)
      return each.tree === 11 ? { ...each, at: plane.toLngLat({ x: x + 0.5, y }) } : each
    })
    // Least squares take a twenty-first of it along.
    expect(gatheredRows(off).worst).toBeCloseTo(0.5 * (1 - 1 / 21), 3)
  })

  it('a single name for all of a row is the name of the row', () => {
    const named = trees(1, 4, () => ({ name: 'Along the brook' }))
    expect(kinds(gatheredRows(named).things)[0]![1]).toBe('Along the brook')
  })

  it('takes thousands without a stall', () => {
    const start = performance.now()
    gatheredRows(trees(500, 100))
    expect(performance.now() - start).toBeLessThan(2000)
  })
})
