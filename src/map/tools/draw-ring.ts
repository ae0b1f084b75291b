import type { Geometry } from '#geo/plan/plan'
import { type PolygonFault, polygonFault } from '#geo/space/ring'
import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { draftHandles } from './draw-line'
import { ownSpacings } from './last-planting'
import { cropFor, longestSide, newFeature } from './new-feature'
import { closedRing } from './positions'
import { blockGhost } from './row-ghost'
import type { Ghost, Tool, ToolContext } from './tool'

export type RingKind = 'block' | 'bed' | 'forage' | 'keepout' | 'boundary'

const minimum = 3

/** Draws an outline corner by corner. One that bounds no area is not taken; its corners stay to be put right. */
export function drawRing(kind: RingKind): Tool<Draft> {
  return {
    start: emptyDraft,
    step(state, event, context) {
      const { draft, isFinished, isLeft } = stepDraft(state, event, context, { minimum, closes: true })
      if (isLeft) return { state: draft, isLeft }
      if (!isFinished) return { state: draft }
      const coordinates = [closedRing(draft.points, context.plane)]
      const fault = polygonFault(coordinates)
      if (fault) return { state: draft, notice: `${faultWords[fault.fault]} Take off the last corner and go on.` }
      const own = kind === 'block' ? spacingsTyped(context) : {}
      const { id, edit } = newFeature(kind, { type: 'Polygon', coordinates }, context, own)
      return { state: { ...emptyDraft, pointer: draft.pointer }, edit, selection: [id], isDone: true }
    },
    ghost(draft, context) {
      const points = withPointer(draft)
      const geometry = underWay(points, context.plane)
      const canClose = draft.points.length >= minimum
      return {
        shapes: geometry ? [{ kind, geometry }, ...(kind === 'block' ? rowsWithin(geometry, context) : [])] : [],
        handles: draftHandles(draft, canClose ? 'first' : 'vertex'),
        hidden: [],
        measure: geometry ? { kind, geometry } : null,
        pointer: draft.pointer ?? draft.points.at(-1) ?? null,
        ...(draft.snap ? { cue: draft.snap } : {}),
      }
    },
    status: (draft, context) => draftStatus(draft, minimum, context),
  }
}

/** Why an outline cannot be taken. */
export const faultWords: Readonly<Record<PolygonFault, string>> = {
  short: 'An outline needs three different corners.',
  open: 'The outline is not closed.',
  long: 'The outline has too many corners.',
  crossing: 'The outline crosses itself.',
  flat: 'The corners lie on one line and enclose nothing.',
  outside: 'The hole would lie outside the outline.',
  overlap: 'Two holes would lie over each other.',
}

/** The spacings of the block before this one, where it had its own. */
function spacingsTyped({ plan }: ToolContext): { readonly spacing?: number; readonly rowSpacing?: number } {
  const { spacing, rowSpacing } = ownSpacings(plan, 'block')
  return { ...(spacing ? { spacing } : {}), ...(rowSpacing ? { rowSpacing } : {}) }
}

/** The rows that a block under way would get: along its longest side, at its crop's spacings. */
function rowsWithin(geometry: Geometry, context: ToolContext): Ghost['shapes'] {
  const { plan, plane } = context
  const usual = context.spacingOf(cropFor(plan, 'block'))
  const spacings = usual && { ...usual, ...spacingsTyped(context) }
  if (geometry.type !== 'Polygon' || spacings === null) return []
  if (polygonFault(geometry.coordinates) !== null) return []
  const bearing = longestSide(geometry.coordinates[0] ?? [], plane)
  return blockGhost(geometry, plane, { ...spacings, bearing })
}

/** A line from two points on, an outline from three on. */
function underWay(points: ReturnType<typeof withPointer>, plane: Parameters<typeof closedRing>[1]): Geometry | null {
  if (points.length < 2) return null
  if (points.length === 2) return { type: 'LineString', coordinates: points }
  return { type: 'Polygon', coordinates: [closedRing(points, plane)] }
}
