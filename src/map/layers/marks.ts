import type { Feature, FeatureKind } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { pixelsPerMetre } from '../mercator'
import { stationHalf } from '../tools/hit'
import type { Frame } from './canvas-layer'

export type StationLook = {
  /** Shown inside the mark. */
  readonly number: number
  /** Holds cocoons in the season that is looked at. */
  readonly isStocked: boolean
  readonly isSelected: boolean
  /** Not there yet: its outline is dashed. */
  readonly isSuggested?: boolean
  /** Radius of a circle to draw round it, m; null for none. */
  readonly reach: number | null
  /** Half the mark's side, pixels: less than usual where stations would cover one another and the plants. */
  readonly half?: number
}

/** A station: a rounded square with three holes and its number; without bees an outline only. */
export function paintStation(frame: Frame, at: LngLat, look: StationLook): void {
  const { context, palette } = frame
  const { x, y } = frame.toCanvas(at)
  if (look.reach !== null) paintReach(frame, at, look.reach)
  const half = look.half ?? stationHalf
  const scale = half / stationHalf
  context.beginPath()
  context.roundRect(x - half, y - half, 2 * half, 2 * half, 6 * scale)
  if (look.isSelected) {
    context.lineWidth = 9
    context.strokeStyle = palette.paper
    context.stroke()
    context.lineWidth = 6
    context.strokeStyle = palette.accent
    context.stroke()
  }
  context.fillStyle = look.isStocked ? palette.ink : palette.paper
  context.fill()
  context.lineWidth = scale < 1 && !look.isSuggested ? 1 : 2
  context.strokeStyle = look.isStocked ? palette.paper : palette.ink
  if (look.isSuggested) context.setLineDash([5, 4])
  context.stroke()
  context.setLineDash([])
  const marks = look.isStocked ? palette.paper : palette.ink
  const isRead = scale > 0.7
  context.lineWidth = 1.5 * scale
  context.strokeStyle = marks
  context.fillStyle = marks
  for (const shift of [-8, 0, 8]) {
    context.beginPath()
    context.arc(x + shift * scale, isRead ? y - 7 * scale : y, 2.6 * scale, 0, 2 * Math.PI)
    if (look.isStocked) context.fill()
    else context.stroke()
  }
  if (!isRead) return
  context.font = `600 ${Math.round(13 * scale)}px ${palette.font}`
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  context.fillText(String(look.number), x, y + 5 * scale)
}

/** Half the side of stations' marks so that neighbours leave room between them, pixels. */
export function stationHalfAt(places: readonly { readonly x: number; readonly y: number }[]): number {
  const gaps = places
    .map((a, i) =>
      places.reduce((least, b, j) => (i === j ? least : Math.min(least, Math.hypot(a.x - b.x, a.y - b.y))), Infinity),
    )
    .toSorted((a, b) => a - b)
  const usual = gaps[gaps.length >> 1] ?? Number.POSITIVE_INFINITY
  return Math.max(smallestHalf, Math.min(stationHalf, usual / 3))
}

const smallestHalf = 5

/** Circle of the typical foraging radius. */
function paintReach(frame: Frame, at: LngLat, metres: number): void {
  const { context, palette } = frame
  const { x, y } = frame.toCanvas(at)
  context.beginPath()
  context.arc(x, y, metres * pixelsPerMetre(at[1], frame.worldSize), 0, 2 * Math.PI)
  context.setLineDash([6, 5])
  context.lineWidth = 1.5
  context.strokeStyle = palette.accent
  context.stroke()
  context.setLineDash([])
}

/** A drop for a mud point. */
export function paintMud(frame: Frame, at: LngLat, isSelected: boolean): void {
  const { context, palette } = frame
  const { x, y } = frame.toCanvas(at)
  context.beginPath()
  context.moveTo(x, y - 11)
  context.bezierCurveTo(x + 3, y - 4, x + 8, y, x + 8, y + 4)
  context.arc(x, y + 4, 8, 0, Math.PI)
  context.bezierCurveTo(x - 8, y, x - 3, y - 4, x, y - 11)
  outline(context, isSelected ? palette.accent : palette.ink, palette.paper, isSelected)
}

/** A place where a station may stand. */
export function paintCandidate(frame: Frame, at: LngLat, isSelected: boolean): void {
  const { context, palette } = frame
  const { x, y } = frame.toCanvas(at)
  context.beginPath()
  context.roundRect(x - 9, y - 9, 18, 18, 4)
  context.setLineDash([4, 3])
  outline(context, isSelected ? palette.accent : palette.ink2, palette.paper, isSelected)
  context.setLineDash([])
}

function outline(context: CanvasRenderingContext2D, colour: string, paper: string, isStrong: boolean): void {
  context.fillStyle = paper
  context.fill()
  context.lineWidth = isStrong ? 4 : 2
  context.strokeStyle = colour
  context.stroke()
}

/** A ring round each plant of a selected point planting, whose plants have no outline of their own. */
export function paintPlantRings(frame: Frame, feature: Feature): void {
  const { geometry } = feature
  if (geometry.type !== 'Point' && geometry.type !== 'MultiPoint') return
  const { context, palette } = frame
  for (const at of geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates) {
    const { x, y } = frame.toCanvas(at)
    context.beginPath()
    context.arc(x, y, 9, 0, 2 * Math.PI)
    context.lineWidth = 3
    context.strokeStyle = palette.accent
    context.stroke()
  }
}

/** A mark in the manner of its kind, for a thing under way. */
export function paintMark(frame: Frame, kind: FeatureKind, at: LngLat): void {
  if (kind === 'mud') paintMud(frame, at, true)
  else if (kind === 'candidate') paintCandidate(frame, at, true)
  else {
    const { context, palette } = frame
    const { x, y } = frame.toCanvas(at)
    context.beginPath()
    context.arc(x, y, 6, 0, 2 * Math.PI)
    context.fillStyle = palette.accent
    context.fill()
  }
}
