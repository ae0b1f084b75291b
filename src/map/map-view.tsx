import { type Control, control, map as createMap, type LatLng, type Map as LeafletMap } from 'leaflet'
import { useEffect, useRef, useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import { setView } from '../state/actions'
import { planeOfPlan, settingsOf } from '../state/selectors'
import type { PlannerStore } from '../state/store'
import { usePlanner, usePlannerStore } from '../state/use-planner'
import { changeMapShown, yearAgainst } from '../state/years-actions'
import { BesideMap } from './beside-map'
import { showComing, showWhole, watchSize } from './fit'
import { gridPainter } from './ground/grid'
import { picturesOn } from './ground/pictures'
import { tilesOn } from './ground/tiles'
import { attachKeyboard } from './keyboard'
import { type Picture, paneLayer } from './layers/canvas-layer'
import { comingPainter } from './layers/coming'
import { devicePainter } from './layers/device'
import { ghostPainter } from './layers/ghost-painter'
import { planPainters } from './layers/plan-painters'
import { Legend } from './legend'
import type { MapLink } from './map-link'
import { measureText } from './measure'
import { attachPointer } from './pointer'
import { showSuggestedOn } from './show-suggested'
import { type Palette, readPalette } from './style'
import 'leaflet/dist/leaflet.css'
import './map.css'

/** Results that take longer than this to be renewed are greyed meanwhile, ms. */
const patience = 400

const deepest = 24

/** The map. React makes its host and its legend; everything on it is painted from the store, without React. */
export function MapView({ link }: { readonly link: MapLink }) {
  const store = usePlannerStore()
  const host = useRef<HTMLDivElement>(null)
  const [areTilesAbsent, setTilesAbsent] = useState(false)
  // A drawing tool has marks of its own.
  const isAiming = usePlanner(({ view }) => view.isAiming && view.tool === 'select')
  useEffect(() => {
    if (host.current === null) return
    return startMap(host.current, store, link, setTilesAbsent)
  }, [store, link])
  const shown = usePlanner(changeMapShown)
  const against = usePlanner(yearAgainst)
  const year = usePlanner(state => state.view.year)
  return (
    <div className="maps">
      {shown === 'beside' && against !== null ? <BesideMap link={link} year={against} /> : null}
      <div className="map-cell">
        <div
          ref={host}
          className="map"
          role="application"
          aria-label="Map of the plan. With a tool chosen, arrow keys move a cross and Enter sets a point; F6 goes to the page, which lists the same things on Ground."
        />
        <div className="map-north" aria-hidden="true">
          N
        </div>
        {isAiming && <div className="map-aim" aria-hidden="true" />}
        {areTilesAbsent && (
          <p className="map-status" role="status">
            No map tiles here now. Drawing on the metre grid works just the same.
          </p>
        )}
        {shown === 'season' || against === null ? null : (
          <p className="map-season">{shown === 'beside' ? year : `Change from ${against} to ${year}`}</p>
        )}
        <Legend />
      </div>
    </div>
  )
}

/** Makes the map in `host`, paints the plan on it, and returns what takes it all down again. */
function startMap(
  host: HTMLElement,
  store: PlannerStore,
  link: MapLink,
  onTilesAbsent: (isAbsent: boolean) => void,
): () => void {
  const isStill = typeof matchMedia === 'function' && matchMedia('(prefers-reduced-motion: reduce)').matches
  const map = createMap(host, {
    zoomAnimation: !isStill,
    fadeAnimation: !isStill,
    inertia: !isStill,
    zoomControl: false,
    keyboard: false,
    boxZoom: false,
    doubleClickZoom: false,
    maxZoom: deepest,
    zoomSnap: 0.5,
    wheelPxPerZoomLevel: 90,
  })
  map.attributionControl.setPrefix(false)
  control.zoom({ position: 'topleft', zoomInTitle: 'Closer', zoomOutTitle: 'Farther' }).addTo(map)
  link.map = map
  type Shown = { readonly plan: Plan | null; readonly center: LatLng; readonly zoom: number; again(): void }
  let shown: Shown | null = null
  const showPlan = (): void => {
    const { plan } = store.getState().document
    showWhole(map, plan, store.getState().view.picture)
    shown = { plan, center: map.getCenter(), zoom: map.getZoom(), again: showPlan }
  }
  const showNewcomers = (): void => {
    const { document, view } = store.getState()
    if (view.coming === null) return
    showComing(map, view.coming.shapes, document.plan)
    shown = { plan: document.plan, center: map.getCenter(), zoom: map.getZoom(), again: showNewcomers }
  }
  // Ground that is being drawn on must not slip away under the hand: once the plan has changed, the view stays.
  const isAsShown = (): boolean =>
    shown !== null &&
    shown.plan === store.getState().document.plan &&
    shown.zoom === map.getZoom() &&
    shown.center.equals(map.getCenter())
  showPlan()
  const layers = paintedLayers(map, store, link)
  const keyboard = attachKeyboard(map, link.hand, store)
  const tiles = tilesOn(map, onTilesAbsent)
  tiles.show(store.getState().view.ground)
  const tellMiddle = (): void => {
    const { lng, lat } = map.getCenter()
    setView(store, { mapMiddle: [lng, lat] })
  }
  tellMiddle()
  map.on('moveend', tellMiddle)
  let scale = scaleFor(map, store)
  const pictures = picturesOn(map, store)
  const stops = [
    attachPointer(map, link.hand),
    pictures.stop,
    showSuggestedOn(map, store, link.hand),
    link.hand.subscribe(() => pictures.hold(link.hand.ghost()?.picture ?? null)),
    keyboard.dispose,
    link.hand.subscribe(layers.follow),
    store.subscribe(state => state.document.plan, layers.redraw),
    store.subscribe(state => state.results.report, layers.showResults),
    store.subscribe(state => state.results.cloud, layers.showResults),
    store.subscribe(state => state.results.day, layers.redrawDay),
    store.subscribe(({ results, years }) => [results.otherSeason, results.comparison, years], layers.redraw, {
      equalityFn: (a, b) => a.every((value, i) => value === b[i]),
    }),
    store.subscribe(
      ({ results, boxes, view }) => [results.suggestion, results.stock, results.trial, boxes, view.page],
      layers.redraw,
      {
        equalityFn: (a, b) => a.every((value, i) => value === b[i]),
      },
    ),
    store.subscribe(({ view }) => [view.selection, view.shading, view.reachCircles, view.year], layers.redraw, {
      equalityFn: (a, b) => a.every((value, i) => value === b[i]),
    }),
    store.subscribe(state => state.view.device, layers.redrawDevice),
    store.subscribe(state => state.view.coming, layers.redrawComing),
    store.subscribe(state => state.view.coming?.fit, showNewcomers),
    store.subscribe(state => state.view.theme, layers.repalette),
    store.subscribe(state => state.view.ground, tiles.show),
    store.subscribe(state => state.view.ground, layers.redrawGround),
    store.subscribe(state => state.view.focusRequest, showPlan),
    store.subscribe(
      state => state.document.plan?.units,
      () => {
        scale.remove()
        scale = scaleFor(map, store)
        layers.redrawGround()
      },
    ),
    watchSize(host, map, () => (isAsShown() ? (shown?.again ?? null) : null)),
  ]
  return () => {
    for (const stop of stops) stop()
    tiles.stop()
    link.map = null
    map.remove()
  }
}

function paintedLayers(map: LeafletMap, store: PlannerStore, link: MapLink) {
  const { hand } = link
  let palette: Palette | null = null
  const paletteNow = (): Palette => {
    palette ??= readPalette(map.getContainer())
    return palette
  }
  const planNow = () => store.getState().document.plan
  const grid = gridPainter({
    middle: link.origin,
    units: () => planNow()?.units ?? 'metric',
    hasLabels: () => store.getState().view.ground.kind === 'grid',
  })
  const measureNow = (): string | null => {
    const plan = planNow()
    const measure = hand.ghost()?.measure
    if (plan === null || !measure) return null
    const { crops } = settingsOf(plan)
    return measureText(measure, { plan, plane: planeOfPlan(plan), spacingOf: crop => crops[crop] ?? null })
  }
  const ghostNow = () => hand.ghost()
  const painters = planPainters(store, ghostNow)
  const layer = (name: string, order: number, picture: Picture) =>
    paneLayer(map, { name, order, ...picture, palette: paletteNow })
  const ground = layer('ground', 150, { painter: grid })
  const shapes = layer('shapes', 410, painters.shapes)
  const plants = layer('plants', 420, painters.plants)
  const marks = layer('marks', 430, painters.marks)
  const device = layer('device', 435, { painter: devicePainter(store), inputs: () => [store.getState().view.device] })
  const coming = layer('coming', 438, { painter: comingPainter(store), inputs: () => [store.getState().view.coming] })
  const ghost = layer('ghost', 440, {
    painter: ghostPainter(store, ghostNow, measureNow),
    // One that is under way is another at every turn; the lack of one stays what it is.
    inputs: () => [ghostNow(), planNow()],
  })
  const redraw = (): void => {
    for (const each of [shapes, plants, marks, coming, ghost]) each.redraw()
  }
  let hidden = ''
  let greying = 0
  return {
    redraw,
    /** Results of an older plan stay, greyed once the new ones keep us waiting; while a station is pulled they keep coming. */
    showResults: () => {
      clearTimeout(greying)
      const { classList } = plants.canvas
      classList.remove('is-outdated')
      if (store.getState().results.report.status === 'running') {
        greying = window.setTimeout(() => classList.add('is-outdated'), patience)
      }
      plants.redraw()
    },
    redrawDevice: () => device.redraw(),
    redrawComing: () => coming.redraw(),
    redrawGround: () => ground.redraw(),
    /** What a day changes: shades, lines and the stations' words. */
    redrawDay: () => {
      plants.redraw()
      marks.redraw()
    },
    /** What is under way moves with every pointer event; the plan under it changes only as things leave it and come back. */
    follow: () => {
      const now = (ghostNow()?.hidden ?? []).join(' ')
      if (now === hidden) ghost.redraw()
      else redraw()
      hidden = now
    },
    repalette: () => {
      // The theme is set on the page after the store has changed: read its colours in the next frame.
      requestAnimationFrame(() => {
        palette = null
        ground.redraw()
        redraw()
      })
    },
  }
}

function scaleFor(map: LeafletMap, store: PlannerStore): Control.Scale {
  const isUs = store.getState().document.plan?.units === 'us'
  return control.scale({ position: 'bottomleft', metric: !isUs, imperial: isUs, maxWidth: 140 }).addTo(map)
}
