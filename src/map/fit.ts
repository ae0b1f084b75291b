import { type Map as LeafletMap, latLngBounds } from 'leaflet'
import type { PackedShapes } from '#geo/file/packed-things'
import { isPlaced } from '#geo/plan/pictures'
import type { Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { homeOf } from '../text/home'
import { positionsOf } from './tools/positions'

/** Zoom at which a new plan's empty grid is shown: a garden or a corner of an orchard fills the screen. */
const startZoom = 18
/** A map wider than this has its tools at the right edge, a narrower one at its foot: the plan is fitted beside them, pixels. */
const narrowest = 700

/**
 * What “whole” means: all that is drawn, and the picture that is being placed, so that it can be found. Other pictures only
 * count where nothing is drawn yet: a photograph of the whole valley would make an orchard on it a dot.
 */
export function wholeOf(plan: Plan, placing: string | null): readonly LngLat[] {
  const drawn = plan.features.flatMap(feature => [...positionsOf(feature.geometry)])
  const pictures = (plan.pictures ?? []).filter(
    picture => picture.isHidden !== true && isPlaced(picture) && (drawn.length === 0 || picture.id === placing),
  )
  return [...drawn, ...pictures.flatMap(({ corners: [a, b, c] }) => [a, b, c, fourth(a, b, c)])]
}

function fourth(a: LngLat, b: LngLat, c: LngLat): LngLat {
  return [b[0] + c[0] - a[0], b[1] + c[1] - a[1]]
}

/** How far from the map's edges nothing lies over it, pixels. */
export function freeMargins(map: LeafletMap): {
  readonly topLeft: [number, number]
  readonly bottomRight: [number, number]
} {
  const isWide = map.getSize().x > narrowest
  return isWide ? { topLeft: [70, 30], bottomRight: [210, 30] } : { topLeft: [16, 16], bottomRight: [16, 36] }
}

/** Fits the whole plan, or the place it was started at where nothing is drawn yet. `placing` is a picture's id. */
export function showWhole(map: LeafletMap, plan: Plan | null, placing: string | null): void {
  if (plan === null) return
  const positions = wholeOf(plan, placing)
  if (positions.length === 0) {
    const [lng, lat] = homeOf(plan)
    map.setView([lat, lng], startZoom, { animate: false })
    return
  }
  const bounds = latLngBounds(positions.map(([lng, lat]) => [lat, lng]))
  const { topLeft, bottomRight } = freeMargins(map)
  map.fitBounds(bounds, {
    paddingTopLeft: [topLeft[0], topLeft[1] + (placing === null ? 0 : gripRoom)],
    paddingBottomRight: bottomRight,
    maxZoom: 20,
    animate: false,
  })
}

/** The mark that turns a picture stands before its upper side, pixels. */
const gripRoom = 56

/** Newcomers and plan would both be specks where they lie so many times farther apart than the newcomers reach. */
const farApart = 30

/** Fits what is coming together with the plan, or alone where the plan lies far from it. */
export function showComing(map: LeafletMap, { positions }: PackedShapes, plan: Plan | null): void {
  if (positions.length === 0) return
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i += 3) {
    west = Math.min(west, positions[i]!)
    east = Math.max(east, positions[i]!)
    south = Math.min(south, positions[i + 1]!)
    north = Math.max(north, positions[i + 1]!)
  }
  const bounds = latLngBounds([south, west], [north, east])
  const whole = latLngBounds(bounds.getSouthWest(), bounds.getNorthEast())
  for (const { geometry } of plan?.features ?? []) {
    for (const [lng, lat] of positionsOf(geometry)) whole.extend([lat, lng])
  }
  const least = 0.001
  const across = (each: typeof bounds) =>
    Math.max(each.getNorth() - each.getSouth(), each.getEast() - each.getWest(), least)
  const isFar = across(whole) > farApart * across(bounds)
  // Room above for the words, and at the sides for the buttons of the map.
  map.fitBounds(isFar ? bounds : whole, {
    paddingTopLeft: [48, 56],
    paddingBottomRight: [32, 40],
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
