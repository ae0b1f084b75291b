import type { Block, Geometry, PolygonGeometry } from '#geo/plan/plan'
import { type PolygonFault, polygonFault } from '#geo/space/ring'
import { type Draft, draftStatus, emptyDraft, stepDraft, withPointer } from './draft'
import { draftHandles } from './draw-line'
import { ownSpacings } from './last-planting'
import { growsIn, longestSide, newFeature } from './new-feature'
import { closedRing } from './positions'
import { blockGhost } from './row-ghost'
import type { Figures, Ghost, Tool, ToolContext, ToolEvent } from './tool'

export type RingKind = 'block' | 'bed' | 'forage' | 'keepout' | 'boundary'

const minimum = 3

type Rows = Pick<Figures, 'along' | 'spacing' | 'rowSpacing'>

type State = {
  readonly draft: Draft
  /** What was typed for the rows of a block. */
  readonly rows: Rows
}

const start: State = { draft: emptyDraft, rows: { along: null, spacing: null, rowSpacing: null } }

/** Draws an outline corner by corner. One that bounds no area is not taken; its corners stay to be put right. */
export function drawRing(kind: RingKind): Tool<State> {
  return {
    start,
    step(state, event, context) {
      const rows = kind === 'block' ? typedRows(state.rows, event) : state.rows
      const { draft, isFinished, isLeft } = stepDraft(state.draft, event, context, { minimum, closes: true })
      if (isLeft) return { state: { draft, rows }, isLeft }
      if (!isFinished) return { state: { draft, rows } }
      const coordinates = [closedRing(draft.points, context.plane)]
      const fault = polygonFault(coordinates)
      if (fault) {
        const notice = `${faultWords[fault.fault]} Take off the last corner and go on.`
        return { state: { draft, rows }, notice }
      }
      const own = kind === 'block' ? ownOf(rows, context) : {}
      const { id, edit } = newFeature(kind, { type: 'Polygon', coordinates }, context, own)
      // The next block has its own direction, but most likely these spacings.
      const next = { draft: { ...emptyDraft, pointer: draft.pointer }, rows: { ...rows, along: null } }
      return { state: next, edit, selection: [id], isDone: true }
    },
    ghost({ draft, rows }, context) {
      const points = withPointer(draft)
      const geometry = underWay(points, context.plane)
      const canClose = draft.points.length >= minimum
      const block = kind === 'block' && geometry?.type === 'Polygon' ? blockOf(geometry, rows, context) : null
      return {
        shapes: geometry ? [{ kind, geometry }, ...(block ? rowsWithin(block, context) : [])] : [],
        handles: draftHandles(draft, canClose ? 'first' : 'vertex'),
        hidden: [],
        measure: geometry ? { kind, geometry, ...(block ? { feature: block } : {}) } : null,
        pointer: draft.pointer ?? draft.points.at(-1) ?? null,
        ...(draft.snap ? { cue: draft.snap } : {}),
      }
    },
    status({ draft, rows }, context) {
      const shared = draftStatus(draft, minimum, context)
      if (kind === 'bed') return { ...shared, grows: growsIn(kind, context) }
      if (kind !== 'block') return shared
      const geometry = underWay(withPointer(draft), context.plane)
      const live = figuresOf({ along: null, spacing: null, rowSpacing: null }, geometry, context)
      return {
        ...shared,
        grows: growsIn(kind, context),
        figures: {
          ...shared.figures,
          spacing: { typed: rows.spacing, live: live.spacing ?? null },
          rowSpacing: { typed: rows.rowSpacing, live: live.rowSpacing ?? null },
          along: { typed: rows.along, live: geometry?.type === 'Polygon' ? live.bearing : null },
        },
      }
    },
  }
}

function typedRows(rows: Rows, event: ToolEvent): Rows {
  if (event.type !== 'type') return rows
  const { along = rows.along, spacing = rows.spacing, rowSpacing = rows.rowSpacing } = event.figures
  return { along, spacing, rowSpacing }
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

/** Direction and spacings of a block under way: what was typed, else along its longest side, as the block before. */
function figuresOf({ along, spacing, rowSpacing }: Rows, geometry: Geometry | null, context: ToolContext) {
  const { crop } = growsIn('block', context)
  const last = ownSpacings(context.plan, 'block', crop)
  const usual = context.spacingOf(crop)
  const ring = geometry?.type === 'Polygon' ? (geometry.coordinates[0] ?? []) : []
  return {
    bearing: along === null ? longestSide(ring, context.plane) : ((along % 180) + 180) % 180,
    spacing: spacing ?? last.spacing ?? usual?.spacing,
    rowSpacing: rowSpacing ?? last.rowSpacing ?? usual?.rowSpacing,
  }
}

/** What the finished block keeps of its own: what was typed, and the spacings of the block before where it had its own. */
function ownOf({ along, ...typed }: Rows, context: ToolContext): Readonly<Record<string, number>> {
  const { crop } = growsIn('block', context)
  const last = ownSpacings(context.plan, 'block', crop)
  const spacing = typed.spacing ?? last.spacing
  const rowSpacing = typed.rowSpacing ?? last.rowSpacing
  return {
    ...(spacing ? { spacing } : {}),
    ...(rowSpacing ? { rowSpacing } : {}),
    ...(along === null ? {} : { bearing: ((along % 180) + 180) % 180 }),
  }
}

/** The block as it would be were it finished now. */
function blockOf(geometry: PolygonGeometry, rows: Rows, context: ToolContext): Block {
  const { bearing, spacing, rowSpacing } = figuresOf(rows, geometry, context)
  const { crop } = growsIn('block', context)
  const spacings = { ...(spacing ? { spacing } : {}), ...(rowSpacing ? { rowSpacing } : {}) }
  return { type: 'Feature', id: '', geometry, properties: { kind: 'block', crop, bearing, ...spacings } }
}

/** Its rows, clipped to the outline. */
function rowsWithin({ geometry, properties }: Block, { plane }: ToolContext): Ghost['shapes'] {
  const { bearing = 0, spacing, rowSpacing } = properties
  if (spacing === undefined || rowSpacing === undefined || polygonFault(geometry.coordinates) !== null) return []
  return blockGhost(geometry, plane, { spacing, rowSpacing, bearing })
}

/** A line from two points on, an outline from three on. */
function underWay(points: ReturnType<typeof withPointer>, plane: Parameters<typeof closedRing>[1]): Geometry | null {
  if (points.length < 2) return null
  if (points.length === 2) return { type: 'LineString', coordinates: points }
  return { type: 'Polygon', coordinates: [closedRing(points, plane)] }
}
