import type { Feature, Geometry } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { mapPositions } from './positions'
import { type Pixel, pixelDistance, type ToolContext } from './tool'

/** A corner (or the middle of the side that follows it) of a feature: `part` counts rings, `index` corners. */
export type Vertex = { readonly part: number; readonly index: number; readonly isMidpoint: boolean }

export type Handle = Vertex & { readonly at: LngLat }

/** Corners first, then the middles of the sides; single points have no handles, they are moved whole. */
export function handlesOf(geometry: Geometry): readonly Handle[] {
  switch (geometry.type) {
    case 'Point':
      return []
    case 'MultiPoint':
      return corners(geometry.coordinates, 0)
    case 'LineString':
      return [...corners(geometry.coordinates, 0), ...middles(geometry.coordinates, 0)]
    case 'Polygon':
      return [
        ...geometry.coordinates.flatMap((ring, part) => corners(ring.slice(0, -1), part)),
        ...geometry.coordinates.flatMap((ring, part) => middles(ring, part)),
      ]
    default:
      return geometry satisfies never
  }
}

function corners(points: readonly LngLat[], part: number): Handle[] {
  return points.map((at, index) => ({ part, index, isMidpoint: false, at }))
}

function middles(points: readonly LngLat[], part: number): Handle[] {
  return points.slice(1).map((b, index) => {
    const a = points[index]!
    return { part, index, isMidpoint: true, at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] }
  })
}

/** The handle under the pointer. Middles only count where their side is long enough to tell them from its corners. */
export function handleAt(feature: Feature, pixel: Pixel, context: ToolContext, within: number): Handle | null {
  let best: Handle | null = null
  let nearest = within
  for (const handle of visibleHandles(feature.geometry, context)) {
    const distance = pixelDistance(context.toPixel(handle.at), pixel)
    if (distance <= nearest && (best === null || best.isMidpoint || !handle.isMidpoint)) {
      nearest = distance
      best = handle
    }
  }
  return best
}

/** Side length below which the middle of a side shows no handle, pixels. */
const shortSide = 48

export function visibleHandles(geometry: Geometry, context: ToolContext): readonly Handle[] {
  const handles = handlesOf(geometry)
  const isLong = (handle: Handle) => {
    const [a, b] = sideOf(geometry, handle)
    return pixelDistance(context.toPixel(a), context.toPixel(b)) >= shortSide
  }
  return handles.filter(handle => !handle.isMidpoint || isLong(handle))
}

function sideOf(geometry: Geometry, { part, index }: Vertex): readonly [LngLat, LngLat] {
  const points = partOf(geometry, part)
  return [points[index]!, points[index + 1] ?? points[0]!]
}

/** Positions of one part without the closing one. */
function partOf(geometry: Geometry, part: number): readonly LngLat[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates]
    case 'MultiPoint':
    case 'LineString':
      return geometry.coordinates
    case 'Polygon':
      return geometry.coordinates[part]?.slice(0, -1) ?? []
    default:
      return geometry satisfies never
  }
}

function withPart(geometry: Geometry, part: number, points: readonly LngLat[]): Geometry {
  switch (geometry.type) {
    case 'Point':
      return mapPositions(geometry, () => points[0]!)
    case 'MultiPoint':
    case 'LineString':
      return { type: geometry.type, coordinates: points }
    case 'Polygon':
      return {
        type: 'Polygon',
        coordinates: geometry.coordinates.map((ring, i) => (i === part ? [...points, points[0]!] : ring)),
      }
    default:
      return geometry satisfies never
  }
}

/** A corner put elsewhere; the middle of a side becomes a new corner there. */
export function withVertex(geometry: Geometry, vertex: Vertex, at: LngLat): Geometry {
  const points = partOf(geometry, vertex.part)
  return withPart(
    geometry,
    vertex.part,
    vertex.isMidpoint ? points.toSpliced(vertex.index + 1, 0, at) : points.with(vertex.index, at),
  )
}

/** The corner that a dragged handle has become. */
export function vertexOf(handle: Vertex): Vertex {
  return { part: handle.part, index: handle.isMidpoint ? handle.index + 1 : handle.index, isMidpoint: false }
}

/** Without one corner; a hole that would have fewer than three goes altogether; null where too little would be left. */
export function withoutVertex(geometry: Geometry, vertex: Vertex): Geometry | null {
  const points = partOf(geometry, vertex.part)
  if (vertex.isMidpoint || points[vertex.index] === undefined) return null
  const left = points.toSpliced(vertex.index, 1)
  switch (geometry.type) {
    case 'Point':
      return null
    case 'MultiPoint':
      return left.length >= 1 ? withPart(geometry, 0, left) : null
    case 'LineString':
      return left.length >= 2 ? withPart(geometry, 0, left) : null
    case 'Polygon':
      if (left.length >= 3) return withPart(geometry, vertex.part, left)
      if (vertex.part === 0) return null
      return { type: 'Polygon', coordinates: geometry.coordinates.toSpliced(vertex.part, 1) }
    default:
      return geometry satisfies never
  }
}
