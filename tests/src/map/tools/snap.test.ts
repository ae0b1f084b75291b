import { describe, expect, it } from 'vitest'
import { drawLine } from '../../../../src/map/tools/draw-line'
import { blockFeature, mudFeature, rectangle, rowFeature, smallPlan, step } from '../../../support/builders'
import { hover, play, tap } from './events'

const rows = smallPlan({ features: [rowFeature('row-1', { name: 'Gala' }, [0, 0], [10, 0])] })
const boundary = smallPlan({
  features: [
    { ...blockFeature('b', {}, rectangle([0, 0], [20, 20])), properties: { kind: 'boundary', name: 'Farm' } } as never,
  ],
})

describe('what a new point falls onto', () => {
  it('names the end, the row and the direction, and shows the line it follows', () => {
    // One step is 20 pixels; 10 pixels are near.
    const end = play(drawLine('row'), [hover([10.3, 0.2])], { plan: rows })
    expect(end.ghost?.cue?.words).toBe('end of Gala')
    expect(end.ghost?.pointer).toEqual(step([10, 0]))
    const on = play(drawLine('row'), [hover([4, 0.25])], { plan: rows })
    expect(on.ghost?.cue?.words).toBe('on Gala')
    // 8 pixels off: half a lane beside the row on purpose, where a finger could not tell.
    expect(play(drawLine('row'), [hover([4, 0.4])], { plan: rows }).ghost?.cue).toBeUndefined()
    const finger = play(drawLine('row'), [hover([4, 0.4], { pointer: 'touch' })], { plan: rows })
    expect(finger.ghost?.cue?.words).toBe('on Gala')
    expect(on.ghost?.pointer?.[1]).toBeCloseTo(52.2, 9)
    const along = play(drawLine('row'), [tap([0, -5]), hover([8, -4.7])], { plan: rows })
    expect(along.ghost?.cue?.words).toBe('parallel to Gala')
    // Parallel in the plane: the same way north at both ends, to a millimetre.
    expect(along.ghost?.pointer?.[1]).toBeCloseTo(52.1995, 7)
    const square = play(drawLine('row'), [tap([3, -1]), hover([3.3, -9])], { plan: rows })
    expect(square.ghost?.cue?.words).toBe('square to Gala')
  })

  it('finds the right angle to the side before', () => {
    const bare = smallPlan({ features: [mudFeature('mud-1', {}, [0, 0])] })
    // 6 and 3 steps are 41 m east and 33 m north; square to that lies 33 m west and 41 m north.
    const { ghost } = play(drawLine('row'), [tap([0, 0]), tap([6, 3]), hover([3.6, 4.85])], { plan: bare })
    expect(ghost?.cue?.words).toBe('right angle')
  })

  it('keeps a headland from the boundary, inside it', () => {
    const plain = play(drawLine('row'), [hover([10, 0.9])], { plan: boundary })
    expect(plain.ghost?.cue).toBeUndefined()
    // 0.9 steps are 10.0 m; a headland of 10 m lies there.
    const kept = play(drawLine('row'), [hover([10, 0.8])], { plan: boundary, headland: 10 })
    expect(kept.ghost?.cue?.words).toBe('headland of Farm')
    expect(((kept.ghost?.pointer?.[1] ?? 0) - 52.2) * 111_270).toBeCloseTo(10, 1)
  })

  it('does nothing with Alt, or switched off', () => {
    expect(play(drawLine('row'), [hover([10.3, 0.2], { alt: true })], { plan: rows }).ghost?.cue).toBeUndefined()
    expect(play(drawLine('row'), [hover([10.3, 0.2])], { plan: rows, isSnapping: false }).ghost?.cue).toBeUndefined()
  })
})

describe('typing length and bearing', () => {
  it('sets the next point exactly there', () => {
    const { plan } = play(drawLine('row'), [
      tap([20, -5], { alt: true }),
      { type: 'type', figures: { length: 92 } },
      { type: 'type', figures: { bearing: 0 } },
      { type: 'put' },
      { type: 'finish' },
    ])
    const [a, b] = plan.features.at(-1)!.geometry.coordinates as [number, number][]
    // A degree of latitude at 52.2 north is 111 270 m.
    expect((b![1] - a![1]) * 111_270).toBeCloseTo(92, 1)
    expect(b![0]).toBeCloseTo(a![0], 6)
  })

  it('keeps the typed length in the direction of the pointer, and forgets it with the next point', () => {
    const { ghost, status } = play(drawLine('row'), [
      tap([20, -5], { alt: true }),
      { type: 'type', figures: { length: 50 } },
      hover([20, 30], { alt: true }),
    ])
    expect(((ghost?.pointer?.[1] ?? 0) - step([20, -5])[1]) * 111_270).toBeCloseTo(50, 1)
    expect(status.figures?.length).toEqual({ typed: 50, live: 50 })
    expect(status.putWords).toBe('Set this point')
    const next = play(drawLine('row'), [tap([20, -5]), { type: 'type', figures: { length: 50 } }, { type: 'put' }])
    expect(next.status.figures?.length?.typed).toBeNull()
    expect(next.status.points).toBe(2)
  })
})
