import { describe, expect, it } from 'vitest'
import { samplePlanting } from '#geo/coverage/demand'
import { type Block, type Feature, isPlanting, type Plan } from '#geo/plan/plan'
import { type LngLat, planeAt, planeOf } from '#geo/space/plane'
import { drawRows } from '../../../../src/map/tools/draw-rows'
import { mudFeature, smallPlan } from '../../../support/builders'
import { play, toPixel } from './events'

const crop = { spacing: 2.5, rowSpacing: 4 }
const corner: LngLat = [-1.7, 52.2]
const plane = planeAt(corner)
// A place to begin with, so that the plane lies here.
const bare = { plan: smallPlan({ features: [mudFeature('mud-1', {}, [0, 0])] }), plane } as const

const at = (x: number, y: number) => plane.toLngLat({ x, y })
const pointed = <T extends string>(type: T, x: number, y: number) => ({
  type,
  at: at(x, y),
  pixel: toPixel(at(x, y)),
  keys: { shift: false, alt: true },
  pointer: 'mouse' as const,
})
const tap = (x: number, y: number) => ({ ...pointed('tap', x, y), count: 1 as const })
const hover = (x: number, y: number) => pointed('hover', x, y)

function plantsOf(plan: Plan, feature: Feature | undefined): number {
  if (feature === undefined || !isPlanting(feature)) return 0
  return samplePlanting(feature, { ...crop } as never, planeOf(plan.features)).points.length / 2
}

describe('drawing a block by its rows', () => {
  it('takes three presses: the ends of the first row and the place of the last', () => {
    const { plan, last, selection, edits } = play(drawRows, [tap(0, 0), tap(0, 35), tap(16.3, 10)], bare)
    const block = plan.features.at(-1) as Block
    expect(edits).toHaveLength(1)
    expect(last?.isDone).toBe(true)
    expect(selection).toEqual([block.id])
    expect(block.properties).toMatchObject({
      kind: 'block',
      name: 'Block 1',
      crop: 'apple',
      spacing: 2.5,
      rowSpacing: 4,
    })
    // 16.3 m are four rows further; a row of 35 m holds 15 plants at 2.5 m.
    expect(plantsOf(plan, block)).toBe(5 * 15)
  })

  it('lays the other rows on the side of the pointer, and counts as it goes', () => {
    const left = play(drawRows, [tap(0, 0), tap(0, 35), hover(-8, 3)], bare)
    expect(left.ghost?.says).toBe('3 rows of 15, 45 plants')
    const lines = left.ghost!.shapes.filter(({ kind }) => kind === 'row').map(({ geometry }) => geometry)
    const easts = lines.map(line => plane.toMetres((line.coordinates as LngLat[])[0]!).x)
    expect(easts.map(east => Math.round(east * 1000) / 1000).sort((a, b) => a - b)).toEqual([-8, -4, 0])
  })

  it('goes by what is typed: plants, spacings and rows', () => {
    const { plan, status } = play(
      drawRows,
      [
        { type: 'type', figures: { spacing: 5, rowSpacing: 9 } },
        tap(0, 0),
        { type: 'type', figures: { plants: 8, bearing: 90 } },
        { type: 'put' },
        { type: 'type', figures: { rows: 28 } },
        { type: 'put' },
      ],
      bare,
    )
    const block = plan.features.at(-1) as Block
    expect(plantsOf(plan, block)).toBe(28 * 8)
    expect(block.properties).toMatchObject({ spacing: 5, rowSpacing: 9 })
    expect(block.properties.bearing).toBeCloseTo(90, 2)
    // The first plant of the first row stands where the map was pressed; the others to the right, which is south.
    const { toMetres } = planeOf(plan.features)
    const ring = block.geometry.coordinates[0]!.map(toMetres)
    const first = toMetres(corner)
    expect(Math.min(...ring.map(({ x }) => x))).toBeCloseTo(first.x - 2.5, 2)
    expect(Math.max(...ring.map(({ y }) => y))).toBeCloseTo(first.y + 4.5, 2)
    expect(status.figures?.spacing).toEqual({ typed: 5, live: 5 })
    expect(status.figures?.rows?.typed).toBeNull()
  })

  it('keeps spacings and cultivar of the block before', () => {
    const before = play(
      drawRows,
      [{ type: 'type', figures: { spacing: 3, rowSpacing: 6 } }, tap(0, 0), tap(0, 30), tap(12, 0)],
      bare,
    )
    const next = play(drawRows, [tap(100, 0), tap(100, 30), hover(112, 0)], { ...bare, plan: before.plan })
    expect(next.ghost?.says).toBe('3 rows of 11, 33 plants')
  })

  it('asks for the last row where it was pressed on the first, and takes points back one by one', () => {
    const asked = play(drawRows, [tap(0, 0), tap(0, 35), tap(0.5, 20)], bare)
    expect(asked.edits).toEqual([])
    expect(asked.notices).toHaveLength(1)
    const back = play(drawRows, [tap(0, 0), tap(0, 35), { type: 'back' }], bare)
    expect(back.status.points).toBe(1)
    expect(play(drawRows, [tap(0, 0), tap(0, 35), { type: 'cancel' }], bare).status.points).toBe(0)
    expect(play(drawRows, [{ type: 'cancel' }], bare).last?.isLeft).toBe(true)
  })
})
