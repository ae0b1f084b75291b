import type { Map as LeafletMap } from 'leaflet'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createHand, type Hand } from '../../../src/map/hand'
import { attachPointer } from '../../../src/map/pointer'
import { openPlan, setTool } from '../../../src/state/actions'
import { createPlannerStore, type PlannerStore } from '../../../src/state/store'
import { smallPlan, step } from '../../support/builders'
import { leafletMap, pixelOn, removeMap } from './leaflet-map'

let map: LeafletMap
let store: PlannerStore
let hand: Hand
let told: string[]
let detach: () => void

beforeEach(() => {
  map = leafletMap()
  store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  told = []
  const real = createHand(store, {
    toPixel: at => pixelOn(map, at),
    onStationDrag: () => undefined,
    onStationDragEnd: () => undefined,
  })
  hand = {
    ...real,
    handle: event => {
      told.push(event.type === 'tap' ? `tap ${event.count}` : event.type)
      return real.handle(event)
    },
  }
  detach = attachPointer(map, hand)
})

afterEach(() => {
  detach()
  removeMap(map)
})

type Manner = {
  pointerType?: string
  pointerId?: number
  shiftKey?: boolean
  dx?: number
  target?: Element
  button?: number
}

function send(type: string, steps: readonly [number, number], manner: Manner = {}): void {
  const { dx = 0, target = map.getContainer(), pointerType = 'mouse', pointerId = 1, button = 0, ...rest } = manner
  const { x, y } = pixelOn(map, step(steps))
  const event = new PointerEvent(type, {
    bubbles: true,
    clientX: Math.round(x) + dx,
    clientY: Math.round(y),
    pointerType,
    pointerId,
    button,
    ...rest,
  })
  target.dispatchEvent(event)
}

const points = () => hand.status().points

describe.each(['mouse', 'touch', 'pen'])('the pointer: %s', pointerType => {
  const as = { pointerType }

  it('sets points by taps, and none by moving the map', () => {
    setTool(store, 'row')
    send('pointerdown', [20, 4], as)
    send('pointerup', [20, 4], { ...as, dx: 6 })
    expect(points()).toBe(1)
    send('pointerdown', [23, 4], as)
    expect(map.dragging.enabled()).toBe(true)
    send('pointermove', [23, 4], { ...as, dx: 9 })
    send('pointermove', [23, 4], as)
    send('pointerup', [23, 4], as)
    expect(points()).toBe(1)
  })

  it('pulls a station while the map stays', () => {
    send('pointerdown', [5, 1], as)
    expect(map.dragging.enabled()).toBe(false)
    send('pointermove', [6, 2], as)
    send('pointerup', [6, 2], as)
    expect(map.dragging.enabled()).toBe(true)
    expect(told).toEqual(['press', 'drag', 'release'])
    const [lng, lat] = store.getState().document.plan!.features[2]!.geometry.coordinates as [number, number]
    // A pixel is 0.4 m at this zoom.
    expect(lng).toBeCloseTo(step([6, 2])[0], 5)
    expect(lat).toBeCloseTo(step([6, 2])[1], 5)
  })

  it('selects by a tap on what it could have pulled', () => {
    send('pointerdown', [5, 1], as)
    send('pointerup', [5, 1], { ...as, dx: 2 })
    expect(told).toEqual(['press', 'tap 1'])
    expect(store.getState().view.selection).toEqual(['station-1'])
    expect(store.getState().document.past).toEqual([])
  })

  it('lets go when the browser takes the pointer away', () => {
    send('pointerdown', [5, 1], as)
    send('pointermove', [6, 2], as)
    send('pointercancel', [6, 2], as)
    expect(told.at(-1)).toBe('lost')
    expect(map.dragging.enabled()).toBe(true)
    expect(store.getState().document.past).toEqual([])
  })
})

describe('several fingers and clicks', () => {
  it('leaves two fingers to the map, and sets no point when they lift', () => {
    setTool(store, 'row')
    const [one, two] = [1, 2].map(pointerId => ({ pointerType: 'touch', pointerId }))
    send('pointerdown', [20, 4], one)
    send('pointerdown', [24, 4], two)
    send('pointermove', [18, 4], one)
    send('pointerup', [18, 4], one)
    send('pointerup', [24, 4], two)
    expect(points()).toBe(0)
    send('pointerdown', [20, 4], one)
    send('pointerup', [20, 4], one)
    expect(points()).toBe(1)
  })

  it('lets go of a station under a second finger', () => {
    send('pointerdown', [5, 1], { pointerType: 'touch', pointerId: 1 })
    send('pointermove', [6, 2], { pointerType: 'touch', pointerId: 1 })
    send('pointerdown', [9, 4], { pointerType: 'touch', pointerId: 2 })
    expect(told.at(-1)).toBe('lost')
    expect(map.dragging.enabled()).toBe(true)
    send('pointerup', [6, 2], { pointerType: 'touch', pointerId: 1 })
    expect(store.getState().document.past).toEqual([])
  })

  it('zooms by a double tap on the map, but not by the one that ends a row', () => {
    const click = (at: readonly [number, number]) => {
      send('pointerdown', at)
      send('pointerup', at)
    }
    setTool(store, 'row')
    click([12, 4])
    click([16, 4])
    click([16, 4])
    expect(store.getState().document.plan?.features).toHaveLength(6)
    click([16, 4])
    expect(map.getZoom()).toBe(18)
    click([2, 5])
    click([2, 5])
    expect(map.getZoom()).toBe(19)
  })

  it('does not hear the right button, nor what is pressed on buttons over the map', () => {
    send('pointerdown', [5, 1], { button: 2 })
    const button = document.createElement('button')
    map.getContainer().append(button)
    send('pointerdown', [5, 1], { target: button })
    send('pointerup', [5, 1], { target: button })
    expect(told).toEqual([])
  })

  it('hears a mouse that moves, but not one the map moved under', () => {
    setTool(store, 'row')
    send('pointermove', [20, 4])
    send('pointermove', [20, 4])
    send('pointermove', [21, 4])
    send('pointermove', [22, 4], { pointerType: 'touch' })
    expect(told).toEqual(['hover', 'hover'])
  })

  it('gives the map the focus, so that keys are for what was pressed', () => {
    map.getContainer().tabIndex = 0
    send('pointerdown', [5, 1])
    expect(document.activeElement).toBe(map.getContainer())
  })

  it('is heard no more once detached', () => {
    detach()
    send('pointerdown', [5, 1])
    send('pointermove', [6, 1])
    expect(told).toEqual([])
  })
})
