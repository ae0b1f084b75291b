import type { Feature } from '#geo/plan/plan'
import type { LngLat, Metres } from '#geo/space/plane'
import { headlandLines } from './headland'
import { positionsOf } from './positions'
import { presentIn } from './present'
import { type Attraction, circleAbout, isNearTo, nearestCrossing, rayFrom, straightNear } from './snap-crossing'
import { directionsFor, type Leading, lengthsFor } from './snap-directions'
import type { Pointed, Snap } from './snap-point'
import { pixelDistance, type ToolContext } from './tool'

/** Pixels within which a new point falls onto what is there already. */
const snapDistance = 10
/** A steady hand may set points this near to an edge on purpose, half a lane off it: corners call from farther; pixels. */
const edgeDistance = { mouse: 6, pen: 6, keyboard: 6, touch: snapDistance } as const

type Options = {
  /** A thing that does not attract, because it is the one that is being changed. */
  readonly except?: string
  /** The points set so far: the next one likes to lie straight on, at a right angle or along a row nearby. */
  readonly from?: readonly LngLat[]
}

/**
 * What attracts the pointer: first the nearest corner or end, then where two attractions cross, then a row's line or an
 * outline's edge, then the headland's distance from an edge, then a direction. Alt switches it off for one point. Only lines and outlines attract: a tree or
 * a station is not the end of anything.
 */
export function snapTo(event: Pointed, context: ToolContext, { except, from = [] }: Options = {}): Snap | null {
  if (event.keys.alt || context.isSnapping === false) return null
  const near = featuresNear(event, context, except)
  return (
    nearestCorner(near, event, context) ??
    nearestCrossing(linesTo({ near, from, except }, event, context), event, context) ??
    nearestEdge(near, event, context) ??
    nearestHeadland(event, context, except) ??
    nearestDirection(from, event, context, except)
  )
}

function nearestCorner(features: readonly Feature[], event: Pointed, context: ToolContext): Snap | null {
  let best: { at: LngLat; feature: Feature } | null = null
  let nearest = snapDistance
  for (const feature of features) {
    for (const at of positionsOf(feature.geometry)) {
      const distance = pixelDistance(context.toPixel(at), event.pixel)
      if (distance > nearest) continue
      nearest = distance
      best = { at, feature }
    }
  }
  if (best === null) return null
  const what = best.feature.geometry.type === 'LineString' ? 'end' : 'corner'
  return { at: best.at, words: `${what} of ${called(best.feature)}`, guides: [] }
}

function nearestEdge(features: readonly Feature[], event: Pointed, context: ToolContext): Snap | null {
  let best: Snap | null = null
  let nearest: number = edgeDistance[event.pointer]
  for (const feature of features) {
    for (const line of linesOf(feature)) {
      const found = onLine(line, event, context)
      if (found === null || found.distance > nearest) continue
      nearest = found.distance
      best = { at: found.at, words: `on ${called(feature)}`, guides: [found.side] }
    }
  }
  return best
}

/** All lines and circles that the pointer is near to. */
function linesTo(
  { near, from, except }: { near: readonly Feature[]; from: readonly LngLat[]; except: string | undefined },
  event: Pointed,
  context: ToolContext,
): readonly Attraction[] {
  const edges = near.flatMap(feature =>
    linesOf(feature).map(line => ({ line, words: `on ${called(feature)}`, origin: feature.id })),
  )
  const headlands = context.headland
    ? outlinesNear(event, context, except).flatMap(feature =>
        headlandLines(feature, context.headland ?? 0, context.plane).map(line => ({
          line,
          words: `headland of ${called(feature)}`,
          origin: '',
        })),
      )
    : []
  const straight = [...edges, ...headlands].flatMap(each => straightNear(each, event, context, snapDistance))
  const last = from.at(-1)
  if (last === undefined) return straight
  const start = context.plane.toMetres(last)
  const leading = directionsFor(from, context, except).map(each => rayFrom(start, last, each))
  const alike = lengthsFor(from, context, except).map(each => circleAbout(start, last, each))
  return [...straight, ...[...leading, ...alike].filter(each => isNearTo(each, event, context, snapDistance))]
}

function nearestHeadland(event: Pointed, context: ToolContext, except?: string): Snap | null {
  if (!context.headland) return null
  let best: Snap | null = null
  let nearest = snapDistance
  for (const feature of outlinesNear(event, context, except)) {
    for (const line of headlandLines(feature, context.headland, context.plane)) {
      const found = onLine(line, event, context)
      if (found === null || found.distance > nearest) continue
      nearest = found.distance
      best = { at: found.at, words: `headland of ${called(feature)}`, guides: [found.side] }
    }
  }
  return best
}

function nearestDirection(from: readonly LngLat[], event: Pointed, context: ToolContext, except?: string): Snap | null {
  const last = from.at(-1)
  if (last === undefined) return null
  const start = context.plane.toMetres(last)
  const here = context.plane.toMetres(event.at)
  let best: { at: Metres; leading: Leading } | null = null
  let nearest = snapDistance
  for (const leading of directionsFor(from, context, except)) {
    const { x, y } = leading.along
    const length = (here.x - start.x) * x + (here.y - start.y) * y
    const at = { x: start.x + length * x, y: start.y + length * y }
    const distance = pixelDistance(context.toPixel(context.plane.toLngLat(at)), event.pixel)
    // Too short a way has no direction yet.
    if (distance > nearest || Math.abs(length) < Math.hypot(at.x - here.x, at.y - here.y) * 6) continue
    nearest = distance
    best = { at, leading }
  }
  if (best === null) return null
  // What is right to the millimetre stays as it was pointed at.
  const isRight = Math.hypot(best.at.x - here.x, best.at.y - here.y) < 0.001
  const at = isRight ? event.at : context.plane.toLngLat(best.at)
  return { at, words: best.leading.words, guides: [[last, at], ...best.leading.guides] }
}

type Found = { readonly at: LngLat; readonly distance: number; readonly side: readonly LngLat[] }

/** The nearest point of a chain, seen on the screen; null where it is a corner, which attracts by itself. */
function onLine(line: readonly LngLat[], { pixel }: Pointed, context: ToolContext): Found | null {
  let best: Found | null = null
  for (let i = 1; i < line.length; i += 1) {
    const a = line[i - 1]!
    const b = line[i]!
    const p = context.toPixel(a)
    const q = context.toPixel(b)
    const length2 = (q.x - p.x) ** 2 + (q.y - p.y) ** 2
    if (length2 === 0) continue
    const share = ((pixel.x - p.x) * (q.x - p.x) + (pixel.y - p.y) * (q.y - p.y)) / length2
    if (share < 0 || share > 1) continue
    const foot = { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) }
    const distance = pixelDistance(foot, pixel)
    if (best !== null && distance >= best.distance) continue
    best = { at: [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])], distance, side: [a, b] }
  }
  return best
}

function linesOf({ geometry }: Feature): readonly (readonly LngLat[])[] {
  if (geometry.type === 'LineString') return [geometry.coordinates]
  return geometry.type === 'Polygon' ? geometry.coordinates : []
}

/** Only what the pointer is about to touch is looked at corner by corner: thousands of rows would take too long. */
function featuresNear(event: Pointed, context: ToolContext, except?: string): readonly Feature[] {
  const reach = degreesOf(snapDistance, event, context)
  return attracting(context, except).filter(feature => isNear(feature, event.at, reach))
}

function outlinesNear(event: Pointed, context: ToolContext, except?: string): readonly Feature[] {
  const { lng, lat } = degreesOf(snapDistance, event, context)
  const metre = 1 / 111_195
  const more = (context.headland ?? 0) * metre
  const reach = { lng: lng + more / Math.cos((event.at[1] * Math.PI) / 180), lat: lat + more }
  return attracting(context, except).filter(
    feature => feature.geometry.type === 'Polygon' && isNear(feature, event.at, reach),
  )
}

function attracting(context: ToolContext, except?: string): readonly Feature[] {
  return presentIn(context).filter(
    ({ id, geometry }) => id !== except && (geometry.type === 'LineString' || geometry.type === 'Polygon'),
  )
}

type Reach = { readonly lng: number; readonly lat: number }

/** Pixels as degrees, where the pointer is. */
function degreesOf(pixels: number, { at }: Pointed, { toPixel }: ToolContext): Reach {
  const step = 1e-5
  const here = toPixel(at)
  const perLng = pixelDistance(here, toPixel([at[0] + step, at[1]])) / step
  const perLat = pixelDistance(here, toPixel([at[0], at[1] + step])) / step
  return { lng: perLng > 0 ? pixels / perLng : 1, lat: perLat > 0 ? pixels / perLat : 1 }
}

function isNear({ geometry }: Feature, [lng, lat]: LngLat, reach: Reach): boolean {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of positionsOf(geometry)) {
    west = Math.min(west, x)
    east = Math.max(east, x)
    south = Math.min(south, y)
    north = Math.max(north, y)
  }
  return lng >= west - reach.lng && lng <= east + reach.lng && lat >= south - reach.lat && lat <= north + reach.lat
}

function called({ properties }: Feature): string {
  return properties.name || `this ${properties.kind}`
}
