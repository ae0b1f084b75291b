import { type RowLayout, rowBlock } from '#geo/plan/row-block'
import type { LngLat } from '#geo/space/plane'
import { bearing, distance, offset } from '#geo/space/shape'
import { counted, grouped } from '../../text/words'
import { type Draft, emptyDraft, stepDraft } from './draft'
import { draftHandles } from './draw-line'
import { ownSpacings } from './last-planting'
import { growsIn, newFeature } from './new-feature'
import { blockGhost } from './row-ghost'
import type { Figures, Ghost, OpenFigures, Tool, ToolContext, ToolEvent, ToolStatus } from './tool'
import { openLock } from './typed'

/** The first row's ends as a draft of two points; then the rows beside it. */
type State = {
  readonly line: Draft
  readonly typed: Pick<Figures, 'spacing' | 'rowSpacing' | 'rows'>
  /** The pointer once the first row is set: how far away the last row is to be, and on which side. */
  readonly pointer: LngLat | null
}

const start: State = { line: emptyDraft, typed: { spacing: null, rowSpacing: null, rows: null }, pointer: null }

/** As many rows as a block is given by one drag; more than that is a slip of the hand. */
export const mostRows = 500
export const mostPlants = 10_000

/**
 * A block by its rows: the first row from its first plant to its last, then the last row, by pointing at it or by
 * typing how many rows there are. The block is what samples to exactly these rows.
 */
export const drawRows: Tool<State> = {
  start,
  step(state, event, context) {
    const typed = typedNow(state, event)
    if (state.line.points.length < 2) return { ...firstRow({ ...state, typed }, event, context) }
    const now = { ...state, typed }
    switch (event.type) {
      case 'hover':
        return { state: { ...now, pointer: event.at } }
      case 'tap': {
        // The second of two quick presses on the row's end was meant for that end.
        if (event.count === 2) return { state: now }
        const there = { ...now, pointer: event.at }
        return typed.rows === null && rowsOf(there, context) < 2
          ? { state: there, notice: 'Press where the last row is to be, or type how many rows there are.' }
          : finished(there, context)
      }
      case 'finish':
      case 'put':
        return finished(now, context)
      case 'back':
      case 'remove':
        return { state: { ...now, line: { ...now.line, points: now.line.points.slice(0, -1) }, pointer: null } }
      case 'cancel':
        return { state: { ...start, typed } }
      case 'type': {
        // The length of the first row can still be put right.
        const { plants } = event.figures
        return { state: plants == null ? now : withPlants(now, plants, context) }
      }
      case 'press':
      case 'drag':
      case 'release':
      case 'lost':
      case 'nudge':
        return { state: now }
      default:
        return event satisfies never
    }
  },
  ghost(state, context) {
    const layout = layoutOf(state, context)
    return layout ? rowsGhost(state, layout, context) : lineGhost(state)
  },
  status,
}

function typedNow({ typed }: State, event: ToolEvent): State['typed'] {
  if (event.type !== 'type') return typed
  const { spacing = typed.spacing, rowSpacing = typed.rowSpacing, rows = typed.rows } = event.figures
  return { spacing, rowSpacing, rows }
}

function firstRow(state: State, event: ToolEvent, context: ToolContext) {
  const told = event.type === 'type' ? withLength(event, state, context) : event
  const { draft, isLeft } = stepDraft(state.line, told, context, { minimum: 3, closes: false })
  return { state: { ...state, line: draft }, ...(isLeft ? { isLeft } : {}) }
}

/** So many plants in the row are so long a row. */
function withLength(
  event: Extract<ToolEvent, { type: 'type' }>,
  state: State,
  context: ToolContext,
): Extract<ToolEvent, { type: 'type' }> {
  const { plants, ...figures } = event.figures
  const spacing = spacingsOf(state, context)?.spacing
  if (plants == null || spacing === undefined) return { type: 'type', figures }
  return { type: 'type', figures: { ...figures, length: Math.max(0.5, plants - 1) * spacing } }
}

function withPlants(state: State, plants: number, context: ToolContext): State {
  const { spacing } = spacingsOf(state, context) ?? {}
  const [a, b] = state.line.points
  if (!a || !b || spacing === undefined) return state
  const from = context.plane.toMetres(a)
  const to = offset(from, bearing(from, context.plane.toMetres(b)), Math.max(0.5, plants - 1) * spacing)
  return { ...state, line: { ...state.line, points: [a, context.plane.toLngLat(to)] } }
}

function spacingsOf({ typed }: State, context: ToolContext) {
  const { crop } = growsIn('block', context)
  const last = ownSpacings(context.plan, 'block', crop)
  const usual = context.spacingOf(crop)
  const spacing = typed.spacing ?? last.spacing ?? usual?.spacing
  const rowSpacing = typed.rowSpacing ?? last.rowSpacing ?? usual?.rowSpacing
  return spacing && rowSpacing ? { spacing, rowSpacing } : null
}

/** Metres from the first row to the pointer, to the right of it. */
function awayFrom(state: State, { plane }: ToolContext): number {
  const [a, b] = state.line.points
  if (!a || !b || state.pointer === null) return 0
  const from = plane.toMetres(a)
  const to = plane.toMetres(b)
  const here = plane.toMetres(state.pointer)
  const length = distance(from, to)
  return ((here.x - from.x) * (to.y - from.y) - (here.y - from.y) * (to.x - from.x)) / length
}

function rowsOf(state: State, context: ToolContext): number {
  const spacings = spacingsOf(state, context)
  if (spacings === null) return 1
  return Math.min(mostRows, Math.round(Math.abs(awayFrom(state, context)) / spacings.rowSpacing) + 1)
}

function layoutOf(state: State, context: ToolContext): RowLayout | null {
  const [a, b] = state.line.points
  const spacings = spacingsOf(state, context)
  if (!a || !b || spacings === null) return null
  const from = context.plane.toMetres(a)
  const to = context.plane.toMetres(b)
  const plants = Math.min(mostPlants, Math.floor(distance(from, to) / spacings.spacing + 1e-3) + 1)
  return {
    ...spacings,
    start: from,
    bearing: bearing(from, to),
    plants,
    rows: state.typed.rows ?? rowsOf(state, context),
    side: awayFrom(state, context) < 0 ? 'left' : 'right',
  }
}

function finished(state: State, context: ToolContext) {
  const layout = layoutOf(state, context)
  if (layout === null) return { state, notice: 'Type the plants’ distance in the row and between rows first.' }
  const { geometry, bearing: along } = rowBlock(layout, context.plane, context.plan.features)
  const { spacing, rowSpacing } = layout
  const own = { spacing, rowSpacing, bearing: along }
  const { id, edit } = newFeature('block', geometry, context, own)
  return { state: { ...start, typed: { ...state.typed, rows: null } }, edit, selection: [id], isDone: true }
}

function lineGhost({ line }: State): Ghost {
  const { points, pointer, snap } = line
  const ends = pointer && points.length === 1 ? [...points, pointer] : points
  const isShown = ends.length === 2 && (ends[0]![0] !== ends[1]![0] || ends[0]![1] !== ends[1]![1])
  const geometry = isShown ? ({ type: 'LineString', coordinates: ends } as const) : null
  return {
    shapes: geometry ? [{ kind: 'row', geometry }] : [],
    handles: draftHandles(line),
    hidden: [],
    measure: geometry ? { kind: 'row', geometry } : null,
    pointer: pointer ?? points.at(-1) ?? null,
    ...(snap ? { cue: snap } : {}),
  }
}

function rowsGhost(state: State, layout: RowLayout, context: ToolContext): Ghost {
  const { geometry } = rowBlock(layout, context.plane, context.plan.features)
  return {
    shapes: [{ kind: 'block', geometry }, ...blockGhost(geometry, context.plane, layout)],
    handles: draftHandles({ points: state.line.points, snap: null }),
    hidden: [],
    measure: null,
    pointer: state.pointer ?? state.line.points.at(-1) ?? null,
    says: saysRows(layout),
  }
}

function saysRows({ rows, plants }: RowLayout): string {
  return `${counted(rows, 'row')} of ${grouped(plants)}, ${counted(rows * plants, 'plant')}`
}

function status(state: State, context: ToolContext): ToolStatus {
  const { line, typed } = state
  const layout = layoutOf(state, context)
  const [first] = line.points
  const spacings = spacingsOf({ ...state, typed: { ...typed, spacing: null, rowSpacing: null } }, context)
  const shared: OpenFigures = {
    spacing: { typed: typed.spacing, live: spacings?.spacing ?? null },
    rowSpacing: { typed: typed.rowSpacing, live: spacings?.rowSpacing ?? null },
    rows: { typed: typed.rows, live: layout?.rows ?? null },
  }
  const plants = { typed: null, live: layout?.plants ?? null }
  const isFirst = line.points.length < 2
  const own = first === undefined ? {} : isFirst ? openLock(first, line.pointer, line.lock, context) : {}
  const canPut = isFirst ? first !== undefined && line.lock.length !== null : layout !== null && layout.rows > 0
  return {
    points: line.points.length,
    canFinish: false,
    hasVertex: false,
    grows: growsIn('block', context),
    figures: first === undefined ? shared : { ...own, plants, ...shared },
    ...(isFirst ? {} : { asked: 'rows' as const }),
    ...(canPut
      ? { putWords: isFirst || layout === null ? 'Set the end of the row' : `Plant ${saysRows(layout)}` }
      : {}),
  }
}
