import { describe, expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import { type BlockProperties, type PolygonGeometry, seasonOf } from '#geo/plan/plan'
import { planeOf } from '#geo/space/plane'
import { signedArea } from '#geo/space/shape'
import { drawHole } from '../../../../src/map/tools/draw-hole'
import { drawLine } from '../../../../src/map/tools/draw-line'
import { drawPoint } from '../../../../src/map/tools/draw-point'
import { drawRing } from '../../../../src/map/tools/draw-ring'
import { bedFeature, blockFeature, mudFeature, rectangle, smallPlan, step } from '../../../support/builders'
import { drag, hover, play, press, release, tap } from './events'

const pointers = ['mouse', 'touch', 'pen'] as const

describe('drawing a line', () => {
  it.each(pointers)('sets a point with each tap and ends with a second tap on the last one: %s', pointer => {
    const as = { pointer }
    const { plan, selection, last, edits } = play(drawLine('row'), [
      tap([20, 4], as),
      tap([26, 4], as),
      tap([30, 6], as),
      tap([30, 6], as),
    ])
    expect(edits).toHaveLength(1)
    expect(plan.features.at(-1)).toEqual({
      type: 'Feature',
      id: 'row-new-1',
      geometry: { type: 'LineString', coordinates: [step([20, 4]), step([26, 4]), step([30, 6])] },
      // As the row before, and the bar shows it while it is drawn.
      properties: { kind: 'row', name: 'Row 3', crop: 'apple', cultivar: 'Late' },
    })
    expect(selection).toEqual(['row-new-1'])
    expect(last?.isDone).toBe(true)
  })

  it('ends with Finish and with a double tap', () => {
    const finished = play(drawLine('windbreak'), [tap([20, 4]), tap([26, 4]), { type: 'finish' }])
    expect(finished.plan.features.at(-1)?.properties).toEqual({ kind: 'windbreak', name: 'Windbreak 1' })
    const doubled = play(drawLine('row'), [tap([20, 4]), tap([26, 4]), tap([26.4, 4], { count: 2 })])
    expect(doubled.plan.features).toHaveLength(6)
  })

  it('takes a short side from a mouse, and for a finger on the last point once more', () => {
    // 0.3 steps are 6 pixels, 1.4 m and less where trees stand close.
    const events = (pointer: 'mouse' | 'touch') => [tap([20, 4], { pointer }), tap([20.3, 4], { pointer })]
    const alt = { isSnapping: false }
    expect(play(drawLine('row'), events('mouse'), alt).status.points).toBe(2)
    expect(play(drawLine('row'), events('touch'), alt).status.points).toBe(1)
  })

  it('does not end before it has two points', () => {
    const { edits, status } = play(drawLine('row'), [tap([20, 4]), tap([20, 4]), { type: 'finish' }])
    expect(edits).toEqual([])
    expect(status).toMatchObject({ points: 1, canFinish: false, hasVertex: false })
  })

  it('takes no press and no pull of the map for a point', () => {
    const { status, answers } = play(drawLine('row'), [press([20, 4]), drag([25, 4]), release([25, 4])])
    expect(status.points).toBe(0)
    expect(answers.some(({ isCaptured }) => isCaptured)).toBe(false)
  })

  it('takes off the last point, drops all of them, and is put down when there is none', () => {
    const one = play(drawLine('row'), [tap([20, 4]), tap([26, 4]), { type: 'back' }])
    expect(one.status.points).toBe(1)
    const none = play(drawLine('row'), [tap([20, 4]), tap([26, 4]), { type: 'cancel' }])
    expect(none.status.points).toBe(0)
    expect(none.last?.isLeft).toBeUndefined()
    expect(play(drawLine('row'), [{ type: 'cancel' }]).last?.isLeft).toBe(true)
  })

  it('falls onto the end of a row nearby, but not with Alt', () => {
    // Row 1 begins at 0, 0; 0.3 steps are 6 pixels.
    const near = play(drawLine('row'), [tap([0.3, 0]), tap([0, -5]), { type: 'finish' }])
    expect(near.plan.features.at(-1)?.geometry.coordinates).toEqual([step([0, 0]), step([0, -5])])
    const free = play(drawLine('row'), [tap([0.3, 0], { alt: true }), tap([0, -5], { alt: true }), { type: 'finish' }])
    expect(free.plan.features.at(-1)?.geometry.coordinates).toEqual([step([0.3, 0]), step([0, -5])])
  })

  it('ends by keyboard where the crosshair stays, also on a corner it fell onto', () => {
    const as = { pointer: 'keyboard' } as const
    const { plan } = play(drawLine('row'), [tap([0, -5], as), tap([0.3, 0], as), tap([0.3, 0], as)])
    expect(plan.features.at(-1)?.geometry.coordinates).toEqual([step([0, -5]), step([0, 0])])
  })

  it('shows the line to the pointer, its points, and what to measure', () => {
    const { ghost } = play(drawLine('row'), [tap([20, 4]), hover([26, 4], { alt: true })])
    const geometry = { type: 'LineString', coordinates: [step([20, 4]), step([26, 4])] }
    expect(ghost?.shapes).toEqual([{ kind: 'row', geometry }])
    expect(ghost?.measure).toMatchObject({ kind: 'row', geometry, feature: { properties: { crop: 'apple' } } })
    expect(ghost?.handles).toEqual([{ at: step([20, 4]), role: 'vertex' }])
    const overCorner = play(drawLine('row'), [hover([10.2, 0])])
    expect(overCorner.ghost?.handles).toEqual([{ at: step([10, 0]), role: 'snap' }])
  })
})

describe('drawing an outline', () => {
  // 0.0006 degrees of longitude at 52.2 north are 41 m, of latitude 67 m: the long sides run north.
  const corners = [tap([20, 0]), tap([20, 6]), tap([26, 6]), tap([26, 0])]

  it.each(pointers)(
    'closes on its first corner, counter-clockwise, with its rows along the longest side: %s',
    pointer => {
      const as = { pointer }
      const events = [tap([20, 0], as), tap([20, 6], as), tap([26, 6], as), tap([26, 0], as), tap([20, 0], as)]
      // Degrees are not quite square: without snapping the corners stay where they were pressed, to the last digit.
      const { plan, selection } = play(drawRing('block'), events, { isSnapping: false })
      const block = plan.features.at(-1)
      expect(block?.geometry.coordinates).toEqual([
        [
          [26, 0],
          [26, 6],
          [20, 6],
          [20, 0],
          [26, 0],
        ].map(at => step(at as [number, number])),
      ])
      expect(block?.properties).toMatchObject({ kind: 'block', name: 'Block 1', crop: 'apple' })
      const { bearing = 90 } = block!.properties as BlockProperties
      expect(Math.min(bearing, 180 - bearing)).toBeLessThan(0.2)
      expect(selection).toEqual(['block-new-1'])
    },
  )

  it.each([
    ['bed', { kind: 'bed', name: 'Bed 1', crop: 'strawberry' }],
    ['forage', { kind: 'forage', name: 'Forage area 1' }],
    ['keepout', { kind: 'keepout', name: 'No-station ground 1' }],
    ['boundary', { kind: 'boundary', name: 'Boundary 1' }],
  ] as const)('gives a new %s its properties', (kind, properties) => {
    const { plan } = play(drawRing(kind), [...corners, { type: 'finish' }])
    expect(plan.features.at(-1)?.properties).toEqual(properties)
  })

  it('grows what was drawn last, in beds what beds grow', () => {
    const features = [bedFeature('bed-1'), blockFeature('block-1', { crop: 'pear' })]
    const plan = smallPlan({ features })
    const crop = (kind: 'block' | 'bed') =>
      play(drawRing(kind), [...corners, { type: 'finish' }], { plan }).plan.features.at(-1)?.properties
    expect(crop('block')).toMatchObject({ crop: 'pear' })
    expect(crop('bed')).toMatchObject({ crop: 'strawberry' })
  })

  it('refuses one that crosses itself, says so, and keeps its corners', () => {
    const bow = [tap([20, 0]), tap([26, 6]), tap([26, 0]), tap([20, 6]), { type: 'finish' } as const]
    const { edits, notices, status } = play(drawRing('block'), bow)
    expect(edits).toEqual([])
    expect(notices).toEqual([expect.stringContaining('crosses itself')])
    expect(status.points).toBe(4)
  })

  it('is a line to look at until it has three points', () => {
    const two = play(drawRing('block'), [tap([20, 0]), hover([20, 6])])
    expect(two.ghost?.shapes[0]?.geometry.type).toBe('LineString')
    const three = play(drawRing('block'), [tap([20, 0]), tap([20, 6]), hover([26, 6])])
    expect(three.ghost?.shapes[0]?.geometry.type).toBe('Polygon')
    expect(three.status.canFinish).toBe(false)
    expect(play(drawRing('block'), corners).ghost?.handles[0]?.role).toBe('first')
  })
})

describe('drawing a mark', () => {
  it.each(pointers)('puts a station in use where the map is tapped, without cocoons: %s', pointer => {
    const { plan, selection, last } = play(drawPoint('station'), [tap([3, 4], { pointer })])
    expect(plan.features.at(-1)).toEqual({
      type: 'Feature',
      id: 'station-new-1',
      geometry: { type: 'Point', coordinates: step([3, 4]) },
      properties: { kind: 'station', name: 'Nest station 1' },
    })
    expect(seasonOf(plan, 2026)?.stations?.['station-new-1']).toEqual({ tubes: 100 })
    expect(selection).toEqual(['station-new-1'])
    expect(last?.isDone).toBe(true)
  })

  it('begins the season of the year shown where the plan has none', () => {
    const { plan } = play(drawPoint('station'), [tap([3, 4])], { year: 2031 })
    expect(seasonOf(plan, 2031)).toEqual({ year: 2031, stations: { 'station-new-1': { tubes: 100 } } })
  })

  it('puts plants and mud', () => {
    expect(play(drawPoint('plant'), [tap([3, 4])]).plan.features.at(-1)?.properties).toEqual({
      kind: 'plant',
      name: 'Plant 1',
      crop: 'apple',
    })
    expect(play(drawPoint('mud'), [tap([3, 4])]).plan.features.at(-1)?.properties).toEqual({
      kind: 'mud',
      name: 'Mud point 1',
    })
  })

  it('shows the mark under the pointer and is put down by Cancel', () => {
    const { ghost } = play(drawPoint('mud'), [hover([3, 4])])
    expect(ghost?.shapes).toEqual([{ kind: 'mud', geometry: { type: 'Point', coordinates: step([3, 4]) } }])
    expect(play(drawPoint('mud'), [{ type: 'cancel' }]).last?.isLeft).toBe(true)
  })
})

describe('a block under way', () => {
  const corners = [tap([20, 0]), tap([26, 0]), hover([26, 6])]
  const typed = (figures: object) => ({ type: 'type', figures }) as const
  const bare = { plan: smallPlan({ features: [mudFeature('mud-1', {}, [0, 0])] }), isSnapping: false }

  it('shows the direction and spacings that its rows would have, and takes others before it is finished', () => {
    const { status, ghost } = play(drawRing('block'), corners, bare)
    // From the third corner back to the first, 41 m west and 67 m south, is the longest side.
    expect(status.figures?.along).toEqual({ typed: null, live: 31.6 })
    expect(status.figures?.spacing).toEqual({ typed: null, live: 2.5 })
    const rows = ghost!.shapes.length - 1
    const turned = play(drawRing('block'), [...corners, typed({ along: 90, rowSpacing: 8 })], bare)
    expect(turned.status.figures?.along?.typed).toBe(90)
    // 67 m across at 8 m: eight rows, of which all but the shortest have plants for a line; they run east.
    expect(rows).toBeGreaterThan(turned.ghost!.shapes.length - 1)
    const [, first] = turned.ghost!.shapes
    const [a, b] = first!.geometry.coordinates as readonly (readonly number[])[]
    expect(Math.abs(a![1]! - b![1]!)).toBeLessThan(1e-6)
    expect(turned.ghost?.measure?.feature?.properties).toMatchObject({ bearing: 90, rowSpacing: 8 })
  })

  it('keeps them, and the next one the spacings but not the direction', () => {
    const events = [...corners, tap([26, 6]), typed({ along: -60, spacing: 3 }), { type: 'finish' } as const]
    const { plan, status } = play(drawRing('block'), events, bare)
    expect(plan.features.at(-1)?.properties).toMatchObject({ bearing: 120, spacing: 3 })
    expect(status.figures?.along?.typed).toBeNull()
    expect(status.figures?.spacing).toMatchObject({ typed: 3 })
  })

  it('grows what was chosen, with the spacings of that crop', () => {
    const growing = { crop: 'pear', cultivar: 'Comice' }
    const spacingOf = (crop: string) =>
      crop === 'pear' ? { spacing: 4, rowSpacing: 5 } : { spacing: 2.5, rowSpacing: 4 }
    const events = [...corners, tap([26, 6]), { type: 'finish' } as const]
    const { plan, status } = play(drawRing('block'), events, { ...bare, growing, spacingOf })
    expect(plan.features.at(-1)?.properties).toMatchObject(growing)
    expect(status.grows).toEqual(growing)
    expect(status.figures?.spacing?.live).toBe(4)
  })
})

describe('a hole', () => {
  const plan = smallPlan({
    features: [blockFeature('block-1', { name: 'North', bearing: 0 }, rectangle([0, 0], [10, 10]))],
  })
  const patch = { plan, selection: ['block-1'], isSnapping: false }
  const corners = [tap([3, 3]), tap([6, 3]), tap([6, 6])]

  it('is cut into the selected outline, clockwise, in one step that undo names; its rows end there meanwhile', () => {
    const under = play(drawHole, [...corners, hover([3, 6])], patch)
    expect(under.ghost?.hidden).toEqual(['block-1'])
    const events = [...corners, tap([3, 6]), { type: 'finish' } as const]
    const { plan: after, edits, last } = play(drawHole, events, patch)
    const { coordinates } = after.features[0]!.geometry as PolygonGeometry
    expect(coordinates).toHaveLength(2)
    expect(signedArea(coordinates[1]!.map(planeOf(plan.features).toMetres))).toBeLessThan(0)
    expect(labelOf(edits[0]!, plan)).toBe('Cut a hole into block North')
    expect(last?.isDone).toBe(true)
  })

  it('is not taken outside, and its corners stay to be put right', () => {
    const events = [tap([12, 3]), tap([15, 3]), tap([15, 6]), { type: 'finish' } as const]
    const { edits, notices, status } = play(drawHole, events, patch)
    expect(edits).toEqual([])
    expect(notices[0]).toMatch(/^The hole would lie outside/)
    expect(status.points).toBe(3)
  })

  it('needs one outline to be selected', () => {
    const { last } = play(drawHole, [tap([3, 3])], { plan })
    expect(last).toMatchObject({ isLeft: true, notice: 'Select the ground to cut a hole into first.' })
  })
})
