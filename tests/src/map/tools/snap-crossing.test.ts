import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planeOf } from '#geo/space/plane'
import { distance, offset } from '#geo/space/shape'
import { drawLine } from '../../../../src/map/tools/draw-line'
import { drawRing } from '../../../../src/map/tools/draw-ring'
import { type Attraction, crossings } from '../../../../src/map/tools/snap-crossing'
import { blockFeature, mudFeature, rectangle, rowFeature, smallPlan, step } from '../../../support/builders'
import { hover, play, tap } from './events'

// One step is 20 pixels on the screen, 68.4 m east or 111.3 m north times 1e-4: 6.84 m and 11.13 m.
const row = rowFeature('row-1', { name: 'Gala' }, [0, 0], [10, 0])
const rows = smallPlan({ features: [row] })
const farm = {
  ...blockFeature('b', {}, rectangle([0, 0], [20, 20])),
  properties: { kind: 'boundary', name: 'Farm' },
} as never

describe('two attractions at once', () => {
  it('a right angle and the headland’s distance', () => {
    const plan = smallPlan({ features: [farm] })
    // From 5, 10 south to 5, 6; square to that lies east; the western headland is 10 m in, 1.46 steps.
    const events = [tap([5, 10], { alt: true }), tap([5, 6], { alt: true }), hover([1.8, 6.3])]
    const { ghost } = play(drawLine('row'), events, { plan, headland: 10 })
    expect(ghost?.cue?.words).toMatch(/right angle/)
    expect(ghost?.cue?.words).toMatch(/headland of Farm/)
    expect(((ghost?.pointer?.[0] ?? 0) + 1.7) * 68_380).toBeCloseTo(10, 1)
    expect(ghost?.pointer?.[1]).toBeCloseTo(step([5, 6])[1], 6)
    expect(ghost?.cue?.guides.length).toBeGreaterThan(1)
  })

  it('both headlands in a corner', () => {
    const plan = smallPlan({ features: [farm] })
    const { ghost } = play(drawLine('row'), [hover([1.6, 1.1])], { plan, headland: 10 })
    expect(ghost?.cue?.words).toBe('headland of Farm and headland of Farm')
    const at = planeOf(plan.features).toMetres(ghost!.pointer!)
    const corner = planeOf(plan.features).toMetres(step([0, 0]))
    expect(at.x - corner.x).toBeCloseTo(10, 2)
    expect(at.y - corner.y).toBeCloseTo(10, 2)
  })

  it('a row’s line and a right angle to it', () => {
    const { ghost } = play(drawLine('row'), [tap([4, -5], { alt: true }), hover([4.2, -0.2])], { plan: rows })
    expect(ghost?.cue?.words).toMatch(/on Gala/)
    expect(ghost?.cue?.words).toMatch(/square to Gala/)
    expect(ghost?.pointer?.[0]).toBeCloseTo(step([4, 0])[0], 7)
    expect(ghost?.pointer?.[1]).toBeCloseTo(step([4, 0])[1], 7)
  })

  it('parallel to a row and as long', () => {
    const { ghost } = play(drawLine('row'), [tap([0, -5], { alt: true }), hover([9.7, -4.8])], { plan: rows })
    expect(ghost?.cue?.words).toBe('parallel to Gala and as long as Gala')
    const plane = planeOf(rows.features)
    const [a, b] = row.geometry.coordinates.map(plane.toMetres)
    const from = plane.toMetres(step([0, -5]))
    expect(distance(from, plane.toMetres(ghost!.pointer!))).toBeCloseTo(distance(a!, b!), 4)
  })

  it('the fourth corner of a rectangle: square to one side and as long as the other', () => {
    const plan = smallPlan({ features: [mudFeature('mud-1', {}, [0, 0])] })
    const corners = [tap([20, 0], { alt: true }), tap([26, 0], { alt: true }), tap([26, 4], { alt: true })]
    const { ghost } = play(drawRing('bed'), [...corners, hover([20.3, 4.2])], { plan })
    expect(ghost?.cue?.words).toBe('right angle and as long as side 1')
    // Far from the plan's middle north is turned by 5e-4: some centimetres in 40 m.
    expect(ghost?.pointer?.[0]).toBeCloseTo(step([20, 4])[0], 5)
    expect(ghost?.pointer?.[1]).toBeCloseTo(step([20, 4])[1], 5)
  })

  it('none with Alt, none switched off, and one where the crossing is far', () => {
    const first = tap([4, -5], { alt: true })
    expect(play(drawLine('row'), [first, hover([4.2, -0.2], { alt: true })], { plan: rows }).ghost?.cue).toBeUndefined()
    const off = play(drawLine('row'), [first, hover([4.2, -0.2])], { plan: rows, isSnapping: false })
    expect(off.ghost?.cue).toBeUndefined()
    expect(play(drawLine('row'), [first, hover([8, -0.2])], { plan: rows }).ghost?.cue?.words).toBe('on Gala')
  })
})

describe('a crossing', () => {
  const number = fc.double({ min: -300, max: 300, noNaN: true })
  const point = fc.record({ x: number, y: number })
  const bearing = fc.double({ min: 0, max: 360, noNaN: true })
  const shared = { words: '', origin: '', guidesTo: () => [] }
  const line = fc
    .record({ from: point, towards: bearing, length: fc.option(fc.double({ min: 1, max: 500, noNaN: true })) })
    .map(
      ({ from, towards, length }): Attraction => ({
        ...shared,
        type: 'line',
        from,
        along: offset({ x: 0, y: 0 }, towards, 1),
        length,
      }),
    )
  const circle = fc
    .record({ from: point, radius: fc.double({ min: 1, max: 300, noNaN: true }) })
    .map((each): Attraction => ({ ...shared, type: 'circle', ...each }))
  /** How far a point lies from a line, within its length, or from a circle; m. */
  const off = (at: { x: number; y: number }, each: Attraction): number => {
    if (each.type === 'circle') return Math.abs(distance(each.from, at) - each.radius)
    const [dx, dy] = [at.x - each.from.x, at.y - each.from.y]
    const t = dx * each.along.x + dy * each.along.y
    const past = each.length === null ? 0 : Math.max(0, -t, t - each.length)
    return Math.abs(dx * each.along.y - dy * each.along.x) + past
  }

  it('lies on both, whichever is named first', () => {
    fc.assert(
      fc.property(line, fc.oneof(line, circle), (a, b) => {
        const points = crossings(a, b)
        // Up to 6 km away where lines meet flatly: doubles still hold a thousandth of a millimetre there.
        for (const at of points) expect(Math.max(off(at, a), off(at, b))).toBeLessThan(1e-6)
        expect(crossings(b, a)).toHaveLength(points.length)
      }),
      { seed: 20261125, numRuns: 400 },
    )
  })

  it('is found wherever two sides do cross well', () => {
    fc.assert(
      fc.property(point, bearing, fc.double({ min: 20, max: 160, noNaN: true }), (at, towards, angle) => {
        const through = (along: number): Attraction => ({
          ...shared,
          type: 'line',
          from: offset(at, along, -30),
          along: offset({ x: 0, y: 0 }, along, 1),
          length: 70,
        })
        const [found] = crossings(through(towards), through(towards + angle))
        expect(distance(found!, at)).toBeLessThan(1e-9)
      }),
      { seed: 20261125, numRuns: 200 },
    )
  })
})
