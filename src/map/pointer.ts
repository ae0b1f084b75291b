import type { Map as LeafletMap } from 'leaflet'
import type { Hand } from './hand'
import { type Pixel, type PointerKind, pixelDistance, type ToolEvent } from './tools/tool'

/** Pixels a press may wander and still be a tap. */
const tapReach = 8
/** Pixels after which a mouse or pen that has hold of something pulls it: its hand is steadier than a finger. */
const pullReach = 3
/** A second tap within this time and distance of the first makes it double; ms, pixels. */
const doubleTime = 400
const doubleReach = 16

/** What lies over the map and takes its own presses. */
const others = 'button, a, input, select, textarea, .leaflet-control'

type Press = {
  readonly id: number
  readonly kind: PointerKind
  readonly from: Pixel
  readonly isCaptured: boolean
  /** The press has wandered too far for a tap. */
  isPulling: boolean
}

/**
 * Tells the hand what mouse, finger and pen do on the map. While the hand has hold of something the map does not move
 * with the pointer; a second finger lets go of everything, and the map's own gestures take over.
 */
export function attachPointer(map: LeafletMap, hand: Hand): () => void {
  const container = map.getContainer()
  const down = new Set<number>()
  let press: Press | null = null
  let lastTap: { readonly time: number; readonly pixel: Pixel } | null = null
  let lastHover: Pixel = { x: Number.NaN, y: Number.NaN }
  let isHeldStill = false
  let isAfterDrawing = false

  // Shift with the mouse draws the hand's own box; a double tap ends a line, and zooms below where it does not.
  map.boxZoom?.disable()
  map.doubleClickZoom.disable()
  const { touchAction, userSelect } = container.style
  // Without it the browser takes a finger away to scroll the page as soon as the map stops following it.
  container.style.touchAction = 'none'
  // A box pulled over scale and credits would select their words.
  container.style.userSelect = 'none'

  const pointed = (event: PointerEvent, kind: PointerKind) => {
    const { x, y } = map.mouseEventToContainerPoint(event)
    const { lng, lat } = map.containerPointToLatLng([x, y])
    return {
      at: [lng, lat] as const,
      pixel: { x, y },
      keys: { shift: event.shiftKey, alt: event.altKey },
      pointer: kind,
    }
  }

  const holdMapStill = (): void => {
    if (isHeldStill || !map.dragging.enabled()) return
    map.dragging.disable()
    isHeldStill = true
  }

  const freeMap = (): void => {
    if (!isHeldStill) return
    isHeldStill = false
    map.dragging.enable()
  }

  const letGo = (): void => {
    if (press?.isCaptured) hand.handle({ type: 'lost' })
    press = null
    freeMap()
  }

  const onDown = (event: PointerEvent): void => {
    if (event.target instanceof Element && event.target.closest(others)) return
    if (event.button !== 0) return
    down.add(event.pointerId)
    if (down.size > 1) {
      letGo()
      return
    }
    // Keys belong to what was pressed last: Enter ends the line that was just drawn with the mouse.
    container.focus({ preventScroll: true })
    const kind = kindOf(event)
    const where = pointed(event, kind)
    const { isCaptured } = hand.handle({ type: 'press', ...where })
    press = { id: event.pointerId, kind, from: where.pixel, isCaptured, isPulling: false }
    if (isCaptured) holdMapStill()
  }

  const onMove = (event: PointerEvent): void => {
    if (press === null) {
      if (down.size === 0 && event.pointerType !== 'touch' && isOnMap(event)) hover(event)
      return
    }
    if (event.pointerId !== press.id) return
    const where = pointed(event, press.kind)
    const reach = press.isCaptured && press.kind !== 'touch' ? pullReach : tapReach
    if (pixelDistance(press.from, where.pixel) > reach) press.isPulling = true
    if (press.isPulling && press.isCaptured) hand.handle({ type: 'drag', ...where })
  }

  const hover = (event: PointerEvent): void => {
    const { clientX, clientY } = event
    // A pointer that lies still is told to have moved when the map moves below it.
    if (lastHover.x === clientX && lastHover.y === clientY) return
    lastHover = { x: clientX, y: clientY }
    hand.handle({ type: 'hover', ...pointed(event, kindOf(event)) })
  }

  const isOnMap = ({ target }: PointerEvent): boolean =>
    target instanceof Element && container.contains(target) && !target.closest(others)

  const onUp = (event: PointerEvent): void => {
    down.delete(event.pointerId)
    if (event.pointerId !== press?.id) return
    const { kind, isCaptured, isPulling } = press
    press = null
    const where = pointed(event, kind)
    if (!isPulling) tap(event, where)
    else if (isCaptured) hand.handle({ type: 'release', ...where })
    // After the hand, so that the map does not take the end of this press for one of its own.
    freeMap()
  }

  const tap = (event: PointerEvent, where: ReturnType<typeof pointed>): void => {
    const isDouble =
      lastTap !== null &&
      event.timeStamp - lastTap.time <= doubleTime &&
      pixelDistance(lastTap.pixel, where.pixel) <= doubleReach
    lastTap = isDouble ? null : { time: event.timeStamp, pixel: where.pixel }
    const wasDrawing = hand.status().isDrawing
    const told: ToolEvent = { type: 'tap', ...where, count: isDouble ? 2 : 1 }
    hand.handle(told)
    // The tool may have been put down by the first of two taps: what follows it is no wish to zoom.
    if (wasDrawing) isAfterDrawing = true
    else if (!isDouble) isAfterDrawing = false
    else if (!isAfterDrawing) map.setZoomAround([where.at[1], where.at[0]], map.getZoom() + (event.shiftKey ? -1 : 1))
  }

  const onCancel = (event: PointerEvent): void => {
    down.delete(event.pointerId)
    if (event.pointerId === press?.id) letGo()
  }

  const onBlur = (): void => {
    down.clear()
    letGo()
  }

  container.addEventListener('pointerdown', onDown, { capture: true })
  window.addEventListener('pointermove', onMove)
  window.addEventListener('pointerup', onUp)
  window.addEventListener('pointercancel', onCancel)
  window.addEventListener('blur', onBlur)
  const showTool = (): void => {
    container.style.cursor = hand.status().isDrawing ? 'crosshair' : ''
  }
  const stopShowing = hand.subscribe(showTool)
  showTool()

  return () => {
    stopShowing()
    letGo()
    container.removeEventListener('pointerdown', onDown, { capture: true })
    window.removeEventListener('pointermove', onMove)
    window.removeEventListener('pointerup', onUp)
    window.removeEventListener('pointercancel', onCancel)
    window.removeEventListener('blur', onBlur)
    container.style.touchAction = touchAction
    container.style.userSelect = userSelect
    container.style.cursor = ''
  }
}

function kindOf({ pointerType }: PointerEvent): PointerKind {
  return pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse'
}
