import type { Map as LeafletMap } from 'leaflet'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { planeAt } from '#geo/space/plane'
import { createHand, type Hand } from '../../../src/map/hand'
import { attachKeyboard } from '../../../src/map/keyboard'
import { openPlan, select, setTool } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { smallPlan, step } from '../../support/builders'
import { leafletMap, pixelOn, removeMap } from './leaflet-map'

let map: LeafletMap
let store: PlannerStore
let hand: Hand
let keyboard: ReturnType<typeof attachKeyboard>

beforeEach(() => {
  map = leafletMap()
  store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  hand = createHand(store, {
    toPixel: at => pixelOn(map, at),
    onStationDrag: () => undefined,
    onStationDragEnd: () => undefined,
  })
  keyboard = attachKeyboard(map, hand, store)
})

afterEach(() => {
  keyboard.dispose()
  hand.stop()
  removeMap(map)
})

/** Presses a key on the map; answers whether the browser and the page still get it. */
function key(name: string, more: KeyboardEventInit & { after?: number } = {}): boolean {
  const event = new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true, ...more })
  time += more.after ?? 100
  Object.defineProperty(event, 'timeStamp', { value: time })
  let isHeard = false
  const hear = () => {
    isHeard = true
  }
  document.addEventListener('keydown', hear)
  map.getContainer().dispatchEvent(event)
  document.removeEventListener('keydown', hear)
  expect(isHeard).toBe(!event.defaultPrevented)
  return isHeard
}
let time = 0

const plan = () => store.getState().document.plan!
const steps = () => store.getState().document.past.length
const plane = planeAt(step([5, 2]))

function way(from: readonly [number, number], to: unknown): { x: number; y: number } {
  const a = plane.toMetres(from)
  const b = plane.toMetres(to as [number, number])
  return { x: b.x - a.x, y: b.y - a.y }
}

describe('with a selection', () => {
  it('moves it by 1 m, with Shift by 10 m, with Alt by 0.1 m, one burst one step of undo', () => {
    select(store, ['station-1'])
    key('ArrowRight')
    key('ArrowRight')
    key('ArrowUp', { shiftKey: true })
    key('ArrowDown', { altKey: true })
    const moved = way(step([5, 1]), plan().features[2]?.geometry.coordinates)
    expect(moved.x).toBeCloseTo(2, 2)
    expect(moved.y).toBeCloseTo(9.9, 2)
    expect(steps()).toBe(1)
    key('ArrowLeft', { after: 5000 })
    expect(steps()).toBe(2)
  })

  it('copies it and selects the copy', () => {
    select(store, ['row-1'])
    expect(key('d', { ctrlKey: true })).toBe(false)
    const copy = plan().features.at(-1)!
    expect(copy.properties.name).toBe('Row 1 copy')
    expect(store.getState().view.selection).toEqual([copy.id])
    const moved = way(step([0, 0]), (copy.geometry.coordinates as unknown[])[0])
    expect(moved.x).toBeCloseTo(5, 1)
    expect(moved.y).toBeCloseTo(-5, 1)
  })

  it('removes it, takes that back and brings it on again', () => {
    select(store, ['row-1'])
    key('Delete')
    expect(plan().features).toHaveLength(4)
    key('z', { metaKey: true })
    expect(plan().features).toHaveLength(5)
    key('Z', { metaKey: true, shiftKey: true })
    expect(plan().features).toHaveLength(4)
  })

  it('lets it go by Escape', () => {
    select(store, ['row-1'])
    expect(key('Escape')).toBe(false)
    expect(store.getState().view.selection).toEqual([])
    expect(key('Escape')).toBe(true)
  })
})

it('moves the map where nothing is selected, and brings it closer and farther', () => {
  const { x, y } = pixelOn(map, step([5, 2]))
  key('ArrowLeft')
  key('ArrowUp', { shiftKey: true })
  const now = pixelOn(map, step([5, 2]))
  expect([now.x - x, now.y - y]).toEqual([90, 270])
  expect(keyboard.crosshair()).toBeNull()
  key('+')
  expect(map.getZoom()).toBe(19)
  key('-')
  expect(map.getZoom()).toBe(18)
})

it('shows the cross as soon as keys bring the focus with a drawing tool', () => {
  const mark = map.getContainer().querySelector<HTMLElement>('.map-cross')!
  map.getContainer().focus()
  expect(mark.hidden).toBe(true)
  map.getContainer().blur()
  setTool(store, 'row')
  // jsdom does not tell focus by keys from focus by a press.
  vi.spyOn(map.getContainer(), 'matches').mockReturnValue(true)
  map.getContainer().focus()
  expect(mark.hidden).toBe(false)
  key('Enter')
  expect(hand.status().points).toBe(1)
})

it('can be reached by Tab', () => {
  expect(map.getContainer().tabIndex).toBe(0)
  keyboard.dispose()
  expect(map.getContainer().hasAttribute('tabindex')).toBe(false)
})

describe('with a drawing tool', () => {
  it('draws a row with arrows and Enter alone', () => {
    setTool(store, 'row')
    key('Enter')
    const from = keyboard.crosshair()!
    const mark = map.getContainer().querySelector<HTMLElement>('.map-cross')!
    expect(mark.hidden).toBe(false)
    expect(mark.style.translate).toBe('380px 280px')
    expect(way(step([5, 2]), from).x).toBeCloseTo(0, 0)
    expect(hand.status().points).toBe(0)
    key(' ')
    for (let i = 0; i < 4; i += 1) key('ArrowRight', { shiftKey: true })
    key('Enter')
    expect(hand.status().points).toBe(2)
    key('Enter')
    const row = plan().features.at(-1)!
    expect(row.properties.kind).toBe('row')
    // 8 pixels are 2.9 m at this zoom, so a step is 2 m, and 20 m with Shift.
    const [a, b] = row.geometry.coordinates as [[number, number], [number, number]]
    expect(way(a, b).x).toBeCloseTo(80, 0)
    expect(way(a, b).y).toBeCloseTo(0, 1)
    expect(store.getState().view.tool).toBe('select')
    expect(keyboard.crosshair()).toBeNull()
    expect(mark.hidden).toBe(true)
  })

  it('keeps the crosshair in view', () => {
    setTool(store, 'plant')
    for (let i = 0; i < 20; i += 1) key('ArrowUp', { shiftKey: true })
    expect(pixelOn(map, keyboard.crosshair()!).y).toBeGreaterThanOrEqual(40)
    // The draw bar lies over the right edge.
    for (let i = 0; i < 20; i += 1) key('ArrowRight', { shiftKey: true })
    expect(pixelOn(map, keyboard.crosshair()!).x).toBeLessThanOrEqual(570)
  })

  it('takes off the last point before it undoes anything, and cancels', () => {
    select(store, ['row-1'])
    key('ArrowRight')
    setTool(store, 'row')
    key('Enter')
    key('Enter')
    expect(hand.status().points).toBe(1)
    key('z', { ctrlKey: true })
    expect(hand.status().points).toBe(0)
    expect(steps()).toBe(1)
    key('Enter')
    key('Backspace')
    expect(hand.status().points).toBe(0)
    key('Escape')
    expect(store.getState().view.tool).toBe('select')
  })

  it('gives up the crosshair for the mouse, but not for one that lies still', () => {
    setTool(store, 'row')
    const move = (clientX: number) =>
      map.getContainer().dispatchEvent(new PointerEvent('pointermove', { clientX, clientY: 10 }))
    move(10)
    key('ArrowUp')
    move(11)
    expect(keyboard.crosshair()).not.toBeNull()
    move(40)
    expect(keyboard.crosshair()).toBeNull()
  })
})

it('leaves the keys of a button over the map to the button', () => {
  setTool(store, 'row')
  const button = document.createElement('button')
  map.getContainer().append(button)
  const event = new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true })
  button.dispatchEvent(event)
  expect(event.defaultPrevented).toBe(false)
  expect(keyboard.crosshair()).toBeNull()
})
