import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { draftHandles } from './draw-line'
import { tapeText } from './tape'
import { pixelDistance, type Tool, tolerance } from './tool'

const minimum = 2

/** Measures a way or, closed on its first point, an area. What was measured is kept beside the plan, not in it. */
export const drawTape: Tool<Draft> = {
  start: emptyDraft,
  step(state, event, context) {
    const { points } = state
    const [first] = points
    const isOnFirst =
      event.type === 'tap' &&
      first !== undefined &&
      pixelDistance(context.toPixel(first), event.pixel) <= tolerance(event.pointer)
    const isArea = points.length > 2 && isOnFirst
    const { draft, isFinished, isLeft } = stepDraft(state, event, context, { minimum, closes: isArea })
    if (isLeft) return { state: draft, isLeft }
    if (!isFinished) return { state: draft }
    return { state: { ...emptyDraft, pointer: draft.pointer }, tape: { points, isArea }, isDone: true }
  },
  ghost(draft, context) {
    const points = withPointer(draft)
    const under = { points, isArea: false }
    const says = tapeText(under, context.plan.units)
    return {
      shapes: [],
      handles: draftHandles(draft, draft.points.length > 2 ? 'first' : 'vertex'),
      hidden: [],
      measure: null,
      pointer: draft.pointer ?? draft.points.at(-1) ?? null,
      tapes: points.length > 1 ? [{ ...under, words: '' }] : [],
      ...(says ? { says } : {}),
      ...(draft.snap ? { cue: draft.snap } : {}),
    }
  },
  status: (draft, context) => draftStatus(draft, minimum, context),
}
