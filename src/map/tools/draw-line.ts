import type { Feature, Geometry } from '#geo/plan/plan'
import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { ownSpacings } from './last-planting'
import { growsIn, newFeature } from './new-feature'
import type { HandleMark, Tool, ToolContext, ToolEvent } from './tool'

export type LineKind = 'row' | 'windbreak'

const minimum = 2

type State = {
  readonly draft: Draft
  /** Metres typed from plant to plant of a row; null = as in the row before, else as usual for the crop. */
  readonly spacing: number | null
}

/** Draws a line point by point, straight or with bends. */
export function drawLine(kind: LineKind): Tool<State> {
  return {
    start: { draft: emptyDraft, spacing: null },
    step(state, event, context) {
      const spacing = typedSpacing(state, event)
      const { draft, isFinished, isLeft } = stepDraft(state.draft, event, context, { minimum, closes: false })
      if (isLeft) return { state: { draft, spacing }, isLeft }
      if (!isFinished) return { state: { draft, spacing } }
      const own = kind === 'row' ? ownOf(spacing, context) : {}
      const { id, edit } = newFeature(kind, { type: 'LineString', coordinates: draft.points }, context, own)
      // The next row most likely stands as wide.
      const next = { draft: { ...emptyDraft, pointer: draft.pointer }, spacing }
      return { state: next, edit, selection: [id], isDone: true }
    },
    ghost({ draft, spacing }, context) {
      const coordinates = withPointer(draft)
      const geometry: Geometry | null = coordinates.length >= 2 ? { type: 'LineString', coordinates } : null
      return {
        shapes: geometry ? [{ kind, geometry }] : [],
        handles: draftHandles(draft),
        hidden: [],
        measure: geometry ? { kind, geometry, ...rowOf(kind, geometry, spacing, context) } : null,
        pointer: draft.pointer ?? draft.points.at(-1) ?? null,
        ...(draft.snap ? { cue: draft.snap } : {}),
      }
    },
    status({ draft, spacing }, context) {
      const shared = draftStatus(draft, minimum, context)
      if (kind !== 'row') return shared
      const grows = growsIn(kind, context)
      const live = ownOf(null, context).spacing ?? context.spacingOf(grows.crop)?.spacing ?? null
      return { ...shared, grows, figures: { ...shared.figures, spacing: { typed: spacing, live } } }
    },
  }
}

function typedSpacing({ spacing: before }: State, event: ToolEvent): number | null {
  if (event.type !== 'type') return before
  const { spacing = before } = event.figures
  return spacing
}

/** What the row keeps of its own: what was typed, and the spacings of the row before where it had its own. */
function ownOf(
  typed: number | null,
  context: ToolContext,
): { readonly spacing?: number; readonly rowSpacing?: number } {
  const last = ownSpacings(context.plan, 'row', growsIn('row', context).crop)
  const spacing = typed ?? last.spacing
  return { ...(spacing ? { spacing } : {}), ...(last.rowSpacing ? { rowSpacing: last.rowSpacing } : {}) }
}

/** A row is measured by the crop and spacing it gets. */
function rowOf(
  kind: LineKind,
  geometry: Geometry,
  spacing: number | null,
  context: ToolContext,
): { readonly feature?: Feature } {
  if (kind !== 'row') return {}
  const properties = { kind, crop: growsIn(kind, context).crop, ...ownOf(spacing, context) }
  return { feature: { type: 'Feature', id: '', geometry, properties } as Feature }
}

/** The points set, and the corner that the next one would fall onto. */
export function draftHandles(
  { points, snap }: Pick<Draft, 'points' | 'snap'>,
  first: 'first' | 'vertex' = 'vertex',
): readonly HandleMark[] {
  const marks = points.map((at, i): HandleMark => ({ at, role: i === 0 ? first : 'vertex' }))
  return snap ? [...marks, { at: snap.at, role: 'snap' }] : marks
}
