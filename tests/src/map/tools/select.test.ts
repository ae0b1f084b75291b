import { describe, expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import type { Plan } from '#geo/plan/plan'
import { planeOf } from '#geo/space/plane'
import { selectTool } from '../../../../src/map/tools/select'
import {
  blockFeature,
  keepoutFeature,
  plantFeature,
  rectangle,
  rowFeature,
  smallPlan,
  step,
} from '../../../support/builders'
import { drag, play, press, release, tap } from './events'

const shift = { shift: true }
const touch = { pointer: 'touch' } as const

function positions(plan: Plan, id: string): unknown {
  return plan.features.find(feature => feature.id === id)?.geometry.coordinates
}

/** Moved things keep their length in metres: some 1e-9 degrees beside where plain degrees would put them. */
function near(positions: unknown, wanted: readonly (readonly number[])[]): void {
  for (const [i, value] of [positions].flat(3).entries()) expect(value).toBeCloseTo(wanted.flat()[i]!, 6)
}

const withBlock = () => smallPlan({ features: [...smallPlan().features, blockFeature('block-1')] })

describe('choosing', () => {
  it.each(['mouse', 'touch'] as const)('takes what is tapped, and nothing on bare ground: %s', pointer => {
    expect(play(selectTool, [tap([1, 0], { pointer })]).selection).toEqual(['row-1'])
    expect(play(selectTool, [tap([1, 0], { pointer }), tap([30, 30], { pointer })]).selection).toEqual([])
  })

  it('adds and takes away with Shift, and loses nothing by a miss', () => {
    const events = [tap([5, 0]), tap([8, 1], shift), tap([5, 1], shift), tap([30, 30], shift)]
    expect(play(selectTool, events).selection).toEqual(['row-1', 'row-2', 'station-1'])
    expect(play(selectTool, [...events, tap([8, 1], shift)]).selection).toEqual(['row-1', 'station-1'])
  })

  it('reaches further under a finger', () => {
    // 0.8 steps are 16 pixels off the row.
    expect(play(selectTool, [tap([5, -0.8])]).selection).toEqual([])
    expect(play(selectTool, [tap([5, -0.8], touch)]).selection).toEqual(['row-1'])
  })

  it('passes over what does not stand there in the year shown', () => {
    const plan = smallPlan({ features: [rowFeature('row-1', { removed: 2026 })] })
    expect(play(selectTool, [tap([5, 0])], { plan }).selection).toEqual([])
    expect(play(selectTool, [tap([5, 0])], { plan, year: 2025 }).selection).toEqual(['row-1'])
  })

  it('takes all inside a box pulled with Shift', () => {
    const events = [press([-1, -1], shift), drag([5, 1], shift), release([11, 2], shift)]
    const { answers, selection } = play(selectTool, events)
    expect(answers[0]?.isCaptured).toBe(true)
    expect(selection).toEqual(['row-1', 'row-2', 'station-1', 'station-2'])
  })

  it('leaves bare ground to the map', () => {
    expect(play(selectTool, [press([30, 30])]).last?.isCaptured).toBeUndefined()
    expect(play(selectTool, [press([30, 30], { ...touch, ...shift })]).last?.isCaptured).toBeUndefined()
  })
})

describe('moving', () => {
  it('moves a row with one edit at the end, and selects it', () => {
    const { answers, edits, plan, selection } = play(selectTool, [press([5, 0]), drag([5, 2]), release([6, 3])])
    expect(answers.map(({ isCaptured }) => isCaptured)).toEqual([true, true, undefined])
    expect(edits).toHaveLength(1)
    near(positions(plan, 'row-1'), [step([1, 3]), step([11, 3])])
    expect(selection).toEqual(['row-1'])
  })

  it('moves all that is selected together', () => {
    const events = [press([5, 0]), drag([5, -2]), release([5, -2])]
    const { plan } = play(selectTool, events, { selection: ['row-1', 'station-2'] })
    near(positions(plan, 'row-1'), [step([0, -2]), step([10, -2])])
    near(positions(plan, 'station-2'), [step([9, -0.5])])
  })

  it('tells of a single station under way, and of nothing else', () => {
    const events = [press([5, 1]), drag([5.5, 1]), drag([6, 2])]
    const { answers } = play(selectTool, events)
    expect(answers[0]?.station).toBeUndefined()
    expect(answers[1]?.station?.id).toBe('station-1')
    expect(answers[2]?.station?.at[0]).toBeCloseTo(step([6, 2])[0], 9)
    expect(answers[2]?.station?.at[1]).toBeCloseTo(step([6, 2])[1], 9)
    const both = play(selectTool, events, { selection: ['station-1', 'station-2'] })
    expect(both.answers.every(({ station }) => station === undefined)).toBe(true)
  })

  it('shows it where it is and hides it where it was', () => {
    const { ghost } = play(selectTool, [press([5, 1]), drag([6, 2])])
    expect(ghost?.hidden).toEqual(['station-1'])
    expect(ghost?.shapes[0]).toMatchObject({ kind: 'station', name: 'North gate' })
  })

  it('does not move by a tap, a cancel or a second finger', () => {
    expect(play(selectTool, [press([5, 0]), tap([5, 0])]).edits).toEqual([])
    for (const end of ['cancel', 'lost'] as const) {
      const { edits, ghost, selection } = play(selectTool, [
        press([5, 0]),
        drag([5, 3]),
        { type: end },
        release([5, 4]),
      ])
      expect(edits).toEqual([])
      expect(ghost).toBeNull()
      expect(selection).toEqual([])
    }
  })

  it('leaves an outline to the map until it is selected, and a row under a finger', () => {
    const plan = withBlock()
    expect(play(selectTool, [press([1, 4])], { plan }).last?.isCaptured).toBeUndefined()
    expect(play(selectTool, [press([1, 4])], { plan, selection: ['block-1'] }).last?.isCaptured).toBe(true)
    expect(play(selectTool, [press([7, 0], touch)]).last?.isCaptured).toBeUndefined()
    expect(play(selectTool, [press([7, 0], touch)], { selection: ['row-1'] }).last?.isCaptured).toBe(true)
    expect(play(selectTool, [press([5, 1], touch)]).last?.isCaptured).toBe(true)
  })

  it('drops what was taken off the plan meanwhile', () => {
    const start = play(selectTool, [press([5, 1]), drag([6, 2])])
    const state = start.last!.state
    const plan = smallPlan({ features: [rowFeature('row-1')] })
    const context = { ...contextWith(plan), selection: [] }
    expect(selectTool.ghost(state, context)).toBeNull()
    const answer = selectTool.step(state, release([6, 2]), context)
    expect(answer.edit).toBeUndefined()
  })
})

describe('corners', () => {
  it.each(['mouse', 'touch'] as const)(
    'pulls the end of the one selected row, falling onto other ends: %s',
    pointer => {
      const as = { pointer }
      const events = [press([10, 0], as), drag([10, 0.5], as), release([9.8, 1.1], as)]
      const { plan, edits, status } = play(selectTool, events, { selection: ['row-1'] })
      expect(edits).toHaveLength(1)
      expect(positions(plan, 'row-1')).toEqual([step([0, 0]), step([10, 1])])
      expect(status.hasVertex).toBe(pointer === 'mouse')
    },
  )

  it('makes a bend from the middle of a side, pulled or tapped', () => {
    const pulled = play(selectTool, [press([5, 0]), drag([5, -1]), release([5, -2])], { selection: ['row-1'] })
    expect(positions(pulled.plan, 'row-1')).toEqual([step([0, 0]), step([5, -2]), step([10, 0])])
    const tapped = play(selectTool, [tap([5, 0])], { selection: ['row-1'] })
    expect(positions(tapped.plan, 'row-1')).toEqual([step([0, 0]), step([5, 0]), step([10, 0])])
    expect(tapped.selection).toEqual(['row-1'])
  })

  it('removes the chosen corner, and a selected thing only when no corner is chosen', () => {
    const plan = withBlock()
    const corner = play(selectTool, [tap([6, 6]), { type: 'remove' }], { plan, selection: ['block-1'] })
    expect(positions(corner.plan, 'block-1')).toEqual([[step([0, 2]), step([6, 2]), step([0, 6]), step([0, 2])]])
    expect(corner.status.hasVertex).toBe(false)
    const whole = play(selectTool, [{ type: 'back' }], { plan, selection: ['block-1', 'row-1'] })
    expect(whole.plan.features.map(({ id }) => id)).toEqual(['row-2', 'station-1', 'station-2', 'forage-1'])
    expect(whole.edits).toHaveLength(1)
  })

  it('does not remove an end that a row needs, nor the row in its place', () => {
    const { edits, notices } = play(selectTool, [tap([10, 0]), { type: 'remove' }], { selection: ['row-1'] })
    expect(edits).toEqual([])
    expect(notices[0]).toContain('two ends')
  })

  it('refuses a shape that crosses itself', () => {
    const events = [press([6, 6]), drag([3, 0]), release([3, -1.5])]
    const { edits, notices, ghost } = play(selectTool, events, { plan: withBlock(), selection: ['block-1'] })
    expect(edits).toEqual([])
    expect(notices[0]).toContain('crosses itself')
    expect(ghost?.hidden).toEqual([])
  })

  it('measures what is being reshaped', () => {
    const { ghost } = play(selectTool, [press([10, 0]), drag([14, 0])], { selection: ['row-1'] })
    expect(ghost?.measure).toMatchObject({
      kind: 'row',
      geometry: { coordinates: [step([0, 0]), step([14, 0])] },
      feature: { id: 'row-1' },
    })
    expect(ghost?.handles.map(({ role }) => role)).toEqual(['vertex', 'active', 'midpoint'])
  })

  it('takes corners of holes and of several plants', () => {
    const outer = keepoutFeature('keepout-1').geometry.coordinates[0]!
    const hole = [step([-2, 0]), step([-2, 2]), step([-1.5, 2]), step([-2, 0])]
    const keepout = keepoutFeature('keepout-1', {}, { type: 'Polygon', coordinates: [outer, hole] })
    const plan = smallPlan({ features: [keepout] })
    const inHole = play(selectTool, [tap([-2, 2]), { type: 'remove' }], { plan, selection: ['keepout-1'] })
    expect(positions(inHole.plan, 'keepout-1')).toEqual([outer])
    const trees = {
      ...plantFeature('plant-1'),
      geometry: { type: 'MultiPoint', coordinates: [step([1, 1]), step([3, 1])] },
    }
    const orchard = smallPlan({ features: [trees as Plan['features'][number]] })
    const moved = play(selectTool, [press([3, 1]), drag([3, 2]), release([3, 3])], {
      plan: orchard,
      selection: ['plant-1'],
    })
    expect(positions(moved.plan, 'plant-1')).toEqual([step([1, 1]), step([3, 3])])
  })
})

describe('keys', () => {
  it('nudges the selection by metres, and joins what has one key', () => {
    const { plan, edits } = play(
      selectTool,
      [
        { type: 'nudge', by: { x: 1, y: 0 }, key: 'burst' },
        { type: 'nudge', by: { x: 0, y: -10 }, key: 'burst' },
      ],
      { selection: ['station-1', 'row-1'] },
    )
    expect(edits.map(({ key }) => key)).toEqual(['burst', 'burst'])
    const plane = planeOf(smallPlan().features)
    const way = (from: readonly [number, number], to: unknown) => {
      const a = plane.toMetres(from)
      const b = plane.toMetres(to as [number, number])
      return [b.x - a.x, b.y - a.y]
    }
    const [x, y] = way(step([5, 1]), positions(plan, 'station-1'))
    expect(x).toBeCloseTo(1, 3)
    expect(y).toBeCloseTo(-10, 3)
    const [end] = way(step([10, 0]), (positions(plan, 'row-1') as unknown[])[1])
    expect(end).toBeCloseTo(1, 3)
  })

  it('goes from corner to corner with Enter, back with Shift, and nudges the corner alone', () => {
    const enter = { type: 'finish' } as const
    const back = { type: 'finish', keys: { shift: true, alt: false } } as const
    const nudge = { type: 'nudge', by: { x: 0, y: 5 }, key: 'burst' } as const
    const second = play(selectTool, [enter, enter, nudge], { selection: ['row-1'] })
    expect((positions(second.plan, 'row-1') as unknown[])[0]).toEqual(step([0, 0]))
    expect((positions(second.plan, 'row-1') as number[][])[1]![1]).toBeGreaterThan(step([10, 0])[1])
    const first = play(selectTool, [enter, enter, back, nudge], { selection: ['row-1'] })
    expect((positions(first.plan, 'row-1') as unknown[])[1]).toEqual(step([10, 0]))
  })

  it('lets go of the corner first, of the selection next', () => {
    const corner = play(selectTool, [tap([10, 0]), { type: 'cancel' }], { selection: ['row-1'] })
    expect(corner.status.hasVertex).toBe(false)
    expect(corner.selection).toEqual(['row-1'])
    expect(play(selectTool, [{ type: 'cancel' }], { selection: ['row-1'] }).selection).toEqual([])
  })
})

function contextWith(plan: Plan) {
  return {
    plan,
    year: 2026,
    selection: [],
    plane: planeOf(plan.features),
    toPixel: () => ({ x: 0, y: 0 }),
    spacingOf: () => null,
    newId: () => 'none',
  }
}

describe('turning', () => {
  const rows = () => smallPlan({ features: [rowFeature('row-1', {}, [0, 0], [0, 10])] })
  const length = (plan: Plan) => {
    const plane = planeOf(plan.features)
    const [a, b] = (positions(plan, 'row-1') as readonly (readonly [number, number])[]).map(at => plane.toMetres(at))
    return { length: Math.hypot(b!.x - a!.x, b!.y - a!.y), bearing: Math.atan2(b!.x - a!.x, b!.y - a!.y) }
  }

  it('turns a row by its grip about its middle, says the bearing, and is one named step', () => {
    // The row goes north for 10 steps, 200 pixels; its grip stands 44 pixels, 2.2 steps, beyond.
    const events = [press([0, 12.2]), drag([2, 12]), release([2, 12])]
    const before = play(selectTool, events.slice(0, 2), { plan: rows(), selection: ['row-1'] })
    // Two steps east are 13.7 m, seven north 77.9 m: 10.0 degrees.
    expect(before.ghost?.says).toBe('bearing 10°, turned right by 10°')
    expect(before.ghost?.hidden).toEqual(['row-1'])
    const { plan, edits } = play(selectTool, events, { plan: rows(), selection: ['row-1'] })
    expect(edits).toHaveLength(1)
    expect(labelOf(edits[0]!, rows())).toBe('Turn row')
    expect((length(plan).bearing * 180) / Math.PI).toBeCloseTo(10, 3)
    expect(length(plan).length).toBeCloseTo(length(rows()).length, 3)
  })

  it('turns a block with its rows, left by pulling left', () => {
    const plan = smallPlan({ features: [blockFeature('block-1', { bearing: 0 }, rectangle([0, 0], [4, 10]))] })
    const events = [press([2, 12.2]), drag([-5, 12]), release([-5, 12])]
    const after = play(selectTool, events, { plan, selection: ['block-1'] })
    const { properties } = after.plan.features[0]!
    // Seven steps west are 47.9 m, seven north 77.9 m: 31.6 degrees to the left.
    expect('bearing' in properties && properties.bearing).toBeCloseTo(180 - 31.6, 1)
  })

  it('is reached by Enter after the corners, and turned by arrows in one step of undo', () => {
    const enter = { type: 'finish' } as const
    const right = (metres: number) => ({ type: 'nudge', by: { x: metres, y: 0 }, key: 'k' }) as const
    const there = play(selectTool, [enter, enter, enter], { plan: rows(), selection: ['row-1'] })
    expect(there.status.isTurning).toBe(true)
    const turned = play(selectTool, [enter, enter, enter, right(10), right(0.1)], {
      plan: rows(),
      selection: ['row-1'],
    })
    expect((length(turned.plan).bearing * 180) / Math.PI).toBeCloseTo(10.1, 3)
    expect(new Set(turned.edits.map(({ key }) => key)).size).toBe(1)
    const left = play(selectTool, [enter, enter, enter, { type: 'cancel' }], { plan: rows(), selection: ['row-1'] })
    expect(left.status.isTurning).toBe(false)
    expect(left.selection).toEqual(['row-1'])
  })

  it('does nothing where the pull is lost', () => {
    const events = [press([0, 12.2]), drag([3, 12]), { type: 'lost' } as const]
    expect(play(selectTool, events, { plan: rows(), selection: ['row-1'] }).edits).toEqual([])
  })
})

it('adds a corner after the chosen one, for those without a pointer, and moves it then', () => {
  const plan = smallPlan({ features: [rowFeature('row-1', {}, [0, 0], [0, 10])] })
  const enter = { type: 'finish' } as const
  const events = [enter, { type: 'put' } as const, { type: 'nudge', by: { x: 6.84, y: 0 }, key: 'k' } as const]
  const after = play(selectTool, events, { plan, selection: ['row-1'] })
  near(positions(after.plan, 'row-1'), [step([0, 0]), step([1, 5]), step([0, 10])])
  // Nothing follows the last end.
  const last = play(selectTool, [enter, enter, { type: 'put' }], { plan, selection: ['row-1'] })
  expect(last.edits).toEqual([])
  expect(last.notices).toHaveLength(1)
  expect(play(selectTool, [{ type: 'put' }], { plan, selection: ['row-1'] }).edits).toEqual([])
})
