import type { Geometry } from '#geo/plan/plan'
import type { LngLat, Plane } from '#geo/space/plane'

/** Every position of a geometry once; the closing position of a ring is left out. */
export function positionsOf(geometry: Geometry): readonly LngLat[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates]
    case 'MultiPoint':
    case 'LineString':
      return geometry.coordinates
    case 'Polygon':
      return geometry.coordinates.flatMap(ring => ring.slice(0, -1))
    default:
      return geometry satisfies never
  }
}

/** The same geometry with every position passed through `change`. */
export function mapPositions<G extends Geometry>(geometry: G, change: (at: LngLat) => LngLat): G
export function mapPositions(geometry: Geometry, change: (at: LngLat) => LngLat): Geometry {
  switch (geometry.type) {
    case 'Point':
      return { type: 'Point', coordinates: change(geometry.coordinates) }
    case 'MultiPoint':
    case 'LineString':
      return { type: geometry.type, coordinates: geometry.coordinates.map(change) }
    case 'Polygon':
      return { type: 'Polygon', coordinates: geometry.coordinates.map(ring => ring.map(change)) }
    default:
      return geometry satisfies never
  }
}

/** A geometry moved by `x` metres east and `y` metres north in the plan's plane; it keeps its size and shape. */
export function moved<G extends Geometry>(geometry: G, plane: Plane, by: { x: number; y: number }): G {
  return mapPositions(geometry, at => {
    const { x, y } = plane.toMetres(at)
    return plane.toLngLat({ x: x + by.x, y: y + by.y })
  })
}

/** A ring as RFC 7946 wants it: closed, counter-clockwise (`hole`: clockwise). */
export function closedRing(points: readonly LngLat[], plane: Plane, hole = false): readonly LngLat[] {
  let twice = 0
  const metres = points.map(at => plane.toMetres(at))
  metres.forEach((a, i) => {
    const b = metres[(i + 1) % metres.length]!
    twice += a.x * b.y - b.x * a.y
  })
  const ordered = twice > 0 === hole ? [...points].reverse() : points
  return [...ordered, ordered[0]!]
}
