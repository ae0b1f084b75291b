import type { Map as LeafletMap } from 'leaflet'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { LngLat } from '#geo/space/plane'
import type { Hand } from '../../../src/map/hand'
import { showSuggestedOn } from '../../../src/map/show-suggested'
import { openPlan, setPage } from '../../../src/state/actions'
import type { Suggested } from '../../../src/state/boxes'
import { createPlannerStore } from '../../../src/state/store'
import { smallPlan, step } from '../../support/builders'
import { leafletMap, pixelOn, removeMap } from './leaflet-map'

const far = step([300, 100])

function setUp({ isDrawing = false } = {}) {
  const plan = smallPlan()
  const store = createPlannerStore(2026)
  openPlan(store, plan, 'plan-1', 2026)
  setPage(store, 'boxes')
  const hand = { ghost: () => null, status: () => ({ isDrawing }) } as unknown as Hand
  const stop = showSuggestedOn(map, store, hand)
  const answer = (places: readonly LngLat[]) => {
    const stations = places.map((at, i) => ({ id: `s${i}`, at, new: true }))
    const value = { plan, year: 2026, suggestion: { stations, dropped: [] } } as unknown as Suggested
    store.setState(({ results }) => ({ results: { ...results, suggestion: { status: 'ready', value, revision: 1 } } }))
  }
  return { answer, stop }
}

let map: LeafletMap

beforeEach(() => {
  map = leafletMap()
})

afterEach(() => removeMap(map))

describe('the map at a new answer', () => {
  it('takes in places out of view, keeps what was in view, and does so once', () => {
    const { answer } = setUp()
    const middle = map.getCenter()
    answer([far])
    const { x, y } = pixelOn(map, far)
    // Not under the tools at the right edge, which are 200 pixels wide.
    expect(x).toBeLessThanOrEqual(600)
    expect(x).toBeGreaterThan(0)
    expect(y).toBeGreaterThan(0)
    expect(y).toBeLessThan(600)
    expect(map.getBounds().contains(middle)).toBe(true)
    map.setView([52.2, -1.7], 20)
    answer([far])
    expect(map.getZoom()).toBe(20)
  })

  it('stays where all places are in view, and while somebody draws or has just moved it', () => {
    const calm = setUp()
    const zoom = map.getZoom()
    calm.answer([step([5, 2])])
    expect(map.getZoom()).toBe(zoom)
    map.fire('drag')
    calm.answer([far])
    expect(map.getZoom()).toBe(zoom)
    calm.stop()
    setUp({ isDrawing: true }).answer([far])
    expect(map.getZoom()).toBe(zoom)
  })
})
