import { Map as LeafletMap } from 'leaflet'
import type { LngLat } from '#geo/space/plane'
import { step } from '../../support/builders'

/** A real map of 800 by 600 pixels round the builders' plans; jsdom lays nothing out, so it is told its size. */
export function leafletMap(): LeafletMap {
  const container = document.createElement('div')
  Object.defineProperty(container, 'clientWidth', { value: 800 })
  Object.defineProperty(container, 'clientHeight', { value: 600 })
  document.body.append(container)
  const [lng, lat] = step([5, 2])
  return new LeafletMap(container, {
    center: [lat, lng],
    zoom: 18,
    zoomAnimation: false,
    fadeAnimation: false,
    keyboard: false,
  })
}

export function removeMap(map: LeafletMap): void {
  const container = map.getContainer()
  map.remove()
  container.remove()
}

export function pixelOn(map: LeafletMap, at: LngLat): { readonly x: number; readonly y: number } {
  const { x, y } = map.latLngToContainerPoint([at[1], at[0]])
  return { x, y }
}
