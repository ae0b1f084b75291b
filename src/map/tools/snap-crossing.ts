import type { LngLat, Metres } from '#geo/space/plane'
import { distance } from '#geo/space/shape'
import type { Alike, Leading } from './snap-directions'
import type { Pointed, Snap } from './snap-point'
import { pixelDistance, type ToolContext } from './tool'

/** How far from the pointer two attractions may cross and still be meant both, pixels. */
const crossingDistance = 16
/** Crossings nearer to each other than this are one for the eye, pixels. */
const clearly = 1
/** Lines that meet at less than this (sine of the angle) cross too far off to be meant. */
const leastAngle = 0.15
/** A way shorter than so many times its distance from a direction has no direction yet. */
const leastWay = 6
/** A crossing this far past the end of a side still lies on it, as a share of the side. */
const overhang = 1e-9

/** A line or a circle that the next point likes to lie on; all in the plan's plane. */
export type Attraction = {
  readonly words: string
  /** What it belongs to: two sides of one outline cross at its corner, which attracts by itself. */
  readonly origin: string
  guidesTo(at: LngLat): readonly (readonly LngLat[])[]
} & (
  | { readonly type: 'line'; readonly from: Metres; readonly along: Metres; readonly length: number | null }
  | { readonly type: 'circle'; readonly from: Metres; readonly radius: number }
)

/** The straight sides of a chain that are near the pointer. */
export function straightNear(
  { line, words, origin }: { readonly line: readonly LngLat[]; readonly words: string; readonly origin: string },
  event: Pointed,
  context: ToolContext,
  within: number,
): readonly Attraction[] {
  return line.slice(1).flatMap((b, i): readonly Attraction[] => {
    const a = line[i]!
    const [from, to] = [context.plane.toMetres(a), context.plane.toMetres(b)]
    const length = distance(from, to)
    if (length === 0) return []
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
    const side: Attraction = { type: 'line', from, along, length, words, origin, guidesTo: () => [[a, b]] }
    return isNearTo(side, event, context, within) ? [side] : []
  })
}

/** The direction in which the next side likes to go. */
export function rayFrom(from: Metres, last: LngLat, { along, words, guides }: Leading): Attraction {
  return { type: 'line', from, along, length: null, words, origin: 'last', guidesTo: at => [[last, at], ...guides] }
}

/** The length that the next side likes to have. */
export function circleAbout(from: Metres, last: LngLat, { length, words, guides }: Alike): Attraction {
  return { type: 'circle', from, radius: length, words, origin: 'length', guidesTo: at => [[last, at], ...guides] }
}

export function isNearTo(attraction: Attraction, event: Pointed, context: ToolContext, within: number): boolean {
  const here = context.plane.toMetres(event.at)
  const foot = footOn(attraction, here)
  if (foot === null) return false
  if (attraction.type === 'line' && attraction.length === null) {
    if (distance(attraction.from, foot) < leastWay * distance(here, foot)) return false
  }
  return pixelDistance(context.toPixel(context.plane.toLngLat(foot)), event.pixel) <= within
}

function footOn(attraction: Attraction, here: Metres): Metres | null {
  const { from } = attraction
  const [dx, dy] = [here.x - from.x, here.y - from.y]
  if (attraction.type === 'circle') {
    const length = Math.hypot(dx, dy)
    if (length === 0) return null
    return { x: from.x + (dx / length) * attraction.radius, y: from.y + (dy / length) * attraction.radius }
  }
  const t = dx * attraction.along.x + dy * attraction.along.y
  if (attraction.length !== null && (t < 0 || t > attraction.length)) return null
  return { x: from.x + t * attraction.along.x, y: from.y + t * attraction.along.y }
}

/** Where two of the attractions cross nearest to the pointer, with the words and lines of both; null where none do. */
export function nearestCrossing(attractions: readonly Attraction[], event: Pointed, context: ToolContext): Snap | null {
  let best: { readonly at: LngLat; readonly both: readonly [Attraction, Attraction] } | null = null
  let nearest = crossingDistance
  attractions.forEach((a, i) => {
    for (const b of attractions.slice(i + 1)) {
      if (a.origin !== '' && a.origin === b.origin) continue
      for (const point of crossings(a, b)) {
        const at = context.plane.toLngLat(point)
        const away = pixelDistance(context.toPixel(at), event.pixel)
        // What is named first is nearer at hand: another must be clearly nearer to the pointer.
        if (away > (best === null ? nearest : nearest - clearly)) continue
        nearest = away
        best = { at, both: [a, b] }
      }
    }
  })
  if (best === null) return null
  const { at, both } = best as { at: LngLat; both: readonly [Attraction, Attraction] }
  return { at, words: `${both[0].words} and ${both[1].words}`, guides: both.flatMap(each => each.guidesTo(at)) }
}

/** Where two lines, or a line and a circle, cross; m. Two circles are about one point and never do. */
export function crossings(a: Attraction, b: Attraction): readonly Metres[] {
  if (a.type === 'circle') return b.type === 'circle' ? [] : crossings(b, a)
  const [dx, dy] = [b.from.x - a.from.x, b.from.y - a.from.y]
  if (b.type === 'circle') {
    const middle = dx * a.along.x + dy * a.along.y
    const aside = dx * a.along.y - dy * a.along.x
    // One that just touches crosses nowhere in particular.
    if (Math.abs(aside) > b.radius * Math.sqrt(1 - leastAngle ** 2)) return []
    const half = Math.sqrt(b.radius ** 2 - aside ** 2)
    return [middle - half, middle + half].filter(t => isOn(a, t)).map(t => pointOn(a, t))
  }
  const sine = a.along.x * b.along.y - a.along.y * b.along.x
  if (Math.abs(sine) < leastAngle) return []
  const s = (dx * b.along.y - dy * b.along.x) / sine
  const t = (dx * a.along.y - dy * a.along.x) / sine
  return isOn(a, s) && isOn(b, t) ? [pointOn(a, s)] : []
}

type Line = Extract<Attraction, { type: 'line' }>

function isOn({ length }: Line, t: number): boolean {
  return length === null || (t >= -overhang * length && t <= length * (1 + overhang))
}

function pointOn({ from, along }: Line, t: number): Metres {
  return { x: from.x + t * along.x, y: from.y + t * along.y }
}
