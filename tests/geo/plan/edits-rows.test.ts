import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  breakIntoRows,
  cultivarInRow,
  extendRow,
  gapInRow,
  joinRows,
  repeatRow,
  rowLine,
  splitRow,
  turnPlanting,
} from '#geo/plan/edits-rows'
import type { Block, Feature, Plan, Plant, Row } from '#geo/plan/plan'
import { everyRow } from '#geo/plan/row-order'
import { plantsOf } from '#geo/plan/row-pieces'
import { beside } from '#geo/space/lines'
import { type LngLat, type Metres, planeOf } from '#geo/space/plane'
import { blockPoints, rowPoints } from '#geo/space/sample'
import { distance, lineLength, offset } from '#geo/space/shape'
import { blockFeature, rowFeature, smallPlan } from '../../support/builders'

const seed = 20260409
/** Positions are kept to 1e-9 degrees, 0.11 mm; twice that and the slack of planes whose middle moved. */
const rounding = 0.001
const usual = { spacing: 2.5, rowSpacing: 4 }

const straight = fc.record({
  bearing: fc.double({ min: 0, max: 360, noNaN: true }),
  length: fc.double({ min: 12, max: 200, noNaN: true }),
  count: fc.option(fc.integer({ min: 4, max: 60 }), { nil: undefined }),
})

function planOf({ bearing, length, count }: { bearing: number; length: number; count?: number | undefined }): Plan {
  const plan = smallPlan({ features: [rowFeature('row-1', { name: 'Gala', ...(count ? { count } : {}) })] })
  const plane = planeOf(plan.features)
  const from = plane.toMetres([-1.7, 52.2])
  const round = ([lng, lat]: LngLat): LngLat => [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
  const coordinates = [from, offset(from, bearing, length)].map(at => round(plane.toLngLat(at)))
  const row = { ...plan.features[0]!, geometry: { type: 'LineString', coordinates } } as Feature
  return { ...plan, features: [row] }
}

/** All plants of all rows and single plants, in the plane of `frame`. */
function plants(plan: Plan, frame: Plan): Metres[] {
  const plane = planeOf(frame.features)
  return plan.features.flatMap(feature => {
    if (feature.properties.kind === 'plant')
      return (feature as Plant).geometry.coordinates.map(at => plane.toMetres(at as LngLat))
    const { line, spacing, count } = rowLine(feature as Row, usual, plane)
    const points = rowPoints(line, { spacing, count })
    return Array.from({ length: points.length / 2 }, (_, i) => ({ x: points[2 * i]!, y: points[2 * i + 1]! }))
  })
}

function apartMost(a: readonly Metres[], b: readonly Metres[]): number {
  return Math.max(...a.map(p => Math.min(...b.map(q => distance(p, q)))))
}

describe('a row repeated', () => {
  it('keeps its distance to a millionth of a metre, straight or bent', () => {
    fc.assert(
      fc.property(
        straight,
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        ({ bearing, length }, bend, apart) => {
          const a = { x: 3, y: -7 }
          const b = offset(a, bearing, length)
          const line = [a, b, offset(b, bearing + bend, length)]
          const copy = beside(line, apart)
          for (const i of [0, 1]) {
            const [p, q] = [line[i]!, line[i + 1]!]
            const side = (at: Metres) => ((at.x - p.x) * (q.y - p.y) - (at.y - p.y) * (q.x - p.x)) / distance(p, q)
            expect(side(copy[i]!)).toBeCloseTo(apart, 6)
            expect(side(copy[i + 1]!)).toBeCloseTo(apart, 6)
          }
        },
      ),
      { seed, numRuns: 100 },
    )
  })

  it('has as many plants in every copy, also where the last stands at the very end', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), fc.integer({ min: 2, max: 60 }), (bearing, n) => {
        const plan = planOf({ bearing, length: (n - 1) * usual.spacing + 0.004 })
        const ids = ['c1', 'c2', 'c3']
        const edit = repeatRow('row-1', { ids, names: ['A', 'B', 'C'], apart: 4, side: 'left', usual })
        const after = edit.apply(plan)
        const plane = planeOf(after.features)
        expect(after.features.map(each => plantsOf(rowLine(each as Row, usual, plane)))).toEqual([n, n, n, n])
        expect(after.features.map(({ properties }) => properties.name)).toEqual(['Gala', 'A', 'B', 'C'])
      }),
      { seed, numRuns: 60 },
    )
  })
})

describe('a row in parts', () => {
  it('is the same row again when split and joined', () => {
    fc.assert(
      fc.property(straight, fc.nat(), (row, pick) => {
        const plan = planOf(row)
        const all = plants(plan, plan).length
        const at = 2 + (pick % (all - 1))
        const split = splitRow('row-1', at, 'row-2', usual).apply(plan)
        expect(split.features).toHaveLength(2)
        expect(plants(split, plan)).toHaveLength(all)
        expect(apartMost(plants(plan, plan), plants(split, plan))).toBeLessThan(rounding)
        const joined = joinRows('row-1', 'row-2', usual).apply(split)
        expect(joined.features.map(({ properties }) => properties)).toEqual(
          plan.features.map(({ properties }) => properties),
        )
        const [was, is] = [plan, joined].map(each => (each.features[0] as Row).geometry.coordinates.flat())
        // A row that ends just short of its next plant is cut back by half a millimetre, 1e-8 degrees here; rounding adds 2e-9.
        for (const [i, value] of is!.entries()) expect(Math.abs(value - was![i]!)).toBeLessThan(1.2e-8)
      }),
      { seed, numRuns: 80 },
    )
  })

  it('bears the whole name once more, whichever part comes first, unless a third part bears it', () => {
    const plan = planOf({ bearing: 30, length: 40 })
    const two = splitRow('row-1', 6, 'row-2', usual).apply(plan)
    expect(two.features.map(({ properties }) => properties.name)).toEqual(['Gala', 'Gala part 2'])
    const names = (joined: Plan) => joined.features.map(({ properties }) => properties.name)
    expect(names(joinRows('row-2', 'row-1', usual).apply(two))).toEqual(['Gala'])
    const three = splitRow('row-2', 4, 'row-3', usual).apply(two)
    expect(names(joinRows('row-2', 'row-3', usual).apply(three))).toEqual(['Gala', 'Gala part 2'])
  })

  it('loses the missing plants and no others', () => {
    fc.assert(
      fc.property(straight, fc.nat(), fc.integer({ min: 1, max: 3 }), (row, pick, count) => {
        const plan = planOf(row)
        const before = plants(plan, plan)
        const first = 1 + (pick % (before.length - count + 1))
        fc.pre(count < before.length)
        const after = gapInRow('row-1', { first, count }, 'row-2', usual).apply(plan)
        const left = before.filter((_, i) => i + 1 < first || i + 1 >= first + count)
        expect(plants(after, plan)).toHaveLength(left.length)
        expect(apartMost(left, plants(after, plan))).toBeLessThan(rounding)
      }),
      { seed, numRuns: 80 },
    )
  })

  it('keeps its plants where they are when it grows or shrinks', () => {
    fc.assert(
      fc.property(straight, fc.constantFrom('start', 'end'), fc.integer({ min: -2, max: 9 }), (row, end, by) => {
        const plan = planOf(row)
        const before = plants(plan, plan)
        const after = plants(extendRow('row-1', end, by, usual).apply(plan), plan)
        expect(after).toHaveLength(before.length + by)
        const [fewer, more] = by < 0 ? [after, before] : [before, after]
        expect(apartMost(fewer, more)).toBeLessThan(rounding + 0.006)
      }),
      { seed, numRuns: 80 },
    )
  })

  it('holds another cultivar in every ninth plant, on as much ground', () => {
    const plan = planOf({ bearing: 20, length: 100.5 })
    const edit = cultivarInRow(
      'row-1',
      { every: 9, first: 5, cultivar: 'Crab' },
      (kind, i) => `new-${kind}-${i}`,
      usual,
    )
    const after = edit.apply(plan)
    // 41 plants: numbers 5, 14, 23, 32 and 41.
    const crabs = after.features.find(({ properties }) => properties.kind === 'plant') as Plant
    expect(crabs.geometry.coordinates).toHaveLength(5)
    expect(Math.PI * (crabs.properties.spread! / 2) ** 2).toBeCloseTo(usual.spacing * usual.rowSpacing, 6)
    expect(plants(after, plan)).toHaveLength(41)
    expect(apartMost(plants(plan, plan), plants(after, plan))).toBeLessThan(rounding)
  })
})

describe('a block', () => {
  const turning = fc.double({ min: -180, max: 180, noNaN: true })

  it('turns with its rows: as many plants, and back again', () => {
    const block = blockFeature('block-1', { bearing: 30, spacing: 2.5, rowSpacing: 4 })
    const plan = smallPlan({ features: [block] })
    const sampled = (each: Plan) => {
      const { geometry, properties } = each.features[0] as Block
      const plane = planeOf(plan.features)
      return blockPoints(
        geometry.coordinates.map(ring => ring.map(plane.toMetres)),
        { ...usual, bearing: properties.bearing! },
      )
    }
    const all = sampled(plan).length
    fc.assert(
      fc.property(turning, degrees => {
        const there = turnPlanting('block-1', degrees).apply(plan)
        // A plant at the very edge may fall to either side.
        expect(Math.abs(sampled(there).length - all) / 2).toBeLessThanOrEqual(3)
        const back = (turnPlanting('block-1', -degrees).apply(there).features[0] as Block).geometry.coordinates.flat(2)
        for (const [i, value] of back.entries()) expect(value).toBeCloseTo(block.geometry.coordinates.flat(2)[i]!, 7)
      }),
      { seed, numRuns: 40 },
    )
  })

  it('breaks into rows with the same plants', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 179, noNaN: true }), bearing => {
        const plan = smallPlan({ features: [blockFeature('block-1', { bearing, name: 'North', ...usual })] })
        const after = breakIntoRows('block-1', i => `row-${i}`, usual).apply(plan)
        const plane = planeOf(plan.features)
        const { geometry } = plan.features[0] as Block
        const points = blockPoints(
          geometry.coordinates.map(ring => ring.map(plane.toMetres)),
          { ...usual, bearing },
        )
        const there = plants(after, plan)
        expect(there).toHaveLength(points.length / 2)
        const was = Array.from({ length: points.length / 2 }, (_, i) => ({ x: points[2 * i]!, y: points[2 * i + 1]! }))
        expect(apartMost(was, there)).toBeLessThan(rounding)
      }),
      { seed, numRuns: 25 },
    )
  })
})

describe('every third row', () => {
  it('counts across, whatever the order and direction they were drawn in', () => {
    const rows = [4, 0, 2, 1, 3, 5].map(i => rowFeature(`r${i}`, {}, i % 2 ? [i, 0] : [i, 9], i % 2 ? [i, 9] : [i, 0]))
    const plane = planeOf(rows)
    const ids = everyRow(rows, { every: 3, first: 2 }, plane).map(({ id }) => id)
    expect(ids).toEqual(['r1', 'r4'])
    expect(lineLength(rows[0]!.geometry.coordinates.map(plane.toMetres))).toBeGreaterThan(0)
  })
})
