import { type Map as LeafletMap, type TileLayer, tileLayer } from 'leaflet'
import type { Ground } from '../../state/store'

/** OpenStreetMap's own tile servers: asked only for what is looked at, never ahead, and with the credit they ask for. */
const openStreetMap = {
  url: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
  attribution: '© <a href="https://www.openstreetmap.org/copyright">OpenStreetMap</a> contributors',
}

/** Deepest zoom that tile servers usually draw; beyond it their tiles are enlarged. */
const deepestTiles = 19

export type Tiles = { show(ground: Ground): void; stop(): void }

/** Tiles under the plan, where the grower asks for them. `onAbsent` hears whether tiles fail to come. */
export function tilesOn(map: LeafletMap, onAbsent: (isAbsent: boolean) => void): Tiles {
  let layer: TileLayer | null = null
  const stop = (): void => {
    layer?.remove()
    layer = null
  }
  return {
    show(ground) {
      stop()
      onAbsent(false)
      if (ground.kind === 'grid') return
      const isOwn = ground.kind === 'own'
      const options = { maxNativeZoom: deepestTiles, maxZoom: map.getMaxZoom(), keepBuffer: 1 }
      layer = isOwn
        ? tileLayer(ground.url, options)
        : tileLayer(openStreetMap.url, { ...options, attribution: openStreetMap.attribution })
      // Said once a whole view has come or failed, so that single gaps do not make the sentence blink.
      let failed = 0
      layer.on('loading', () => {
        failed = 0
      })
      layer.on('tileerror', () => {
        failed += 1
      })
      layer.on('load', () => onAbsent(failed > 0))
      layer.addTo(map)
    },
    stop,
  }
}
