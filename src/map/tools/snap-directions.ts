import type { Feature } from '#geo/plan/plan'
import type { LngLat, Metres } from '#geo/space/plane'
import { distance } from '#geo/space/shape'
import { presentIn } from './present'
import type { ToolContext } from './tool'

/** A direction that the next point likes: a unit vector, why, and the line it comes from. */
export type Leading = {
  readonly along: Metres
  readonly words: string
  readonly guides: readonly (readonly LngLat[])[]
}

/** Straight on from the last side and square to it; along and square to the row or edge nearest to the last point. */
export function directionsFor(from: readonly LngLat[], context: ToolContext, except?: string): readonly Leading[] {
  const last = from.at(-1)
  if (last === undefined) return []
  const before = from.at(-2)
  const side = before ? unit(context.plane.toMetres(before), context.plane.toMetres(last)) : null
  const own: Leading[] = side
    ? [
        { along: square(side), words: 'right angle', guides: [] },
        { along: side, words: 'straight on', guides: [] },
      ]
    : []
  const near = nearestSide(last, context, except)
  if (near === null) return own
  return [
    ...own,
    { along: near.along, words: `parallel to ${near.name}`, guides: [near.line] },
    { along: square(near.along), words: `square to ${near.name}`, guides: [near.line] },
  ]
}

/** A length that the next side likes to have, m: that of a side before, or of the row or edge nearest to its beginning. */
export type Alike = {
  readonly length: number
  readonly words: string
  readonly guides: readonly (readonly LngLat[])[]
}

export function lengthsFor(from: readonly LngLat[], context: ToolContext, except?: string): readonly Alike[] {
  const last = from.at(-1)
  if (last === undefined) return []
  const own = from.slice(1).map((b, i): Alike => {
    const a = from[i]!
    const words = i === from.length - 2 ? 'as long as the side before' : `as long as side ${i + 1}`
    return { length: lengthOf(a, b, context), words, guides: [[a, b]] }
  })
  const near = nearestSide(last, context, except)
  if (near === null) return own
  return [...own, { length: lengthOf(...near.line, context), words: `as long as ${near.name}`, guides: [near.line] }]
}

function lengthOf(a: LngLat, b: LngLat, { plane }: ToolContext): number {
  return distance(plane.toMetres(a), plane.toMetres(b))
}

type Side = { readonly along: Metres; readonly name: string; readonly line: readonly [LngLat, LngLat] }

/** The side or row that begins, ends or passes nearest, by its ends and middle. */
function nearestSide(at: LngLat, context: ToolContext, except?: string): Side | null {
  const east = Math.cos((at[1] * Math.PI) / 180)
  let nearest = Number.POSITIVE_INFINITY
  let best: { a: LngLat; b: LngLat; feature: Feature } | null = null
  for (const feature of presentIn(context)) {
    if (feature.id === except) continue
    for (const line of linesOf(feature)) {
      for (let i = 1; i < line.length; i += 1) {
        const a = line[i - 1]!
        const b = line[i]!
        const away = toSegment(at, a, b, east)
        if (away >= nearest) continue
        nearest = away
        best = { a, b, feature }
      }
    }
  }
  if (best === null) return null
  const along = unit(context.plane.toMetres(best.a), context.plane.toMetres(best.b))
  if (along === null) return null
  const { name, kind } = best.feature.properties
  return { along, name: name || `this ${kind}`, line: [best.a, best.b] }
}

/** In degrees of latitude; good enough to tell the nearest. */
function toSegment(p: LngLat, a: LngLat, b: LngLat, east: number): number {
  const dx = (b[0] - a[0]) * east
  const dy = b[1] - a[1]
  const px = (p[0] - a[0]) * east
  const py = p[1] - a[1]
  const length2 = dx * dx + dy * dy
  const share = length2 > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / length2)) : 0
  return Math.hypot(px - share * dx, py - share * dy)
}

function linesOf({ geometry }: Feature): readonly (readonly LngLat[])[] {
  if (geometry.type === 'LineString') return [geometry.coordinates]
  return geometry.type === 'Polygon' ? geometry.coordinates : []
}

function unit(a: Metres, b: Metres): Metres | null {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return length > 0 ? { x: (b.x - a.x) / length, y: (b.y - a.y) / length } : null
}

function square({ x, y }: Metres): Metres {
  return { x: -y, y: x }
}
