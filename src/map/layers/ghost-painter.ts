import { isStation } from '#geo/plan/plan'
import type { PlannerStore } from '../../state/store'
import type { Ghost, HandleMark } from '../tools/tool'
import type { Frame, Painter } from './canvas-layer'
import { paintMark, paintStation } from './marks'
import { isStocked, reachOf, stationNumber } from './plan-painters'
import { paintShape } from './shapes'
import { trace } from './trace'

/** What is under way over the plan: shapes, handles, a selection box, and a sentence with its measure by the pointer. */
export function ghostPainter(
  store: PlannerStore,
  ghostNow: () => Ghost | null,
  measureNow: () => string | null,
): Painter {
  return frame => {
    const ghost = ghostNow()
    if (ghost === null) return
    ghost.shapes.forEach((shape, i) => {
      const { geometry, kind } = shape
      if (geometry.type === 'Point' || geometry.type === 'MultiPoint') paintGhostPoints(frame, store, ghost, i)
      else {
        frame.context.globalAlpha = 0.9
        paintShape(frame, kind, geometry, false)
        trace(frame, geometry)
        frame.context.globalAlpha = 1
        frame.context.lineWidth = 2.5
        frame.context.strokeStyle = frame.palette.accent
        frame.context.stroke()
      }
    })
    paintFrame(frame, ghost)
    paintHandles(frame, ghost)
    paintBox(frame, ghost)
    paintGuides(frame, ghost)
    for (const tape of ghost.tapes ?? []) paintTape(frame, tape)
    const text = [ghost.says ?? measureNow(), ghost.cue?.words].filter(Boolean).join('; ')
    if (text !== '' && ghost.pointer !== null) paintTag(frame, ghost.pointer, text)
  }
}

function paintGhostPoints(frame: Frame, store: PlannerStore, ghost: Ghost, index: number): void {
  const { geometry, kind } = ghost.shapes[index]!
  if (geometry.type !== 'Point' && geometry.type !== 'MultiPoint') return
  const points = geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates
  const state = store.getState()
  const { plan } = state.document
  // A station that is being moved keeps its own mark; hidden ids stand in the order of the shapes that replace them.
  const id = ghost.hidden[index]
  const stations = plan?.features.filter(isStation) ?? []
  const at = stations.findIndex(station => station.id === id)
  for (const point of points) {
    if (kind === 'station' && plan !== null) {
      paintStation(frame, point, {
        number: stationNumber(at < 0 ? undefined : stations[at], at < 0 ? stations.length : at),
        isStocked: id !== undefined && isStocked(plan, state.view.year, id),
        isSelected: true,
        reach: id === undefined ? null : reachOf(state, id),
      })
    } else paintMark(frame, kind, point)
  }
}

function paintHandles(frame: Frame, { handles }: Ghost): void {
  const { context, palette } = frame
  for (const handle of handles) {
    const { at, role } = handle
    const { x, y } = frame.toCanvas(at)
    if (role === 'turn') {
      paintTurn(frame, handle)
      continue
    }
    context.beginPath()
    const radius = role === 'midpoint' ? 5 : role === 'snap' ? 11 : 7
    context.arc(x, y, radius, 0, 2 * Math.PI)
    context.fillStyle = role === 'active' || role === 'first' ? palette.accent : palette.paper
    context.globalAlpha = role === 'snap' ? 0.4 : 1
    context.fill()
    context.globalAlpha = 1
    context.lineWidth = 2
    context.strokeStyle = palette.accent
    context.stroke()
  }
}

/** A ring on a stem, with an arrow going round in it. */
function paintTurn(frame: Frame, { at, stem, isActive }: Extract<HandleMark, { role: 'turn' }>): void {
  const { context, palette } = frame
  const { x, y } = frame.toCanvas(at)
  const from = frame.toCanvas(stem)
  context.beginPath()
  context.moveTo(from.x, from.y)
  context.lineTo(x, y)
  context.lineWidth = 2
  context.strokeStyle = palette.accent
  context.stroke()
  context.beginPath()
  context.arc(x, y, 12, 0, 2 * Math.PI)
  context.fillStyle = isActive ? palette.accent : palette.paper
  context.fill()
  context.stroke()
  context.strokeStyle = isActive ? palette.paper : palette.accent
  context.beginPath()
  context.arc(x, y, 6, -2.2, 1.6)
  context.moveTo(x - 4.2, y + 4.6)
  context.lineTo(x - 0.2, y + 6)
  context.lineTo(x + 1.2, y + 2)
  context.stroke()
}

/** Long dashes round what is being placed. */
function paintFrame(frame: Frame, { frame: line }: Ghost): void {
  if (line === undefined) return
  const { context, palette } = frame
  trace(frame, { type: 'LineString', coordinates: line })
  context.setLineDash([8, 5])
  context.lineWidth = 2
  context.strokeStyle = palette.accent
  context.stroke()
  context.setLineDash([])
}

/** The lines that the pointer follows: long dashes over paper, so that they are told from what is drawn. */
function paintGuides(frame: Frame, { cue }: Ghost): void {
  const { context, palette } = frame
  for (const guide of cue?.guides ?? []) {
    trace(frame, { type: 'LineString', coordinates: guide })
    context.lineWidth = 4
    context.strokeStyle = palette.paper
    context.stroke()
    context.setLineDash([12, 6])
    context.lineWidth = 2
    context.strokeStyle = palette.accent
    context.stroke()
    context.setLineDash([])
  }
}

/** A measure: a line of dots and dashes between rings, with its words at its middle. */
function paintTape(frame: Frame, { points, isArea, words }: NonNullable<Ghost['tapes']>[number]): void {
  const { context, palette } = frame
  const [first] = points
  const last = points.at(-1)
  if (first === undefined || last === undefined) return
  trace(frame, { type: 'LineString', coordinates: isArea ? [...points, first] : points })
  context.lineWidth = 5
  context.strokeStyle = palette.paper
  context.stroke()
  context.setLineDash([10, 3, 2, 3])
  context.lineWidth = 2
  context.strokeStyle = palette.ink
  context.stroke()
  context.setLineDash([])
  for (const at of points) {
    const { x, y } = frame.toCanvas(at)
    context.beginPath()
    context.arc(x, y, 4, 0, 2 * Math.PI)
    context.fillStyle = palette.paper
    context.fill()
    context.stroke()
  }
  const before = points.at(-2) ?? first
  if (words) paintTag(frame, isArea ? first : [(before[0] + last[0]) / 2, (before[1] + last[1]) / 2], words)
}

function paintBox(frame: Frame, { box }: Ghost): void {
  if (box === undefined) return
  const { context, palette } = frame
  const a = frame.toCanvas(box[0])
  const b = frame.toCanvas(box[1])
  context.setLineDash([5, 4])
  context.lineWidth = 1.5
  context.strokeStyle = palette.accent
  context.strokeRect(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(b.x - a.x), Math.abs(b.y - a.y))
  context.setLineDash([])
}

/** Room that the tools take at the right edge of a wide map, pixels. */
const toolsWidth = 210

/** A small paper tag beside the pointer, kept inside the view. */
function paintTag(frame: Frame, pointer: readonly [number, number, ...number[]], text: string): void {
  const { context, palette, view } = frame
  context.font = `600 13px ${palette.font}`
  const width = context.measureText(text).width + 16
  const { x, y } = frame.toCanvas(pointer)
  // To the left of the pointer where the tools at the right edge would cover it.
  const beside = x + 16 + width > view.right - toolsWidth ? x - 16 - width : x + 16
  const left = Math.min(Math.max(beside, view.left + 4), view.right - width - 4)
  const top = Math.min(Math.max(y + 16, view.top + 4), view.bottom - 32)
  context.beginPath()
  context.roundRect(left, top, width, 26, 6)
  context.fillStyle = palette.paper
  context.fill()
  context.lineWidth = 1
  context.strokeStyle = palette.ink2
  context.stroke()
  context.fillStyle = palette.ink
  context.textAlign = 'left'
  context.textBaseline = 'middle'
  context.fillText(text, left + 8, top + 14)
}
