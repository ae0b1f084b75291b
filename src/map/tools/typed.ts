import type { LngLat, Metres } from '#geo/space/plane'
import { bearing, distance, offset } from '#geo/space/shape'
import type { OpenFigures, ToolContext } from './tool'

/** Length and bearing typed for the side that is drawn next; metres, degrees clockwise from north; null = not typed. */
export type Lock = { readonly length: number | null; readonly bearing: number | null }

export const noLock: Lock = { length: null, bearing: null }

/** Where the next point lies by what was typed, going by the pointer for the rest. */
export function lockedAt(last: LngLat, pointer: LngLat | null, lock: Lock, context: ToolContext): LngLat {
  const from = context.plane.toMetres(last)
  const to = pointer ? context.plane.toMetres(pointer) : from
  const { length, bearing: towards } = lock
  if (length === null && towards === null) return pointer ?? last
  if (towards === null) return back(offset(from, liveBearing(from, to), length!), context)
  if (length !== null) return back(offset(from, towards, length), context)
  const unit = offset({ x: 0, y: 0 }, towards, 1)
  const along = Math.max(0, (to.x - from.x) * unit.x + (to.y - from.y) * unit.y)
  return back(offset(from, towards, along), context)
}

function back(at: Metres, { plane }: ToolContext): LngLat {
  return plane.toLngLat(at)
}

function liveBearing(from: Metres, to: Metres): number {
  return distance(from, to) > 0 ? bearing(from, to) : 0
}

/** Length and bearing as they can be typed, with what they are at the pointer. */
export function openLock(last: LngLat, pointer: LngLat | null, lock: Lock, context: ToolContext): OpenFigures {
  const from = context.plane.toMetres(last)
  const to = context.plane.toMetres(lockedAt(last, pointer, lock, context))
  const length = distance(from, to)
  return {
    length: { typed: lock.length, live: pointer && length > 0 ? rounded(length, 100) : null },
    bearing: { typed: lock.bearing, live: rounded(liveBearing(from, to), 10) },
  }
}

function rounded(value: number, steps: number): number {
  return Math.round(value * steps) / steps
}
