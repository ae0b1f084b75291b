import type { Feature } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { presentIn } from './present'
import { type Pixel, pixelDistance, type ToolContext } from './tool'

/** Half the side of a station's mark, pixels. */
export const stationHalf = 15

/** Marks before lines before outlines; among outlines the smallest, so that a bed in a block can be reached. */
export function hitAt(pixel: Pixel, context: ToolContext, within: number): Feature | null {
  let best: Feature | null = null
  let bestRank = Number.POSITIVE_INFINITY
  for (const feature of presentIn(context)) {
    const rank = rankOf(feature, pixel, context, within)
    if (rank !== null && rank < bestRank) {
      best = feature
      bestRank = rank
    }
  }
  return best
}

/** Lower is better; null = not hit. Marks 0 to 1e3, lines 1e3 to 1e6, outlines above. */
function rankOf(feature: Feature, pixel: Pixel, context: ToolContext, within: number): number | null {
  const { geometry } = feature
  switch (geometry.type) {
    case 'Point':
    case 'MultiPoint': {
      const points = geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates
      const reach = feature.properties.kind === 'station' ? Math.max(stationHalf, within) : within
      let nearest = Number.POSITIVE_INFINITY
      for (const at of points) nearest = Math.min(nearest, pixelDistance(context.toPixel(at), pixel))
      return nearest <= reach ? nearest : null
    }
    case 'LineString': {
      const distance = lineDistance(geometry.coordinates, pixel, context)
      return distance <= within ? 1e3 + distance : null
    }
    case 'Polygon': {
      const rings = geometry.coordinates.map(ring => ring.map(at => context.toPixel(at)))
      // The boundary holds everything else: only its line can be taken hold of.
      if (feature.properties.kind === 'boundary') {
        const distance = Math.min(...rings.map(ring => chainDistance(ring, pixel)))
        return distance <= within ? 1e3 + distance : null
      }
      return isInsidePixels(rings, pixel) ? 1e6 + pixelArea(rings[0] ?? []) : null
    }
    default:
      return geometry satisfies never
  }
}

function lineDistance(points: readonly LngLat[], pixel: Pixel, context: ToolContext): number {
  return chainDistance(
    points.map(at => context.toPixel(at)),
    pixel,
  )
}

function chainDistance(chain: readonly Pixel[], p: Pixel): number {
  let nearest = Number.POSITIVE_INFINITY
  for (let i = 1; i < chain.length; i += 1) {
    const a = chain[i - 1]!
    const b = chain[i]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const length2 = dx * dx + dy * dy
    const t = length2 > 0 ? Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2)) : 0
    nearest = Math.min(nearest, Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy))
  }
  return nearest
}

function isInsidePixels(rings: readonly (readonly Pixel[])[], p: Pixel): boolean {
  let inside = false
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i += 1) {
      const a = ring[i - 1]!
      const b = ring[i]!
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    }
  }
  return inside
}

function pixelArea(ring: readonly Pixel[]): number {
  let twice = 0
  for (let i = 1; i < ring.length; i += 1) {
    const a = ring[i - 1]!
    const b = ring[i]!
    twice += a.x * b.y - b.x * a.y
  }
  return Math.abs(twice / 2)
}

/** Features whose every position lies in the box between two screen corners. */
export function insideBox(a: Pixel, b: Pixel, context: ToolContext): readonly string[] {
  const [minX, maxX] = [Math.min(a.x, b.x), Math.max(a.x, b.x)]
  const [minY, maxY] = [Math.min(a.y, b.y), Math.max(a.y, b.y)]
  const isIn = (coordinates: unknown): boolean => {
    if (!Array.isArray(coordinates)) return false
    if (typeof coordinates[0] !== 'number') return coordinates.every(isIn)
    const { x, y } = context.toPixel(coordinates as unknown as LngLat)
    return x >= minX && x <= maxX && y >= minY && y <= maxY
  }
  return presentIn(context)
    .filter(({ geometry }) => isIn(geometry.coordinates))
    .map(({ id }) => id)
}
