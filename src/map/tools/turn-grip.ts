import type { Feature } from '#geo/plan/plan'
import { cut } from '#geo/space/lines'
import type { LngLat, Metres } from '#geo/space/plane'
import { bearing, centroid, distance, lineLength, offset, type Ring } from '#geo/space/shape'
import { pixelDistance, type ToolContext } from './tool'

/** How far the grip stands from what it turns, so that a finger on it does not hit that; pixels. */
const away = 44

/** A grip straight on beyond an edge, seen from the middle. */
export function gripBeyond(middle: Metres, edge: Metres, { plane, toPixel }: ToolContext): LngLat {
  const length = distance(middle, edge)
  const pixels = pixelDistance(toPixel(plane.toLngLat(middle)), toPixel(plane.toLngLat(edge)))
  const further = pixels > 0 ? 1 + away / pixels : 1
  if (length === 0) return plane.toLngLat(edge)
  return plane.toLngLat({
    x: middle.x + (edge.x - middle.x) * further,
    y: middle.y + (edge.y - middle.y) * further,
  })
}

export type Turning = {
  /** What stays where it is. */
  readonly middle: Metres
  readonly at: LngLat
  /** Where the stem of the grip leaves the thing. */
  readonly edge: LngLat
  /** Direction of the rows, degrees clockwise from north. */
  readonly along: number
}

/** The grip that turns a row or a block about its middle: it stands where the rows point to; null for all else. */
export function turningOf({ geometry, properties }: Feature, context: ToolContext): Turning | null {
  const { plane } = context
  if (geometry.type === 'LineString') {
    if (properties.kind !== 'row') return null
    const line = geometry.coordinates.map(at => plane.toMetres(at))
    const length = lineLength(line)
    const last = line.at(-1)
    if (!(length > 0) || last === undefined) return null
    const middle = cut(line, 0, length / 2).at(-1)!
    // A row that ends where its middle is points nowhere.
    if (distance(middle, last) === 0) return null
    return { middle, at: gripBeyond(middle, last, context), edge: plane.toLngLat(last), along: bearing(middle, last) }
  }
  if (geometry.type !== 'Polygon' || properties.kind !== 'block') return null
  const rings = geometry.coordinates.map(ring => ring.map(at => plane.toMetres(at)))
  const middle = centroid(rings)
  const along = properties.bearing ?? 0
  const ahead = offset({ x: 0, y: 0 }, along, 1)
  const reach = reachOf(rings[0] ?? [], middle, ahead)
  if (!(reach > 0)) return null
  const edge = offset(middle, along, reach)
  return { middle, at: gripBeyond(middle, edge, context), edge: plane.toLngLat(edge), along }
}

/** How far it is from the middle straight ahead to where the outline is left for good, m; 0 where it is not crossed. */
function reachOf(ring: Ring, middle: Metres, ahead: Metres): number {
  let farthest = 0
  for (let i = 1; i < ring.length; i += 1) {
    const [a, b] = [ring[i - 1]!, ring[i]!]
    const sideOf = ({ x, y }: Metres) => (x - middle.x) * ahead.y - (y - middle.y) * ahead.x
    const [p, q] = [sideOf(a), sideOf(b)]
    if (p > 0 === q > 0) continue
    const share = p / (p - q)
    const at = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) }
    farthest = Math.max(farthest, (at.x - middle.x) * ahead.x + (at.y - middle.y) * ahead.y)
  }
  return farthest
}
