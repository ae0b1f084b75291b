import { beforeEach, describe, expect, it } from 'vitest'
import { addPicture, setPicture } from '#geo/plan/edits-pictures'
import { cornersOf, placingOf } from '#geo/plan/pictures'
import type { Picture } from '#geo/plan/plan'
import { planeAt } from '#geo/space/plane'
import { distance } from '#geo/space/shape'
import { createHand, type Hand } from '../../../src/map/hand'
import { edit, openPlan, select, setView, undo } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { smallPlan, step } from '../../support/builders'
import { drag, press, release, tap, toPixel } from './tools/events'

const home = planeAt(step([0, 0]))
/** 10 by 10 steps, some 68 by 111 m, its upper left corner 20 steps east and 10 north. */
const corners = [step([20, 10]), step([30, 10]), step([20, 0])] as unknown as Picture['corners']
const picture: Picture = { id: 'p', name: 'Sketch', width: 1000, height: 1000, corners }

let store: PlannerStore
let hand: Hand

beforeEach(() => {
  store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  edit(store, addPicture(picture))
  hand = createHand(store, { toPixel, onStationDrag: () => undefined, onStationDragEnd: () => undefined })
  setView(store, { picture: 'p' })
})

const now = () => store.getState().document.plan!.pictures![0]!
const metres = () => now().corners.map(at => home.toMetres(at))
const lastStep = () => store.getState().document.past.at(-1)?.label
const far = (a: Picture['corners'][0], b: readonly [number, number, ...number[]]) =>
  distance(home.toMetres(a), home.toMetres(b))

describe('the picture that is being placed', () => {
  it('is moved by a pull inside it, shown on its way, and put back by one undo', () => {
    expect(hand.handle(press([25, 5]))).toEqual({ isCaptured: true })
    hand.handle(drag([26, 6]))
    expect(far(hand.ghost()!.picture!.corners[0], step([21, 11]))).toBeLessThan(0.01)
    expect(now().corners).toEqual(corners)
    hand.handle(release([27, 7]))
    expect(far(now().corners[0], step([22, 12]))).toBeLessThan(0.01)
    expect(lastStep()).toBe('Move picture Sketch')
    undo(store)
    expect(now().corners).toEqual(corners)
  })

  it('is resized at a corner, the corner across stays', () => {
    hand.handle(press([30, 10]))
    hand.handle(drag([40, 20]))
    expect(hand.ghost()!.says).toMatch(/^137 m wide$/)
    hand.handle(release([40, 20]))
    // The lower left corner stays; both sides have doubled.
    expect(far(now().corners[2], step([20, 0]))).toBeLessThan(0.001)
    expect(far(now().corners[1], step([40, 20]))).toBeLessThan(0.1)
    expect(lastStep()).toBe('Resize picture Sketch')
  })

  it('is turned at its grip about its middle', () => {
    // The grip stands 44 pixels, 2.2 steps, beyond the middle of the upper side.
    hand.handle(press([25, 12.2]))
    hand.handle(drag([35, 5]))
    hand.handle(release([35, 5]))
    const [topLeft, topRight] = metres()
    // What was up points east now.
    expect(topRight!.x - topLeft!.x).toBeCloseTo(0, 0)
    expect(topRight!.y - topLeft!.y).toBeLessThan(-60)
    expect(lastStep()).toBe('Turn picture Sketch')
  })

  it('goes nowhere while it is locked, hidden, or not the one being placed', () => {
    for (const patch of [{ isLocked: true }, { isHidden: true }] as const) {
      edit(store, setPicture('p', patch))
      expect(hand.handle(press([25, 5]))).toEqual({ isCaptured: false })
      hand.handle(drag([26, 6]))
      hand.handle(release([27, 7]))
      hand.handle({ type: 'nudge', by: { x: 1, y: 0 }, key: 'k' })
      expect(now().corners).toEqual(corners)
      expect(hand.status().picture).toBeNull()
      undo(store)
    }
    setView(store, { picture: null })
    expect(hand.handle(press([25, 5]))).toEqual({ isCaptured: false })
  })

  it('stays where a second finger ends the pull', () => {
    hand.handle(press([25, 5]))
    hand.handle(drag([26, 6]))
    hand.handle({ type: 'lost' })
    hand.handle(release([27, 7]))
    expect(now().corners).toEqual(corners)
  })

  it('leaves the keys to what is selected, and what lies on it can be selected', () => {
    hand.handle(press([5, 1]))
    hand.handle(tap([5, 1]))
    expect(store.getState().view.selection).toEqual(['station-1'])
    hand.handle({ type: 'nudge', by: { x: 1, y: 0 }, key: 'k' })
    expect(now().corners).toEqual(corners)
    select(store, [])
    hand.handle({ type: 'nudge', by: { x: 1, y: 0 }, key: 'k2' })
    expect(now().corners).not.toEqual(corners)
  })

  it('is moved, turned and resized by keys: Enter goes from one to the next, Escape lets it go', () => {
    const right = (by: number) => hand.handle({ type: 'nudge', by: { x: by, y: 0 }, key: 'k' })
    const before = metres()
    right(10)
    right(0.1)
    expect(metres()[0]!.x - before[0]!.x).toBeCloseTo(10.1, 3)
    expect(store.getState().document.past).toHaveLength(2)
    hand.handle({ type: 'finish' })
    expect(hand.status().picture).toBe('turn')
    right(10)
    const placing = placingOf(now(), home)!
    expect((Math.atan2(placing.right.y, placing.right.x) * 180) / Math.PI).toBeCloseTo(-10, 1)
    hand.handle({ type: 'finish' })
    const wide = distance(metres()[0]!, metres()[1]!)
    right(1)
    expect(distance(metres()[0]!, metres()[1]!)).toBeCloseTo(1.01 * wide, 3)
    expect(
      store
        .getState()
        .document.past.map(({ label }) => label)
        .slice(1),
    ).toEqual(['Move picture Sketch', 'Turn picture Sketch', 'Resize picture Sketch'])
    hand.handle({ type: 'cancel' })
    expect(hand.status().picture).toBe('move')
    hand.handle({ type: 'cancel' })
    expect(store.getState().view.picture).toBeNull()
  })

  it('keeps its shape whatever is done', () => {
    const shape = (of: Picture) => {
      const { right, down } = placingOf(of, home)!
      return [Math.hypot(right.x, right.y) / Math.hypot(down.x, down.y), right.x * down.x + right.y * down.y]
    }
    const [ratio] = shape(picture)
    for (const [from, to] of [
      [
        [30, 10],
        [33, 17],
      ],
      [
        [25, 5],
        [20, 2],
      ],
    ] as const) {
      hand.handle(press(from))
      hand.handle(drag(to))
      hand.handle(release(to))
    }
    expect(shape(now())[0]).toBeCloseTo(ratio!, 5)
    expect(cornersOf(placingOf(now(), home)!, now(), home)[0][0]).toBeCloseTo(now().corners[0][0], 9)
  })
})
