import { beforeEach, describe, expect, it, vi } from 'vitest'
import { removeFeatures } from '#geo/plan/edits-features'
import { seasonOf } from '#geo/plan/plan'
import { createHand, type Hand } from '../../../src/map/hand'
import { edit, openPlan, select, setTool, undo } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { smallPlan, step } from '../../support/builders'
import { drag, hover, press, release, tap, toPixel } from './tools/events'

let store: PlannerStore
let hand: Hand
const onStationDrag = vi.fn()
const onStationDragEnd = vi.fn()

beforeEach(() => {
  vi.resetAllMocks()
  store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  hand = createHand(store, { toPixel, onStationDrag, onStationDragEnd })
})

const plan = () => store.getState().document.plan!
const steps = () => store.getState().document.past.length
const view = () => store.getState().view

describe('drawing', () => {
  it('draws a row from choosing the tool to one step of undo', () => {
    const told = vi.fn()
    hand.subscribe(told)
    setTool(store, 'row')
    expect(hand.status()).toMatchObject({ isDrawing: true, points: 0 })
    expect(told).toHaveBeenCalledTimes(1)
    hand.handle(tap([20, 4]))
    hand.handle(hover([22, 4]))
    expect(hand.ghost()?.shapes).toHaveLength(1)
    hand.handle(tap([26, 4]))
    expect(hand.status()).toMatchObject({ points: 2, canFinish: true })
    expect(steps()).toBe(0)
    hand.handle({ type: 'finish' })
    const row = plan().features.at(-1)!
    expect(row.geometry.coordinates).toEqual([step([20, 4]), step([26, 4])])
    expect(row.id).toMatch(/^row-[0-9a-z]{6}$/)
    expect(view()).toMatchObject({ tool: 'select', selection: [row.id] })
    expect(hand.status()).toMatchObject({ isDrawing: false, points: 0 })
    undo(store)
    expect(plan().features).toHaveLength(5)
    expect(view().selection).toEqual([])
  })

  it('keeps the tool in hand with Shift, or where it is to be kept', () => {
    setTool(store, 'plant')
    hand.handle(tap([20, 4], { shift: true }))
    expect(view().tool).toBe('plant')
    hand.keep(true)
    hand.handle(tap([22, 4]))
    hand.handle(tap([24, 4]))
    expect(view().tool).toBe('plant')
    expect(
      plan()
        .features.slice(5)
        .map(({ properties }) => properties.name),
    ).toEqual(['Plant 1', 'Plant 2', 'Plant 3'])
    hand.handle({ type: 'cancel' })
    expect(view().tool).toBe('select')
    setTool(store, 'plant')
    hand.handle(tap([26, 4]))
    expect(view().tool).toBe('select')
  })

  it('forgets what was begun when another tool is taken or another plan opened', () => {
    setTool(store, 'row')
    hand.handle(tap([20, 4]))
    setTool(store, 'block')
    expect(hand.status().points).toBe(0)
    hand.handle(tap([20, 4]))
    openPlan(store, smallPlan(), 'plan-2', 2026)
    setTool(store, 'block')
    expect(hand.status().points).toBe(0)
  })

  it('keeps what was begun while something else of the plan changes', () => {
    setTool(store, 'row')
    hand.handle(tap([20, 4]))
    edit(store, removeFeatures(['row-2']))
    expect(hand.status().points).toBe(1)
  })

  it('says why an outline is refused', () => {
    setTool(store, 'block')
    for (const at of [
      [20, 0],
      [26, 6],
      [26, 0],
      [20, 6],
    ] as const)
      hand.handle(tap(at))
    hand.handle({ type: 'finish' })
    expect(view().notice).toContain('crosses itself')
    expect(view().tool).toBe('block')
    expect(steps()).toBe(0)
  })

  it('puts a station in a plan without a season and without anything on it', () => {
    openPlan(store, smallPlan({ seasons: [], features: [] }), 'plan-3', 2026)
    setTool(store, 'station')
    hand.handle(tap([20, 4]))
    const [station] = plan().features
    expect(seasonOf(plan(), 2026)?.stations?.[station!.id]).toEqual({ tubes: 100 })
    expect(plan().features[0]?.geometry.coordinates).toEqual(step([20, 4]))
  })
})

describe('moving a station', () => {
  it('tells of every step, then edits once, then tells of the end', () => {
    expect(hand.handle(press([5, 1])).isCaptured).toBe(true)
    hand.handle(drag([5.5, 1]))
    hand.handle(drag([6, 1]))
    expect(onStationDrag).toHaveBeenCalledTimes(2)
    expect(onStationDrag.mock.lastCall?.[0]).toBe('station-1')
    expect(steps()).toBe(0)
    onStationDragEnd.mockImplementation(() => expect(steps()).toBe(1))
    hand.handle(release([6, 1.5]))
    expect(onStationDragEnd).toHaveBeenCalledTimes(1)
    expect(plan().features[2]?.geometry.coordinates).toEqual(step([6, 1.5]))
    expect(view().selection).toEqual(['station-1'])
    undo(store)
    expect(plan().features[2]?.geometry.coordinates).toEqual(step([5, 1]))
  })

  it.each(['cancel', 'lost'] as const)('ends without an edit by %s', type => {
    hand.handle(press([5, 1]))
    hand.handle(drag([6, 1]))
    hand.handle({ type })
    expect(onStationDragEnd).toHaveBeenCalledTimes(1)
    expect(steps()).toBe(0)
    expect(hand.ghost()).toBeNull()
  })

  it('ends when the station is taken off the plan, the tool changes, or the hand stops', () => {
    for (const end of [
      () => edit(store, removeFeatures(['station-1'])),
      () => setTool(store, 'row'),
      () => hand.stop(),
    ]) {
      openPlan(store, smallPlan(), 'plan-1', 2026)
      onStationDragEnd.mockClear()
      hand.handle(press([5, 1]))
      hand.handle(drag([6, 1]))
      end()
      expect(onStationDragEnd).toHaveBeenCalledTimes(1)
      expect(hand.ghost()?.hidden ?? []).toEqual([])
    }
  })

  it('hears nothing of a row that is moved', () => {
    hand.handle(press([1, 0]))
    hand.handle(drag([1, -2]))
    hand.handle(release([1, -2]))
    expect(onStationDrag).not.toHaveBeenCalled()
    expect(onStationDragEnd).not.toHaveBeenCalled()
    expect(steps()).toBe(1)
  })
})

describe('its status', () => {
  it('is the same object until it changes', () => {
    const before = hand.status()
    hand.handle(hover([3, 3]))
    expect(hand.status()).toBe(before)
    select(store, ['row-1'])
    hand.handle(tap([10, 0]))
    expect(hand.status().hasVertex).toBe(true)
    select(store, [])
    expect(hand.status().hasVertex).toBe(false)
  })

  it('joins nudges of one burst into one step of undo', () => {
    select(store, ['row-1'])
    for (const key of ['a', 'a', 'b']) hand.handle({ type: 'nudge', by: { x: 1, y: 0 }, key })
    expect(steps()).toBe(2)
  })

  it('does nothing without a plan', () => {
    const bare = createHand(createPlannerStore(2026), { toPixel, onStationDrag, onStationDragEnd })
    expect(bare.handle(press([5, 1]))).toEqual({ isCaptured: false })
    expect(bare.ghost()).toBeNull()
    expect(bare.status()).toMatchObject({ isDrawing: false, points: 0 })
  })
})

describe('what grows next', () => {
  it('is what was chosen, for rows, single plants and beds apart; another crop forgets the cultivar', () => {
    setTool(store, 'rows')
    expect(hand.status().grows).toEqual({ crop: 'apple', cultivar: 'Late' })
    hand.grow({ cultivar: 'Early' })
    setTool(store, 'row')
    expect(hand.status().grows).toEqual({ crop: 'apple', cultivar: 'Early' })
    hand.grow({ crop: 'pear' })
    expect(hand.status().grows).toEqual({ crop: 'pear', cultivar: '' })
    setTool(store, 'bed')
    expect(hand.status().grows?.crop).toBe('strawberry')
    setTool(store, 'plant')
    hand.handle(tap([20, 4]))
    expect(plan().features.at(-1)?.properties).toMatchObject({ kind: 'plant', crop: 'apple' })
    openPlan(store, smallPlan(), 'plan-2', 2026)
    setTool(store, 'row')
    expect(hand.status().grows?.crop).toBe('apple')
    setTool(store, 'windbreak')
    expect(hand.status().grows).toBeUndefined()
  })

  it('is in a block what the rows are, whatever the single plant before it was', () => {
    setTool(store, 'plant')
    hand.grow({ crop: 'pear', cultivar: 'Early' })
    hand.handle(tap([20, 4]))
    expect(plan().features.at(-1)?.properties).toMatchObject({ crop: 'pear', cultivar: 'Early' })
    setTool(store, 'block')
    expect(hand.status().grows).toEqual({ crop: 'apple', cultivar: 'Late' })
  })

  it('keeps no headland from the plan before', () => {
    hand.snap({ headland: 6 })
    openPlan(store, smallPlan(), 'plan-2', 2026)
    expect(hand.status().headland).toBeNull()
  })
})
