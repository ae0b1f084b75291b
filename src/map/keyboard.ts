import type { Map as LeafletMap } from 'leaflet'
import { duplicateFeatures } from '#geo/plan/edits-features'
import type { LngLat } from '#geo/space/plane'
import { edit, notify, redo, select, undo } from '../state/actions'
import { gestureKey } from '../state/history'
import { newIds } from '../state/new-id'
import { repeatSelected } from '../state/row-actions'
import { planeOfPlan } from '../state/selectors'
import type { PlannerStore } from '../state/store'
import { crossOn } from './cross'
import { focusFigures } from './figure-focus'
import type { Hand } from './hand'
import { pixelsPerMetre } from './mercator'
import { chosenPicture } from './picture-hand'
import { chosenPlace } from './place-hand'
import { type Keys, type Pixel, pixelDistance } from './tools/tool'

/** Metres that an arrow key moves what is chosen. */
const nudgeStep = { plain: 1, shift: 10, alt: 0.1 } as const
/** Arrow presses that follow each other within this time are one step of undo; ms. */
const burst = 1000
/** The crosshair goes about this far with an arrow press, but at least half a metre; pixels, metres. */
const crosshairPixels = 8
const crosshairLeast = 0.5
/** How far an arrow press moves the map where there is nothing else to move, and how much further with Shift; pixels. */
const panStep = 90
const panShift = 3
/** How far a copy lies from its original, so that both can be seen; metres east and south. */
const copyStep = 5
/** A pointer that moved no further did not mean to; pixels. */
const still = 3
/** Room that the map keeps between the crosshair and its own edge, pixels. */
const rim = 48
/** A map wider than `narrow` has the draw bar over its right edge, pixels. */
const narrow = 700
const barWidth = 200

const arrows: Readonly<Record<string, { readonly x: number; readonly y: number }>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
}

/**
 * Work on the map without a pointer, while the map has the focus: arrows move what is chosen or, with a drawing tool, a
 * crosshair; Space and Enter put a point there. With neither they move the map; plus and minus bring it closer and
 * farther. The crosshair shows itself; `crosshair` says where it is, null while there is none.
 */
export function attachKeyboard(
  map: LeafletMap,
  hand: Hand,
  store: PlannerStore,
): { readonly crosshair: () => LngLat | null; dispose(): void } {
  const container = map.getContainer()
  let crosshair: LngLat | null = null
  let pointerAt: Pixel | null = null
  let lastNudge = { time: Number.NEGATIVE_INFINITY, key: '' }

  const cross = crossOn(map)
  const tabIndex = container.getAttribute('tabindex')
  container.tabIndex = 0

  const isDrawing = (): boolean => store.getState().view.tool !== 'select'

  const hasChoice = (): boolean =>
    store.getState().view.selection.length > 0 ||
    chosenPlace(store) !== null ||
    chosenPicture(store.getState()) !== null

  const pointed = (at: LngLat, keys: Keys) => {
    const { x, y } = map.latLngToContainerPoint([at[1], at[0]])
    return { at, pixel: { x, y }, keys, pointer: 'keyboard' as const }
  }

  const putCrosshair = (at: LngLat): void => {
    crosshair = at
    cross.place(at)
    const right = map.getSize().x > narrow ? rim + barWidth : rim
    map.panInside([at[1], at[0]], { paddingTopLeft: [rim, rim], paddingBottomRight: [right, rim], animate: false })
    // With an arrow, Alt means a short step and does not switch off the falling onto corners.
    hand.handle({ type: 'hover', ...pointed(at, { shift: false, alt: false }) })
  }

  const middle = (): LngLat => {
    const { lng, lat } = map.getCenter()
    return [lng, lat]
  }

  const moveCrosshair = (direction: { x: number; y: number }, event: KeyboardEvent): void => {
    const from = crosshair ?? middle()
    const perMetre = pixelsPerMetre(from[1], 256 * 2 ** map.getZoom())
    const plain = Math.max(crosshairLeast, roundMetres(crosshairPixels / perMetre))
    const metres = plain * (event.shiftKey ? 10 : event.altKey ? 0.1 : 1)
    const pixel = map.project([from[1], from[0]])
    const { lng, lat } = map.unproject([
      pixel.x + direction.x * metres * perMetre,
      pixel.y - direction.y * metres * perMetre,
    ])
    putCrosshair([lng, lat])
  }

  const nudge = (direction: { x: number; y: number }, event: KeyboardEvent): void => {
    const isSameBurst = event.timeStamp - lastNudge.time <= burst
    lastNudge = { time: event.timeStamp, key: isSameBurst ? lastNudge.key : gestureKey() }
    const metres = event.shiftKey ? nudgeStep.shift : event.altKey ? nudgeStep.alt : nudgeStep.plain
    hand.handle({ type: 'nudge', by: { x: direction.x * metres, y: direction.y * metres }, key: lastNudge.key })
  }

  const pan = ({ x, y }: { x: number; y: number }, event: KeyboardEvent): void => {
    const step = panStep * (event.shiftKey ? panShift : 1)
    map.panBy([x * step, -y * step], { animate: false })
  }

  /** Whether the key meant something here. */
  const act = (event: KeyboardEvent): boolean => {
    if (event.ctrlKey || event.metaKey) return command(event)
    const direction = arrows[event.key]
    if (direction) {
      if (isDrawing()) moveCrosshair(direction, event)
      else if (hasChoice()) nudge(direction, event)
      else pan(direction, event)
      return true
    }
    switch (event.key) {
      case ' ':
      case 'Enter':
        return enter(event)
      case 'Escape':
        if (!isDrawing() && !hasChoice()) return false
        hand.handle({ type: 'cancel' })
        return true
      case 'Backspace':
        hand.handle({ type: 'back' })
        return true
      case 'Delete':
        hand.handle({ type: 'remove' })
        return true
      case 'Insert':
        if (isDrawing()) return false
        hand.handle({ type: 'put' })
        return true
      case 'r':
      case 'R':
        return !isDrawing() && repeatSelected(store, event.shiftKey ? 'left' : 'right')
      case 's':
      case 'S':
        return snapping()
      case '+':
      case '=':
        map.zoomIn()
        return true
      case '-':
        map.zoomOut()
        return true
      default:
        return false
    }
  }

  const snapping = (): boolean => {
    if (!isDrawing()) return false
    const isOn = !hand.status().isSnapping
    hand.snap({ isOn })
    notify(store, isOn ? 'Snapping is on. S switches it off.' : 'Snapping is off. S switches it on.')
    return true
  }

  /** Tab leads from the map into the typed figures, and a digit begins the first of them. */
  const toFigures = (event: KeyboardEvent): boolean => {
    if (!isDrawing() || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return false
    if (event.key === 'Tab') return focusFigures()
    // Not taken from the browser: it writes the digit into the field that has the focus now.
    if (/^\d$/.test(event.key)) focusFigures()
    return false
  }

  const enter = (event: KeyboardEvent): boolean => {
    if (event.repeat) return true
    const keys = { shift: event.shiftKey, alt: event.altKey }
    if (!isDrawing()) {
      if (event.key === 'Enter') hand.handle({ type: 'finish', keys })
      return event.key === 'Enter'
    }
    if (crosshair) hand.handle({ type: 'tap', ...pointed(crosshair, keys), count: 1 })
    else if (hand.status().points > 0 && event.key === 'Enter') hand.handle({ type: 'finish', keys })
    else putCrosshair(middle())
    return true
  }

  const command = (event: KeyboardEvent): boolean => {
    if (event.altKey) return false
    switch (event.key.toLowerCase()) {
      case 'd':
        duplicateSelection(store)
        return true
      case 'z':
        // What is under way comes before what is done.
        if (!event.shiftKey && hand.status().points > 0) hand.handle({ type: 'back' })
        else if (event.shiftKey) redo(store)
        else undo(store)
        return true
      case 'y':
        redo(store)
        return true
      default:
        return false
    }
  }

  /** Whoever comes with keys sees at once where they would set a point. */
  const onFocus = (): void => {
    if (isDrawing() && container.matches(':focus-visible')) putCrosshair(crosshair ?? middle())
  }

  const onKeyDown = (event: KeyboardEvent): void => {
    // Buttons over the map keep their own keys.
    if (event.target !== container || store.getState().document.plan === null) return
    if (!toFigures(event) && !act(event)) return
    if (!arrows[event.key]) lastNudge = { time: Number.NEGATIVE_INFINITY, key: '' }
    event.preventDefault()
    // The map would pan, and the page undo once more.
    event.stopPropagation()
  }

  const dropCrosshair = (): void => {
    crosshair = null
    cross.place(null)
  }

  /** A mouse that lies still is told to have moved when the map moves below it: only real ways count. */
  const onPointerMove = ({ clientX, clientY }: PointerEvent): void => {
    const here = { x: clientX, y: clientY }
    if (pointerAt && pixelDistance(pointerAt, here) > still) dropCrosshair()
    if (!pointerAt || crosshair === null) pointerAt = here
  }

  const stopWatching = store.subscribe(
    state => state.view.tool,
    tool => {
      if (tool === 'select') dropCrosshair()
    },
  )
  container.addEventListener('keydown', onKeyDown)
  container.addEventListener('focus', onFocus)
  container.addEventListener('pointerdown', dropCrosshair)
  container.addEventListener('pointermove', onPointerMove)

  return {
    crosshair: () => (isDrawing() ? crosshair : null),
    dispose() {
      stopWatching()
      cross.remove()
      if (tabIndex === null) container.removeAttribute('tabindex')
      else container.setAttribute('tabindex', tabIndex)
      container.removeEventListener('keydown', onKeyDown)
      container.removeEventListener('focus', onFocus)
      container.removeEventListener('pointerdown', dropCrosshair)
      container.removeEventListener('pointermove', onPointerMove)
    },
  }
}

/** Down to 1, 2 or 5 times a power of ten. */
function roundMetres(metres: number): number {
  const power = 10 ** Math.floor(Math.log10(metres))
  const lead = metres / power
  return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1)
}

/** Copies of what is selected, a little to the side, and selected in its place. */
function duplicateSelection(store: PlannerStore): void {
  const { document, view } = store.getState()
  const { plan } = document
  if (plan === null || view.selection.length === 0) return
  const { centre, toLngLat } = planeOfPlan(plan)
  const [lng, lat] = toLngLat({ x: copyStep, y: -copyStep })
  const before = new Set(plan.features.map(({ id }) => id))
  const by = { lng: lng - centre[0], lat: lat - centre[1] }
  edit(store, duplicateFeatures(view.selection, newIds(plan), by, view.year))
  const after = store.getState().document.plan?.features ?? []
  select(
    store,
    after.map(({ id }) => id).filter(id => !before.has(id)),
  )
}
