import type { Shift } from '#geo/plan/edits-features'
import type { Feature, Geometry } from '#geo/plan/plan'
import type { LngLat, Plane } from '#geo/space/plane'
import { bearing } from '#geo/space/shape'
import { mapPositions } from './positions'
import type { Snap } from './snap-point'
import type { Pixel, ToolContext } from './tool'
import { type Turning, turningOf } from './turn-grip'
import { type Handle, handlesOf, type Vertex } from './vertices'

/** What a press has taken hold of; `to` and `at` are null until it moves. */
export type Hold =
  | { readonly type: 'move'; readonly ids: readonly string[]; readonly from: LngLat; readonly to: LngLat | null }
  | {
      readonly type: 'corner'
      readonly id: string
      readonly handle: Handle
      readonly at: LngLat | null
      readonly snap: Snap | null
    }
  | { readonly type: 'turn'; readonly id: string; readonly from: LngLat; readonly to: LngLat | null }
  | { readonly type: 'box'; readonly from: LngLat; readonly fromPixel: Pixel; readonly to: LngLat | null }

export type SelectState = {
  readonly hold: Hold | null
  /** The chosen corner, or the turning grip; it counts only while its thing is the one that is selected. */
  readonly active: { readonly id: string; readonly vertex: Vertex | 'turn' } | null
}

/** The selected thing where it is the only one. */
export function onlySelected({ plan, selection }: ToolContext): Feature | null {
  if (selection.length !== 1) return null
  return plan.features.find(({ id }) => id === selection[0]) ?? null
}

/** The chosen corner, if it is still there. */
export function activeOf(
  { active }: SelectState,
  context: ToolContext,
): { readonly feature: Feature; readonly vertex: Vertex } | null {
  const feature = onlySelected(context)
  if (active === null || active.vertex === 'turn' || feature?.id !== active.id) return null
  const { vertex } = active
  const { part, index } = vertex
  const isThere = handlesOf(feature.geometry).some(
    handle => !handle.isMidpoint && handle.part === part && handle.index === index,
  )
  return isThere ? { feature, vertex } : null
}

/** The selected row or block where its turning grip is the chosen one. */
export function activeTurn(
  { active }: SelectState,
  context: ToolContext,
): { readonly feature: Feature; readonly turning: Turning } | null {
  const feature = onlySelected(context)
  if (active?.vertex !== 'turn' || feature === null || feature.id !== active.id) return null
  const turning = turningOf(feature, context)
  return turning && { feature, turning }
}

/** Degrees clockwise that a turning grip has been pulled by, to a tenth; between −180 and 180. */
export function degreesOf({ from, to }: Extract<Hold, { type: 'turn' }>, { middle }: Turning, plane: Plane): number {
  if (to === null) return 0
  const by = bearing(middle, plane.toMetres(to)) - bearing(middle, plane.toMetres(from))
  return Math.round((((by + 540) % 360) - 180) * 10) / 10
}

/** The things a hold has hold of, in its order; null where one of them is gone from the plan. */
export function heldFeatures(hold: Hold, { plan }: ToolContext): readonly Feature[] | null {
  if (hold.type === 'box') return []
  const ids = hold.type === 'move' ? hold.ids : [hold.id]
  const wanted = new Set(ids)
  const found = new Map(plan.features.filter(({ id }) => wanted.has(id)).map(feature => [feature.id, feature]))
  const features = ids.map(id => found.get(id)).filter(feature => feature !== undefined)
  return features.length === ids.length ? features : null
}

export function shiftOf({ from, to }: Extract<Hold, { type: 'move' }>): Shift {
  return to ? { lng: to[0] - from[0], lat: to[1] - from[1] } : { lng: 0, lat: 0 }
}

/** The geometry as the edit that moves it by the same step will make it, but for rounding. */
export function shifted(geometry: Geometry, by: Shift): Geometry {
  return mapPositions(geometry, ([lng, lat, ...rest]) => [lng + by.lng, lat + by.lat, ...rest])
}
