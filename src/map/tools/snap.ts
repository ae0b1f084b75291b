import type { LngLat } from '#geo/space/plane'
import { positionsOf } from './positions'
import { presentIn } from './present'
import { type Keys, type Pixel, type PointerKind, pixelDistance, type ToolContext } from './tool'

/** Pixels within which a new point falls onto a corner or row end that is there already. */
const snapDistance = 10

/**
 * The nearest corner or end of anything in the plan, if it is near enough; Alt switches it off.
 * Only lines and outlines attract: a tree or a station is not the end of anything.
 */
export function snapped(
  event: { readonly pixel: Pixel; readonly keys: Keys; readonly pointer: PointerKind },
  context: ToolContext,
  except?: string,
): LngLat | null {
  if (event.keys.alt) return null
  let best: LngLat | null = null
  let nearest = snapDistance
  for (const feature of presentIn(context)) {
    const { geometry } = feature
    if (feature.id === except || geometry.type === 'Point' || geometry.type === 'MultiPoint') continue
    for (const at of positionsOf(geometry)) {
      const distance = pixelDistance(context.toPixel(at), event.pixel)
      if (distance <= nearest) {
        nearest = distance
        best = at
      }
    }
  }
  return best
}
