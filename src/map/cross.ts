import type { Map as LeafletMap } from 'leaflet'
import type { LngLat } from '#geo/space/plane'

const drawing =
  '<svg viewBox="0 0 40 40" width="40" height="40" fill="none" aria-hidden="true">' +
  '<path d="M20 2v13M20 25v13M2 20h13M25 20h13" stroke="var(--paper)" stroke-width="5"/>' +
  '<path d="M20 2v13M20 25v13M2 20h13M25 20h13" stroke="var(--accent)" stroke-width="2"/></svg>'

/** The cross that arrow keys move over the map: shown where `place` puts it, and there also while the map moves. */
export function crossOn(map: LeafletMap): { place(at: LngLat | null): void; remove(): void } {
  const mark = document.createElement('div')
  mark.className = 'map-cross'
  mark.innerHTML = drawing
  mark.hidden = true
  map.getContainer().append(mark)
  let at: LngLat | null = null
  const follow = (): void => {
    mark.hidden = at === null
    if (at === null) return
    const { x, y } = map.latLngToContainerPoint([at[1], at[0]])
    mark.style.translate = `${x - 20}px ${y - 20}px`
  }
  map.on('move zoom resize', follow)
  return {
    place(next) {
      at = next
      follow()
    },
    remove() {
      map.off('move zoom resize', follow)
      mark.remove()
    },
  }
}
