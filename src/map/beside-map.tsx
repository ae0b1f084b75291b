import { map as createMap, type Map as LeafletMap } from 'leaflet'
import { useEffect, useRef } from 'react'
import { setView } from '../state/actions'
import type { PlannerStore } from '../state/store'
import { usePlannerStore } from '../state/use-planner'
import { watchSize } from './fit'
import { gridPainter } from './ground/grid'
import { originOfGrid } from './ground/origin'
import { picturesOn } from './ground/pictures'
import { tilesOn } from './ground/tiles'
import { paneLayer } from './layers/canvas-layer'
import { planPainters } from './layers/plan-painters'
import type { MapLink } from './map-link'
import { type Palette, readPalette } from './style'

type Props = { readonly link: MapLink; readonly year: number }

/** A second map with the season that is held against: to be looked at, and moved together with the first. */
export function BesideMap({ link, year }: Props) {
  const store = usePlannerStore()
  const host = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (host.current === null || link.map === null) return
    return startBeside(host.current, store, link.map)
  }, [store, link])
  return (
    <div className="map-cell">
      <div
        ref={host}
        className="map"
        role="application"
        aria-label={`Map of ${year}; it moves together with the other.`}
      />
      <p className="map-season">{year}</p>
    </div>
  )
}

function startBeside(host: HTMLElement, store: PlannerStore, first: LeafletMap): () => void {
  const planNow = () => store.getState().document.plan
  // The first map has just given up half of its room.
  const showAll = (): void => {
    first.invalidateSize({ pan: false })
    setView(store, { focusRequest: store.getState().view.focusRequest + 1 })
  }
  showAll()
  const second = createMap(host, {
    zoomControl: false,
    attributionControl: false,
    boxZoom: false,
    doubleClickZoom: false,
    zoomAnimation: false,
    maxZoom: first.getMaxZoom(),
    zoomSnap: 0.5,
    wheelPxPerZoomLevel: 90,
  })
  second.setView(first.getCenter(), first.getZoom(), { animate: false })
  let palette: Palette | null = null
  const paletteNow = (): Palette => {
    palette ??= readPalette(host)
    return palette
  }
  const painters = planPainters(store, () => null, 'against')
  const grid = gridPainter({
    middle: originOfGrid(store),
    units: () => planNow()?.units ?? 'metric',
    hasLabels: () => false,
  })
  const layers = [
    paneLayer(second, { name: 'ground', order: 150, painter: grid, palette: paletteNow }),
    paneLayer(second, { name: 'shapes', order: 410, ...painters.shapes, palette: paletteNow }),
    paneLayer(second, { name: 'plants', order: 420, ...painters.plants, palette: paletteNow }),
    paneLayer(second, { name: 'marks', order: 430, ...painters.marks, palette: paletteNow }),
  ]
  const redraw = (): void => {
    for (const layer of layers) layer.redraw()
  }
  const tiles = tilesOn(second, () => {})
  tiles.show(store.getState().view.ground)
  const stops = [
    together(first, second),
    store.subscribe(
      ({ document, results, view, years }) => {
        const { selection, shading, reachCircles, year } = view
        return [document.plan, results.otherSeason, years, selection, shading, reachCircles, year]
      },
      redraw,
      { equalityFn: (a, b) => a.every((value, i) => value === b[i]) },
    ),
    picturesOn(second, store).stop,
    store.subscribe(
      state => state.view.theme,
      () =>
        requestAnimationFrame(() => {
          palette = null
          redraw()
        }),
    ),
    store.subscribe(state => state.view.ground, tiles.show),
    watchSize(host, second),
  ]
  return () => {
    for (const stop of stops) stop()
    tiles.stop()
    second.remove()
    // The room comes back with the next layout of the page.
    requestAnimationFrame(() => {
      if (first.getContainer().isConnected) showAll()
    })
  }
}

/** Whatever one map is moved to, the other shows. */
function together(first: LeafletMap, second: LeafletMap): () => void {
  let isFollowing = false
  const follow = (from: LeafletMap, to: LeafletMap) => (): void => {
    if (isFollowing) return
    isFollowing = true
    to.setView(from.getCenter(), from.getZoom(), { animate: false })
    isFollowing = false
  }
  const [lead, led] = [follow(first, second), follow(second, first)]
  first.on('move zoomend resize', lead)
  second.on('move zoomend', led)
  return () => {
    first.off('move zoomend resize', lead)
    second.off('move zoomend', led)
  }
}
