import { type Map as LeafletMap, latLng, latLngBounds } from 'leaflet'
import type { PlannerState, PlannerStore } from '../state/store'
import { freeMargins } from './fit'
import type { Hand } from './hand'
import { suggestedPlaces } from './layers/suggested'

/** Whoever has moved the map so lately is still looking at something else, ms. */
const restAfterMoving = 2000

/**
 * The map takes in the places of a new answer that lie out of view, once for each answer. It keeps what is in view, and
 * it does not move while somebody draws, or has just moved it.
 */
export function showSuggestedOn(map: LeafletMap, store: PlannerStore, hand: Hand): () => void {
  let last = ''
  let movedAt = Number.NEGATIVE_INFINITY
  const onMove = (): void => {
    movedAt = performance.now()
  }
  map.on('drag zoomstart', onMove)
  const show = (): void => {
    const state = store.getState()
    const places = newPlaces(state)
    const key = JSON.stringify(places)
    if (places.length === 0 || key === last) return
    last = key
    const isBusy = hand.ghost() !== null || hand.status().isDrawing || performance.now() - movedAt < restAfterMoving
    const positions = places.map(([lng, lat]) => latLng(lat, lng))
    const { topLeft, bottomRight } = freeMargins(map)
    const corner = map.getSize().subtract(bottomRight)
    const bounds = latLngBounds([topLeft, corner].map(pixel => map.containerPointToLatLng(pixel)))
    if (isBusy || positions.every(at => bounds.contains(at))) return
    for (const at of positions) bounds.extend(at)
    map.fitBounds(bounds, { paddingTopLeft: topLeft, paddingBottomRight: bottomRight, animate: false })
    movedAt = Number.NEGATIVE_INFINITY
  }
  const stop = store.subscribe(newPlaces, show, { equalityFn: (a, b) => JSON.stringify(a) === JSON.stringify(b) })
  return () => {
    stop()
    map.off('drag zoomstart', onMove)
  }
}

/** Places of an answer that is complete, on its page; those that somebody has moved since are where they lie. */
function newPlaces(state: PlannerState) {
  return state.results.suggestion.status === 'ready' && Object.keys(state.boxes.moved).length === 0
    ? suggestedPlaces(state)
    : none
}

const none: ReturnType<typeof suggestedPlaces> = []
