import type { Feature, Geometry } from '#geo/plan/plan'
import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { growsIn, newFeature } from './new-feature'
import type { HandleMark, Tool, ToolContext } from './tool'

export type LineKind = 'row' | 'windbreak'

const minimum = 2

/** Draws a line point by point, straight or with bends. */
export function drawLine(kind: LineKind): Tool<Draft> {
  return {
    start: emptyDraft,
    step(state, event, context) {
      const { draft, isFinished, isLeft } = stepDraft(state, event, context, { minimum, closes: false })
      if (isLeft) return { state: draft, isLeft }
      if (!isFinished) return { state: draft }
      const { id, edit } = newFeature(kind, { type: 'LineString', coordinates: draft.points }, context)
      return { state: { ...emptyDraft, pointer: draft.pointer }, edit, selection: [id], isDone: true }
    },
    ghost(draft, context) {
      const coordinates = withPointer(draft)
      const geometry: Geometry | null = coordinates.length >= 2 ? { type: 'LineString', coordinates } : null
      return {
        shapes: geometry ? [{ kind, geometry }] : [],
        handles: draftHandles(draft),
        hidden: [],
        measure: geometry ? { kind, geometry, ...cropOf(kind, geometry, context) } : null,
        pointer: draft.pointer ?? draft.points.at(-1) ?? null,
        ...(draft.snap ? { cue: draft.snap } : {}),
      }
    },
    status: (draft, context) => ({
      ...draftStatus(draft, minimum, context),
      ...(kind === 'row' ? { grows: growsIn(kind, context) } : {}),
    }),
  }
}

/** A row is measured by the crop it gets. */
function cropOf(kind: LineKind, geometry: Geometry, context: ToolContext): { readonly feature?: Feature } {
  if (kind !== 'row') return {}
  const { crop } = growsIn(kind, context)
  return { feature: { type: 'Feature', id: '', geometry, properties: { kind, crop } } as Feature }
}

/** The points set, and the corner that the next one would fall onto. */
export function draftHandles(
  { points, snap }: Pick<Draft, 'points' | 'snap'>,
  first: 'first' | 'vertex' = 'vertex',
): readonly HandleMark[] {
  const marks = points.map((at, i): HandleMark => ({ at, role: i === 0 ? first : 'vertex' }))
  return snap ? [...marks, { at: snap.at, role: 'snap' }] : marks
}
