import type { LngLat } from '#geo/space/plane'
import { snapped } from './snap'
import { pixelDistance, type ToolContext, type ToolEvent, tolerance } from './tool'

/** A line or outline under way: the points set so far and where the pointer is. */
export type Draft = {
  readonly points: readonly LngLat[]
  readonly pointer: LngLat | null
  readonly snap: LngLat | null
}

export const emptyDraft: Draft = { points: [], pointer: null, snap: null }

export type DraftAnswer = {
  readonly draft: Draft
  /** The draft is to be finished with the points it has. */
  readonly isFinished?: boolean
  /** There was nothing to cancel. */
  readonly isLeft?: boolean
}

/**
 * Points are added by tapping. A second tap on the last point finishes, as does a double tap, Enter, and, where an
 * outline `closes`, a tap on its first point. Moving the map meanwhile is no tap.
 */
export function stepDraft(
  draft: Draft,
  event: ToolEvent,
  context: ToolContext,
  options: { readonly minimum: number; readonly closes: boolean },
): DraftAnswer {
  const { points } = draft
  const isEnough = points.length >= options.minimum
  switch (event.type) {
    case 'tap': {
      const isOn = (at: LngLat | undefined) =>
        at !== undefined && pixelDistance(context.toPixel(at), event.pixel) <= tolerance(event.pointer)
      const at = snapped(event, context) ?? event.at
      const isThere = (point: LngLat | undefined) => isOn(point) || isSame(point, at)
      const isAgain = isThere(points.at(-1)) || (event.count === 2 && points.length > 0)
      const isClosing = options.closes && isEnough && isThere(points[0])
      if (isAgain || isClosing) return isEnough ? { draft, isFinished: true } : { draft }
      return { draft: { points: [...points, at], pointer: at, snap: null } }
    }
    case 'hover': {
      const snap = snapped(event, context)
      return { draft: { ...draft, pointer: snap ?? event.at, snap } }
    }
    case 'finish':
      return isEnough ? { draft, isFinished: true } : { draft }
    case 'back':
    case 'remove':
      return { draft: { ...draft, points: points.slice(0, -1) } }
    case 'cancel':
      return points.length > 0 ? { draft: { ...emptyDraft, pointer: draft.pointer } } : { draft, isLeft: true }
    case 'press':
    case 'drag':
    case 'release':
    case 'lost':
    case 'nudge':
      return { draft }
    default:
      return event satisfies never
  }
}

/** The points with the pointer as the next one, for showing and measuring. */
export function withPointer({ points, pointer }: Draft): readonly LngLat[] {
  const last = points.at(-1)
  if (pointer === null || last === undefined) return points
  // A finger that was lifted stays on the point it set.
  return isSame(last, pointer) ? points : [...points, pointer]
}

function isSame(a: LngLat | undefined, b: LngLat): boolean {
  return a !== undefined && a[0] === b[0] && a[1] === b[1]
}
