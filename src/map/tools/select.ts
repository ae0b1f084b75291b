import { moveFeatures, removeFeatures, type Shift, setGeometry } from '#geo/plan/edits-features'
import { turnPlanting } from '#geo/plan/edits-rows'
import type { Feature, Geometry } from '#geo/plan/plan'
import { polygonFault, woundRight } from '#geo/space/ring'
import { faultWords } from './draw-ring'
import { hitAt, insideBox } from './hit'
import { positionsOf } from './positions'
import { selectGhost } from './select-ghost'
import {
  activeOf,
  activeTurn,
  degreesOf,
  type Hold,
  heldFeatures,
  onlySelected,
  type SelectState,
  shifted,
  shiftOf,
} from './select-state'
import { snapTo } from './snap'
import { type Answer, pixelDistance, type Tool, type ToolContext, type ToolEvent, tolerance } from './tool'
import { turningOf } from './turn-grip'
import { handleAt, handlesOf, type Vertex, vertexOf, withoutVertex, withVertex } from './vertices'

type Step = Answer<SelectState>
type EventOf<T extends ToolEvent['type']> = Extract<ToolEvent, { readonly type: T }>

/** Half of the turning mark as it is drawn, pixels. */
const turnHalf = 12

const start: SelectState = { hold: null, active: null }

/**
 * Chooses, moves and reshapes. Tapping chooses (with Shift adds or takes away), pulling a thing moves it, pulling a
 * corner of the one chosen thing reshapes it, pulling with Shift from bare ground chooses all inside a box.
 */
export const selectTool: Tool<SelectState> = {
  start,
  step(state, event, context) {
    switch (event.type) {
      case 'press':
        return press(state, event, context)
      case 'drag':
        return drag(state, event, context)
      case 'release':
        return release(state, event, context)
      case 'tap':
        return tap({ ...state, hold: null }, event, context)
      case 'lost':
        return { state: { ...state, hold: null } }
      case 'cancel':
        return cancel(state, context)
      case 'back':
      case 'remove':
        return remove(state, context)
      case 'finish':
        return nextCorner(state, event.keys?.shift ? -1 : 1, context)
      case 'nudge':
        return nudge(state, event, context)
      case 'put':
        return insertCorner(state, context)
      case 'hover':
      case 'type':
        return { state }
      default:
        return event satisfies never
    }
  },
  ghost: selectGhost,
  status: (state, context) => ({
    points: 0,
    canFinish: false,
    hasVertex: activeOf(state, context) !== null,
    isTurning: activeTurn(state, context) !== null,
  }),
}

function press(state: SelectState, event: EventOf<'press'>, context: ToolContext): Step {
  const hold = holdAt(event, context)
  return hold ? { state: { ...state, hold }, isCaptured: true } : { state: { ...state, hold: null } }
}

function holdAt(event: EventOf<'press'>, context: ToolContext): Hold | null {
  const { at, pixel, keys, pointer } = event
  const only = onlySelected(context)
  const handle = only && !keys.shift ? handleAt(only, pixel, context, tolerance(pointer)) : null
  if (only && handle) return { type: 'corner', id: only.id, handle, at: null, snap: null }
  if (only && isOnTurn(only, event, context)) return { type: 'turn', id: only.id, from: at, to: null }
  const feature = hitAt(pixel, context, tolerance(pointer))
  if (feature && canGrasp(feature, event, context)) {
    const ids = context.selection.includes(feature.id) ? context.selection : [feature.id]
    return { type: 'move', ids, from: at, to: null }
  }
  if (feature === null && keys.shift && pointer !== 'touch')
    return { type: 'box', from: at, fromPixel: pixel, to: null }
  return null
}

function isOnTurn(feature: Feature, { pixel, pointer, keys }: EventOf<'press' | 'tap'>, context: ToolContext): boolean {
  const turning = keys.shift ? null : turningOf(feature, context)
  const reach = Math.max(turnHalf, tolerance(pointer))
  return turning !== null && pixelDistance(context.toPixel(turning.at), pixel) <= reach
}

/**
 * What is chosen can always be pulled. Of the rest only what is small: a press inside an outline, or of a finger on a
 * row, is far more often meant for the map than for the thing.
 */
function canGrasp({ id, geometry }: Feature, { pointer }: EventOf<'press'>, context: ToolContext): boolean {
  if (context.selection.includes(id)) return true
  switch (geometry.type) {
    case 'Point':
      return true
    case 'MultiPoint':
    case 'LineString':
      return pointer !== 'touch'
    case 'Polygon':
      return false
    default:
      return geometry satisfies never
  }
}

function drag(state: SelectState, event: EventOf<'drag'>, context: ToolContext): Step {
  const { hold } = state
  if (hold === null || heldFeatures(hold, context) === null) return { state: { ...state, hold: null } }
  switch (hold.type) {
    case 'move': {
      const moved = { ...hold, to: event.at }
      const station = stationUnderWay(moved, context)
      return { state: { ...state, hold: moved }, isCaptured: true, ...(station ? { station } : {}) }
    }
    case 'corner': {
      const snap = snapTo(event, context, { except: hold.id })
      return { state: { ...state, hold: { ...hold, at: snap?.at ?? event.at, snap } }, isCaptured: true }
    }
    case 'turn':
    case 'box':
      return { state: { ...state, hold: { ...hold, to: event.at } }, isCaptured: true }
    default:
      return hold satisfies never
  }
}

function stationUnderWay(hold: Extract<Hold, { type: 'move' }>, context: ToolContext): Step['station'] | null {
  const [feature, ...others] = heldFeatures(hold, context) ?? []
  if (feature?.properties.kind !== 'station' || others.length > 0) return null
  const at = positionsOf(shifted(feature.geometry, shiftOf(hold)))[0]
  return at ? { id: feature.id, at } : null
}

function release(state: SelectState, event: EventOf<'release'>, context: ToolContext): Step {
  const { hold } = drag(state, { ...event, type: 'drag' }, context).state
  const free: SelectState = { ...state, hold: null }
  if (hold === null) return { state: free }
  switch (hold.type) {
    case 'move':
      return { state: free, edit: moveFeatures(hold.ids, shiftOf(hold)), selection: hold.ids }
    case 'corner': {
      const feature = onlySelected(context)
      if (feature?.id !== hold.id || hold.at === null) return { state: free }
      // Chosen for the arrow keys; a finger has none, and the hint for the corner would only cover its screen.
      const active = event.pointer === 'touch' ? null : { id: hold.id, vertex: vertexOf(hold.handle) }
      return reshaped({ hold: null, active }, feature, withVertex(feature.geometry, hold.handle, hold.at), state)
    }
    case 'turn': {
      const feature = onlySelected(context)
      const turning = feature && turningOf(feature, context)
      if (turning === null) return { state: free }
      const degrees = degreesOf(hold, turning, context.plane)
      const active = event.pointer === 'touch' ? null : ({ id: hold.id, vertex: 'turn' } as const)
      return { state: { hold: null, active }, ...(degrees === 0 ? {} : { edit: turnPlanting(hold.id, degrees) }) }
    }
    case 'box': {
      const inside = insideBox(hold.fromPixel, event.pixel, context)
      return { state: free, selection: [...new Set([...context.selection, ...inside])] }
    }
    default:
      return hold satisfies never
  }
}

/** A new shape, unless it bounds no area any more: then all stays as it was. */
function reshaped(state: SelectState, feature: Feature, geometry: Geometry, before: SelectState, key?: string): Step {
  if (geometry.type !== 'Polygon') return { state, edit: setGeometry(feature.id, geometry, key) }
  const fault = polygonFault(geometry.coordinates)
  if (fault) {
    return { state: { ...before, hold: null }, notice: `${faultWords[fault.fault]} It was left as it was.` }
  }
  const coordinates = woundRight(geometry.coordinates)
  // Turned round, the corners have other numbers, and the chosen one would be another corner.
  const isTurned = coordinates.some((ring, i) => ring !== geometry.coordinates[i])
  const kept = isTurned ? { ...state, active: null } : state
  return { state: kept, edit: setGeometry(feature.id, { type: 'Polygon', coordinates }, key) }
}

function tap(state: SelectState, event: EventOf<'tap'>, context: ToolContext): Step {
  const { pixel, keys, pointer } = event
  const only = onlySelected(context)
  const handle = only && !keys.shift ? handleAt(only, pixel, context, tolerance(pointer)) : null
  if (only && handle) {
    const active = { id: only.id, vertex: vertexOf(handle) }
    if (!handle.isMidpoint) return { state: { ...state, active } }
    return reshaped({ ...state, active }, only, withVertex(only.geometry, handle, handle.at), state)
  }
  if (only && isOnTurn(only, event, context)) return { state: { ...state, active: { id: only.id, vertex: 'turn' } } }
  const free: SelectState = { ...state, active: null }
  const hit = hitAt(pixel, context, tolerance(pointer))
  if (!keys.shift) return { state: free, selection: hit ? [hit.id] : [] }
  if (hit === null) return { state: free }
  const { selection } = context
  const isIn = selection.includes(hit.id)
  return { state: free, selection: isIn ? selection.filter(id => id !== hit.id) : [...selection, hit.id] }
}

/** What is under way goes first, then the chosen corner, then the choice itself. */
function cancel(state: SelectState, context: ToolContext): Step {
  if (state.hold) return { state: { ...state, hold: null } }
  if (activeOf(state, context) || activeTurn(state, context)) return { state: start }
  return { state: start, selection: [] }
}

function remove(state: SelectState, context: ToolContext): Step {
  if (state.hold) return { state }
  const active = activeOf(state, context)
  if (active) {
    const geometry = withoutVertex(active.feature.geometry, active.vertex)
    if (geometry) return reshaped(start, active.feature, geometry, state)
    const least = active.feature.geometry.type === 'Polygon' ? 'three corners' : 'two ends'
    return { state, notice: `It needs its ${least}; press Escape to let the corner go.` }
  }
  if (activeTurn(state, context)) {
    return { state, notice: 'The turning mark is chosen, not the thing: press Escape to let it go, then delete.' }
  }
  if (context.selection.length === 0) return { state }
  return { state: start, edit: removeFeatures(context.selection), selection: [] }
}

/** A new corner in the middle of the side that follows the chosen one; it is the chosen one from then on. */
function insertCorner(state: SelectState, context: ToolContext): Step {
  const active = activeOf(state, context)
  if (state.hold || active === null) return { state }
  const { feature, vertex } = active
  const middle = handlesOf(feature.geometry).find(
    ({ part, index, isMidpoint }) => isMidpoint && part === vertex.part && index === vertex.index,
  )
  if (middle === undefined) return { state, notice: 'No side follows this corner; go on to another with Enter.' }
  const next: SelectState = { ...state, active: { id: feature.id, vertex: vertexOf(middle) } }
  return reshaped(next, feature, withVertex(feature.geometry, middle, middle.at), state)
}

/** From corner to corner of the one chosen thing, and on to its turning grip, for those who work without a pointer. */
function nextCorner(state: SelectState, step: 1 | -1, context: ToolContext): Step {
  const only = onlySelected(context)
  if (only === null || state.hold) return { state }
  const corners = handlesOf(only.geometry).filter(({ isMidpoint }) => !isMidpoint)
  const stops: readonly (Vertex | 'turn')[] = turningOf(only, context) ? [...corners, 'turn'] : corners
  if (stops.length === 0) return { state }
  const active = activeTurn(state, context) ? 'turn' : activeOf(state, context)?.vertex
  const now = stops.findIndex(stop => (typeof stop === 'string' ? stop === active : isSameCorner(stop, active)))
  const next = stops[now < 0 ? (step > 0 ? 0 : stops.length - 1) : (now + step + stops.length) % stops.length]!
  const vertex = typeof next === 'string' ? next : { part: next.part, index: next.index, isMidpoint: false }
  return { state: { ...state, active: { id: only.id, vertex } } }
}

function isSameCorner({ part, index }: Vertex, other: Vertex | 'turn' | undefined): boolean {
  return typeof other === 'object' && part === other.part && index === other.index
}

function nudge(state: SelectState, { by, key }: EventOf<'nudge'>, context: ToolContext): Step {
  if (state.hold || context.selection.length === 0) return { state }
  const active = activeOf(state, context)
  if (active) {
    const { feature, vertex } = active
    const { x, y } = context.plane.toMetres(cornerOf(feature, vertex))
    const at = context.plane.toLngLat({ x: x + by.x, y: y + by.y })
    return reshaped(state, feature, withVertex(feature.geometry, vertex, at), state, key)
  }
  const turned = activeTurn(state, context)
  if (turned) {
    // The steps of an arrow key in metres, 0.1, 1 and 10, are as good in degrees.
    const degrees = by.x - by.y
    return { state, edit: turnPlanting(turned.feature.id, degrees, `${key} turn`) }
  }
  return { state, edit: moveFeatures(context.selection, stepOf(by, context), key) }
}

function cornerOf(feature: Feature, vertex: Vertex): ReturnType<typeof positionsOf>[number] {
  const handle = handlesOf(feature.geometry).find(
    ({ part, index, isMidpoint }) => part === vertex.part && index === vertex.index && !isMidpoint,
  )
  if (handle === undefined) throw new RangeError(`${feature.id} has no corner ${vertex.index}`)
  return handle.at
}

/** Metres as degrees, where the chosen things are. */
function stepOf(by: { readonly x: number; readonly y: number }, { plan, plane, selection }: ToolContext): Shift {
  const feature = plan.features.find(({ id }) => id === selection[0])
  const from = feature ? (positionsOf(feature.geometry)[0] ?? plane.centre) : plane.centre
  const { x, y } = plane.toMetres(from)
  const to = plane.toLngLat({ x: x + by.x, y: y + by.y })
  return { lng: to[0] - from[0], lat: to[1] - from[1] }
}
