import type { LngLat } from '#geo/space/plane'
import { snapTo } from './snap'
import type { Snap } from './snap-point'
import { pixelDistance, type ToolContext, type ToolEvent, type ToolStatus, tolerance } from './tool'
import { type Lock, lockedAt, noLock, openLock } from './typed'

/** A line or outline under way: the points set so far, where the pointer is, and what was typed for the next side. */
export type Draft = {
  readonly points: readonly LngLat[]
  readonly pointer: LngLat | null
  readonly snap: Snap | null
  readonly lock: Lock
}

/** A mouse that is moved no further was not moved; pixels. */
const still = 3

export const emptyDraft: Draft = { points: [], pointer: null, snap: null, lock: noLock }

export type DraftAnswer = {
  readonly draft: Draft
  /** The draft is to be finished with the points it has. */
  readonly isFinished?: boolean
  /** There was nothing to cancel. */
  readonly isLeft?: boolean
}

/**
 * Points are added by tapping. A second tap on the last point finishes, as does a double tap, Enter, and, where an
 * outline `closes`, a tap on its first point. Moving the map meanwhile is no tap. Typed figures go before the pointer.
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
      const { at } = pointed(draft, event, context)
      const isThere = (point: LngLat | undefined) => isOn(point) || isSame(point, at)
      const last = points.at(-1)
      const isAgain = isSame(last, at) || isLastAgain(last, event, context) || (event.count === 2 && points.length > 0)
      const isClosing = options.closes && isEnough && isThere(points[0])
      if (isAgain || isClosing) return isEnough ? { draft, isFinished: true } : { draft }
      return { draft: { ...emptyDraft, points: [...points, at], pointer: at } }
    }
    case 'hover': {
      const { at, snap } = pointed(draft, event, context)
      return { draft: { ...draft, pointer: at, snap } }
    }
    case 'type': {
      const { length = draft.lock.length, bearing = draft.lock.bearing } = event.figures
      const lock = { length, bearing }
      const last = points.at(-1)
      const pointer = last ? lockedAt(last, draft.pointer, lock, context) : draft.pointer
      return { draft: { ...draft, lock, pointer, snap: null } }
    }
    case 'put': {
      const last = points.at(-1)
      if (last === undefined || !canPut(draft)) return { draft }
      const at = lockedAt(last, draft.pointer, draft.lock, context)
      return isSame(last, at) ? { draft } : { draft: { ...emptyDraft, points: [...points, at], pointer: at } }
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

/**
 * Whether a tap meant the last point once more. A finger cannot tell two points closer than its tip; a mouse can: what it
 * puts a few pixels away is a short side.
 */
function isLastAgain(
  last: LngLat | undefined,
  { pixel, pointer }: Extract<ToolEvent, { readonly type: 'tap' }>,
  { toPixel }: ToolContext,
): boolean {
  if (last === undefined) return false
  return pixelDistance(toPixel(last), pixel) <= (pointer === 'touch' ? tolerance(pointer) : still)
}

/** Where the pointer's next point would lie, with what was typed and what attracts it. */
function pointed(
  { points, lock }: Draft,
  event: Extract<ToolEvent, { readonly type: 'tap' | 'hover' }>,
  context: ToolContext,
): { readonly at: LngLat; readonly snap: Snap | null } {
  const last = points.at(-1)
  const isLocked = last !== undefined && (lock.length !== null || lock.bearing !== null)
  const snap = isLocked && lock.bearing !== null ? null : snapTo(event, context, { from: points })
  const at = snap?.at ?? event.at
  if (!isLocked) return { at, snap }
  // A typed length along a row nearby: the direction may still be the row's.
  return { at: lockedAt(last, at, lock, context), snap: null }
}

/** A length is needed at least: without one nobody can tell where the point is to be. */
function canPut({ points, lock }: Draft): boolean {
  return points.length > 0 && lock.length !== null
}

/** The points with the pointer as the next one, for showing and measuring. */
export function withPointer({ points, pointer }: Draft): readonly LngLat[] {
  const last = points.at(-1)
  if (pointer === null || last === undefined) return points
  // A finger that was lifted stays on the point it set.
  return isSame(last, pointer) ? points : [...points, pointer]
}

/** What can be done and typed now. */
export function draftStatus(draft: Draft, minimum: number, context: ToolContext): ToolStatus {
  const last = draft.points.at(-1)
  return {
    points: draft.points.length,
    canFinish: draft.points.length >= minimum,
    hasVertex: false,
    ...(last ? { figures: openLock(last, draft.pointer, draft.lock, context) } : {}),
    ...(canPut(draft) ? { putWords: 'Set this point' } : {}),
  }
}

function isSame(a: LngLat | undefined, b: LngLat): boolean {
  return a !== undefined && a[0] === b[0] && a[1] === b[1]
}
