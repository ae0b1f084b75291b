import type { LngLat, Metres } from './plane'
import { extentOf, isInside, type Ring, signedArea } from './shape'

/**
 * What keeps rings from bounding one area:
 * `short` fewer than 3 different corners; `open` last position is not the first; `long` more corners than can be looked
 * through; `crossing` a ring crosses or touches itself; `flat` no area; `outside` a hole is not within the outer ring;
 * `overlap` two holes cover the same ground.
 */
export type PolygonFault = 'short' | 'open' | 'long' | 'crossing' | 'flat' | 'outside' | 'overlap'

/** Corners of all rings of one polygon together. */
export const mostCorners = 10_000
/** A ring of less is no area, m2. */
const leastArea = 0.01
/** A hole's corner this near to the outer ring lies on it, m. */
const tolerance = 0.001

/** The first fault of a polygon and the ring it is in (0 = the outer one); null when it bounds an area. */
export function polygonFault(polygon: readonly (readonly LngLat[])[]): { fault: PolygonFault; ring: number } | null {
  const outer = polygon[0]
  if (outer === undefined) return { fault: 'short', ring: 0 }
  for (const [ring, positions] of polygon.entries()) {
    const first = positions[0]
    const last = positions.at(-1)
    if (first === undefined || last === undefined || positions.length < 3) return { fault: 'short', ring }
    if (first[0] !== last[0] || first[1] !== last[1]) return { fault: 'open', ring }
  }
  if (polygon.reduce((sum, ring) => sum + ring.length, 0) > mostCorners) return { fault: 'long', ring: 0 }
  const toLocal = localFrame(outer[0]!)
  const rings = polygon.map(ring => distinct(ring.map(toLocal)))
  const short = rings.findIndex(ring => ring.length < 4)
  if (short >= 0) return { fault: 'short', ring: short }
  const crossing = firstCrossing(rings)
  if (crossing !== null) return crossing
  const flat = rings.findIndex(ring => Math.abs(signedArea(ring)) < leastArea)
  if (flat >= 0) return { fault: 'flat', ring: flat }
  return holeFault(rings)
}

/** The polygon with its outer ring counter-clockwise and its holes clockwise, as RFC 7946 asks. */
export function woundRight(polygon: readonly (readonly LngLat[])[]): readonly (readonly LngLat[])[] {
  return polygon.map((ring, i) => {
    const first = ring[0]
    if (first === undefined) return ring
    const isCounterClockwise = signedArea(ring.map(localFrame(first))) > 0
    return isCounterClockwise === (i === 0) ? ring : [...ring].reverse()
  })
}

/**
 * Metres east and north of `origin`, good enough to ask how lines lie to each other anywhere on earth, where the one
 * plane of a plan may not be: it is not known yet whether the plan has a sensible middle.
 */
export function localFrame(origin: LngLat): (position: LngLat) => Metres {
  const metresPerDegree = 111_195
  const east = metresPerDegree * Math.cos((origin[1] * Math.PI) / 180)
  return ([lng, lat]) => ({ x: (lng - origin[0]) * east, y: (lat - origin[1]) * metresPerDegree })
}

/** Without corners that repeat the one before: a double click is no fault. */
function distinct(ring: Ring): Ring {
  return ring.filter((corner, i) => i === 0 || corner.x !== ring[i - 1]!.x || corner.y !== ring[i - 1]!.y)
}

type Segment = { readonly a: Metres; readonly b: Metres; readonly ring: number; readonly index: number }

/** Looks along x, so that only segments side by side are compared. */
function firstCrossing(rings: readonly Ring[]): { fault: PolygonFault; ring: number } | null {
  const segments: Segment[] = rings.flatMap((corners, ring) =>
    corners.slice(1).map((b, index) => ({ a: corners[index]!, b, ring, index })),
  )
  segments.sort((s, t) => Math.min(s.a.x, s.b.x) - Math.min(t.a.x, t.b.x))
  for (let i = 0; i < segments.length; i += 1) {
    const s = segments[i]!
    const right = Math.max(s.a.x, s.b.x)
    for (let j = i + 1; j < segments.length; j += 1) {
      const t = segments[j]!
      if (Math.min(t.a.x, t.b.x) > right) break
      if (Math.max(s.a.y, s.b.y) < Math.min(t.a.y, t.b.y) || Math.max(t.a.y, t.b.y) < Math.min(s.a.y, s.b.y)) continue
      if (s.ring !== t.ring) {
        // Rings may touch each other, as holes along an edge do; they may not cross.
        if (doCross(s, t))
          return { fault: s.ring * t.ring === 0 ? 'outside' : 'overlap', ring: Math.max(s.ring, t.ring) }
      } else if (!areNeighbours(s, t, rings[s.ring]!.length - 1) && doMeet(s, t)) {
        return { fault: 'crossing', ring: s.ring }
      }
    }
  }
  return null
}

function areNeighbours(s: Segment, t: Segment, count: number): boolean {
  const apart = Math.abs(s.index - t.index)
  return apart === 1 || apart === count - 1
}

/** On which side of the line from a to b the point c lies: above 0 left, below 0 right, 0 on it. */
function side(a: Metres, b: Metres, c: Metres): number {
  return Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))
}

function doCross(s: Segment, t: Segment): boolean {
  return side(s.a, s.b, t.a) * side(s.a, s.b, t.b) < 0 && side(t.a, t.b, s.a) * side(t.a, t.b, s.b) < 0
}

function doMeet(s: Segment, t: Segment): boolean {
  if (side(s.a, s.b, t.a) * side(s.a, s.b, t.b) > 0) return false
  // Boxes overlap already, so segments on one line that pass both tests share a piece of it.
  return side(t.a, t.b, s.a) * side(t.a, t.b, s.b) <= 0
}

function holeFault(rings: readonly Ring[]): { fault: PolygonFault; ring: number } | null {
  const outer = rings[0]!
  const inner = rings.map(innerPoint)
  for (let hole = 1; hole < rings.length; hole += 1) {
    const isOut = (corner: Metres): boolean => !isInside([outer], corner) && distanceTo(outer, corner) > tolerance
    if (!isInside([outer], inner[hole]!) || rings[hole]!.some(isOut)) return { fault: 'outside', ring: hole }
    for (let other = 1; other < hole; other += 1) {
      if (isInside([rings[other]!], inner[hole]!) || isInside([rings[hole]!], inner[other]!)) {
        return { fault: 'overlap', ring: hole }
      }
    }
  }
  return null
}

/** A point well inside a ring: on a level between its two lowest corners' levels, midway between the first two edges. */
function innerPoint(ring: Ring): Metres {
  const lowest = extentOf(ring).minY
  const next = Math.min(...ring.map(({ y }) => y).filter(y => y > lowest))
  const y = (lowest + next) / 2
  const crossings: number[] = []
  for (let i = 1; i < ring.length; i += 1) {
    const a = ring[i - 1]!
    const b = ring[i]!
    if (a.y > y !== b.y > y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x))
  }
  crossings.sort((a, b) => a - b)
  return { x: (crossings[0]! + crossings[1]!) / 2, y }
}

function distanceTo(ring: Ring, point: Metres): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < ring.length; i += 1) {
    const a = ring[i - 1]!
    const b = ring[i]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const along = ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy)
    const share = Math.min(1, Math.max(0, along))
    least = Math.min(least, Math.hypot(point.x - a.x - share * dx, point.y - a.y - share * dy))
  }
  return least
}
