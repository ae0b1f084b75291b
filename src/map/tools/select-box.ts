import type { LngLat } from '#geo/space/plane'
import { hitAt, insideBox } from './hit'
import { type Answer, type Pixel, pixelDistance, type Tool, type ToolContext, type ToolEvent, tolerance } from './tool'

type State = {
  /** The first corner, set by a press of its own. */
  readonly corner: LngLat | null
  /** Where a box is being pulled open from. */
  readonly pulled: LngLat | null
  readonly pointer: LngLat | null
}

const start: State = { corner: null, pulled: null, pointer: null }

/** A thing is taken within this distance even where the pointer is a cross that keys move; pixels. */
const nearest = 10

/**
 * Selects all that lies wholly in a box: pulled open, or by two presses on corners across from each other. Two presses on
 * one spot select what lies there, which gives keys a way to choose on the map. With Shift, or where the tool stays in
 * hand, what was selected before stays selected.
 */
export const selectBox: Tool<State> = {
  start,
  step(state, event, context) {
    switch (event.type) {
      case 'press':
        return { state: { ...state, pulled: event.at }, isCaptured: true }
      case 'drag':
        return state.pulled ? { state: { ...state, pointer: event.at }, isCaptured: true } : { state }
      case 'release':
        return state.pulled ? chosen(state.pulled, event, context) : { state: start }
      case 'tap':
        if (state.corner === null) return { state: { corner: event.at, pulled: null, pointer: event.at } }
        return chosen(state.corner, event, context)
      case 'hover':
        return { state: { ...state, pointer: event.at } }
      case 'lost':
        return { state: { ...state, pulled: null, pointer: state.corner } }
      case 'back':
      case 'remove':
        return { state: start }
      case 'cancel':
        return state.corner === null && state.pulled === null ? { state: start, isLeft: true } : { state: start }
      case 'finish':
      case 'nudge':
      case 'type':
      case 'put':
        return { state }
      default:
        return event satisfies never
    }
  },
  ghost({ corner, pulled, pointer }) {
    const from = pulled ?? corner
    if (from === null) return null
    const box = pointer ? ([from, pointer] as const) : undefined
    const handles = corner ? [{ at: corner, role: 'first' as const }] : []
    return { shapes: [], handles, hidden: [], measure: null, pointer, ...(box ? { box } : {}) }
  },
  status: ({ corner }) => ({ points: corner === null ? 0 : 1, canFinish: false, hasVertex: false }),
}

function chosen(
  from: LngLat,
  event: Extract<ToolEvent, { readonly pixel: Pixel }>,
  context: ToolContext,
): Answer<State> {
  const corner = context.toPixel(from)
  const isSpot = pixelDistance(corner, event.pixel) <= tolerance(event.pointer)
  const there = () => hitAt(event.pixel, context, Math.max(nearest, tolerance(event.pointer)))
  const inside = isSpot ? [there()?.id].filter(id => id !== undefined) : insideBox(corner, event.pixel, context)
  if (inside.length === 0) {
    return { state: start, notice: isSpot ? 'Nothing lies there.' : 'Nothing lies wholly inside this box.' }
  }
  const isMore = event.keys.shift || context.isKept === true
  return { state: start, selection: isMore ? [...new Set([...context.selection, ...inside])] : inside, isDone: true }
}
