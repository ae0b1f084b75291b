import { type Map as LeafletMap, latLngBounds } from 'leaflet'
import type { Plan } from '#geo/plan/plan'
import { homeOf } from '../text/home'
import { positionsOf } from './tools/positions'

/** Zoom at which a new plan's empty grid is shown: a garden or a corner of an orchard fills the screen. */
const startZoom = 18
/** A map wider than this has its tools at the right edge, a narrower one at its foot: the plan is fitted beside them, pixels. */
const narrowest = 700

/** Fits the whole plan, or the place it was started at where nothing is drawn yet. */
export function showWhole(map: LeafletMap, plan: Plan | null): void {
  if (plan === null) return
  const positions = plan.features.flatMap(feature => [...positionsOf(feature.geometry)])
  if (positions.length === 0) {
    const [lng, lat] = homeOf(plan)
    map.setView([lat, lng], startZoom, { animate: false })
    return
  }
  const bounds = latLngBounds(positions.map(([lng, lat]) => [lat, lng]))
  const isWide = map.getSize().x > narrowest
  map.fitBounds(bounds, {
    paddingTopLeft: isWide ? [70, 30] : [16, 16],
    paddingBottomRight: isWide ? [210, 30] : [16, 36],
    maxZoom: 20,
    animate: false,
  })
}

/**
 * Panels fold and phones turn: the map follows the size of its host. A plan shown whole, and neither moved nor
 * changed since, is shown whole again: `again` is asked before the map knows its new size.
 */
export function watchSize(
  host: HTMLElement,
  map: LeafletMap,
  again: () => (() => void) | null = () => null,
): () => void {
  if (typeof ResizeObserver === 'undefined') return () => {}
  const observer = new ResizeObserver(() => {
    const showAgain = again()
    map.invalidateSize({ pan: false })
    showAgain?.()
  })
  observer.observe(host)
  return () => observer.disconnect()
}
