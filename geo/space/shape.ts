import type { Metres } from './plane'

/** A ring of a polygon in metres; the first position is repeated last. */
export type Ring = readonly Metres[]

export type Extent = {
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
}

/** Length of a line, m. */
export function lineLength(line: readonly Metres[]): number {
  let length = 0
  for (let i = 1; i < line.length; i += 1) length += distance(line[i - 1]!, line[i]!)
  return length
}

/** Planar distance, m. */
export function distance(a: Metres, b: Metres): number {
  const dx = b.x - a.x
  const dy = b.y - a.y
  return Math.sqrt(dx * dx + dy * dy)
}

/** Bearing of `to` seen from `from`, degrees clockwise from grid north, 0 to 360. */
export function bearing(from: Metres, to: Metres): number {
  const degrees = (Math.atan2(to.x - from.x, to.y - from.y) * 180) / Math.PI
  return (degrees + 360) % 360
}

/** The position `length` metres from `from` on `bearingDegrees`. */
export function offset(from: Metres, bearingDegrees: number, length: number): Metres {
  const angle = (bearingDegrees * Math.PI) / 180
  return { x: from.x + length * Math.sin(angle), y: from.y + length * Math.cos(angle) }
}

/** Area of a ring by the shoelace rule, m2; positive when it runs counter-clockwise. */
export function signedArea(ring: Ring): number {
  const origin = ring[0]
  if (origin === undefined) return 0
  let twice = 0
  // Taken relative to the first corner, so that a ring far from the origin loses no digits.
  for (let i = 1; i < ring.length; i += 1) {
    const a = ring[i - 1]!
    const b = ring[i]!
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y)
  }
  return twice / 2
}

/** Area of a polygon with holes, m2: the outer ring less the holes, whichever way they run. */
export function polygonArea(rings: readonly Ring[]): number {
  return rings.reduce((sum, ring, i) => sum + (i === 0 ? 1 : -1) * Math.abs(signedArea(ring)), 0)
}

/** Area-weighted centroid of a polygon; holes count. */
export function centroid(rings: readonly Ring[]): Metres {
  const origin = rings[0]?.[0]
  if (origin === undefined) throw new RangeError('a polygon without a ring has no centroid')
  let area = 0
  let x = 0
  let y = 0
  rings.forEach((ring, i) => {
    const sign = (i === 0 ? 1 : -1) * Math.sign(signedArea(ring))
    for (let j = 1; j < ring.length; j += 1) {
      const ax = ring[j - 1]!.x - origin.x
      const ay = ring[j - 1]!.y - origin.y
      const bx = ring[j]!.x - origin.x
      const by = ring[j]!.y - origin.y
      const cross = sign * (ax * by - bx * ay)
      area += cross / 2
      x += ((ax + bx) * cross) / 6
      y += ((ay + by) * cross) / 6
    }
  })
  if (area === 0) return origin
  return { x: origin.x + x / area, y: origin.y + y / area }
}

/** Whether a point lies inside a polygon with holes (even-odd rule). */
export function isInside(rings: readonly Ring[], point: Metres): boolean {
  let inside = false
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i += 1) {
      const a = ring[i - 1]!
      const b = ring[i]!
      if (a.y > point.y !== b.y > point.y) {
        const x = a.x + ((point.y - a.y) / (b.y - a.y)) * (b.x - a.x)
        if (point.x < x) inside = !inside
      }
    }
  }
  return inside
}

/** Smallest upright box that holds all positions. */
export function extentOf(positions: Iterable<Metres>): Extent {
  let minX = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (const { x, y } of positions) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { minX, maxX, minY, maxY }
}
