import { beforeEach, describe, expect, it } from 'vitest'
import { suggest } from '#geo/siting/suggest'
import type { LngLat } from '#geo/space/plane'
import { chosenPlace, createPlaceHand } from '../../../src/map/place-hand'
import type { ToolEvent } from '../../../src/map/tools/tool'
import { openPlan, select, setPage } from '../../../src/state/actions'
import { choosePlace, takePlace } from '../../../src/state/boxes-actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { smallPlan } from '../../support/builders'

const plan = smallPlan()
const question = { kind: 'stations', count: 2 } as const
const toPixel = ([lng, lat]: LngLat) => ({ x: (lng + 1.7) * 1e5, y: (52.2 - lat) * 1e5 })

let store: PlannerStore
let at: LngLat

beforeEach(async () => {
  store = createPlannerStore(2026)
  openPlan(store, plan, 'plan-1')
  setPage(store, 'boxes')
  const outcome = await suggest(plan, 2026, { question })
  if (!outcome.ok) throw new RangeError('the small plan has places')
  const value = { plan, year: 2026, wish: { question }, suggestion: outcome.value }
  store.setState(({ results }) => ({ results: { ...results, suggestion: { status: 'ready', value, revision: 1 } } }))
  at = outcome.value.stations[0]!.at
})

const shifted = ([lng, lat]: LngLat, x: number): LngLat => [lng + x, lat]

function pointed(type: 'press' | 'drag' | 'release', where: LngLat): ToolEvent {
  return { type, at: where, pixel: toPixel(where), keys: { shift: false, alt: false }, pointer: 'mouse' }
}

const tap = (where: LngLat): ToolEvent =>
  ({ ...(pointed('press', where) as object), type: 'tap', count: 1 }) as ToolEvent
const moved = () => store.getState().boxes.moved['station-3']

describe('a suggested station on the map', () => {
  it('is pulled to another place without a step of undo', () => {
    const hand = createPlaceHand(store, toPixel)
    expect(hand.handle(pointed('press', at))).toEqual({ isCaptured: true })
    hand.handle(pointed('drag', shifted(at, 2e-5)))
    hand.handle(pointed('release', shifted(at, 4e-5)))
    expect(moved()![0]).toBeCloseTo(at[0] + 4e-5, 9)
    expect(store.getState().boxes.chosen).toBe('station-3')
    expect(store.getState().document.past).toEqual([])
  })

  it('goes back where a second finger ends the pull', () => {
    const hand = createPlaceHand(store, toPixel)
    hand.handle(pointed('press', at))
    hand.handle(pointed('drag', shifted(at, 2e-5)))
    hand.handle({ type: 'lost' })
    expect(moved()).toBeUndefined()
  })

  it('is chosen by a tap, let go by one elsewhere or by Escape, and moved by arrows while it is chosen', () => {
    const hand = createPlaceHand(store, toPixel)
    hand.handle(tap(at))
    expect(chosenPlace(store)).toBe('station-3')
    expect(hand.handle({ type: 'nudge', by: { x: 0, y: 10 }, key: 'a' })).not.toBeNull()
    expect(moved()![1]).toBeGreaterThan(at[1])
    hand.handle({ type: 'cancel' })
    expect(chosenPlace(store)).toBeNull()
    expect(hand.handle({ type: 'nudge', by: { x: 0, y: 10 }, key: 'b' })).toBeNull()
    hand.handle(tap(at))
    expect(hand.handle(tap([-1.6, 52.3]))).toBeNull()
    expect(chosenPlace(store)).toBeNull()
  })

  it('leaves the plan’s own things to their tools', () => {
    const hand = createPlaceHand(store, toPixel)
    expect(hand.handle(pointed('press', [-1.6, 52.3]))).toBeNull()
    choosePlace(store, 'station-3')
    select(store, ['row-1'])
    expect(hand.handle({ type: 'nudge', by: { x: 1, y: 0 }, key: 'a' })).toBeNull()
    takePlace(store, 'station-3', false)
    expect(hand.handle(pointed('press', at))).toBeNull()
    setPage(store, 'ground')
    takePlace(store, 'station-3', true)
    expect(hand.handle(pointed('press', at))).toBeNull()
  })
})
