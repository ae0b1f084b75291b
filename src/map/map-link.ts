import type { Map as LeafletMap } from 'leaflet'
import type { LngLat } from '#geo/space/plane'
import type { PlannerStore } from '../state/store'
import { originOfGrid } from './ground/origin'
import { createHand, type Hand } from './hand'

export type StationDrag = {
  /** A station is held at `at`: results follow while it moves. */
  onStationDrag(id: string, at: LngLat): void
  onStationDragEnd(): void
}

/** The hand and the map it works on: the tools stand at the map's edge and are made before the map is. */
export type MapLink = {
  readonly hand: Hand
  map: LeafletMap | null
  /** Where grid and pointer count metres from. */
  readonly origin: () => LngLat
}

export function createMapLink(store: PlannerStore, drag: StationDrag): MapLink {
  const origin = originOfGrid(store)
  const link: { hand: Hand | null; map: LeafletMap | null; origin: () => LngLat } = { hand: null, map: null, origin }
  link.hand = createHand(store, {
    ...drag,
    origin,
    // Without a map nothing can be pointed at: everything lies in one place.
    toPixel: ([lng, lat]) => link.map?.latLngToContainerPoint([lat, lng]) ?? { x: 0, y: 0 },
  })
  return link as MapLink
}
