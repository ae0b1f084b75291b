import type { Feature } from '#geo/plan/plan'
import type { LngLat, Plane } from '#geo/space/plane'
import { signedArea } from '#geo/space/shape'

/**
 * Lines at a headland's distance from an outline's sides: within a boundary, where rows begin that far from the edge;
 * outside everything else, where the next thing begins.
 */
export function headlandLines(
  { geometry, properties }: Feature,
  metres: number,
  plane: Plane,
): readonly (readonly LngLat[])[] {
  if (geometry.type !== 'Polygon') return []
  const ring = (geometry.coordinates[0] ?? []).map(at => plane.toMetres(at))
  // The inner side of a ring that runs counter-clockwise lies to its left.
  const inwards = signedArea(ring) > 0 ? 1 : -1
  const away = (properties.kind === 'boundary' ? inwards : -inwards) * metres
  return ring.slice(1).flatMap((b, i) => {
    const a = ring[i]!
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (length === 0) return []
    const step = { x: (-(b.y - a.y) / length) * away, y: ((b.x - a.x) / length) * away }
    return [[a, b].map(({ x, y }) => plane.toLngLat({ x: x + step.x, y: y + step.y }))]
  })
}
