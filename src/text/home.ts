import type { Plan } from '#geo/plan/plan'
import { centreOf, type LngLat } from '#geo/space/plane'
import type { IsoDate } from '#geo/time/day'

/** Where a plan without a place of its own is drawn: the bare grid, off every coast. */
export const nowhere: LngLat = [0, 0]

/**
 * The place a plan was started at, kept in the file as the member `place` of `plan`: what the map shows while nothing is
 * drawn yet, and the fixed point that typed metres east and north are counted from.
 */
export function placeOf(plan: Pick<Plan, 'besides'>): LngLat | null {
  const kept = plan.besides.plan
  const place = typeof kept === 'object' && kept !== null && 'place' in kept ? kept.place : null
  if (!Array.isArray(place)) return null
  const [lng, lat] = place
  if (typeof lng !== 'number' || typeof lat !== 'number') return null
  return Math.abs(lng) <= 180 && Math.abs(lat) <= 85 ? [lng, lat] : null
}

/** The members beside a new plan's own that keep its place. */
export function besidesWithPlace(place: LngLat): Plan['besides'] {
  return { plan: { place } }
}

/** Whether seasons at a plan's place are those of the south. Mason bees and their crops keep clear of the tropics. */
export function isSouthern(plan: Plan): boolean {
  return homeOf(plan)[1] < -tropics
}

/** A day in early spring at a plan's place, to start from where nothing is known of its blooms; assumed. */
export function springDay(plan: Plan, year: number): IsoDate {
  return isSouthern(plan) ? `${year}-10-01` : `${year}-04-01`
}

/** Nearer to the equator than this a place says nothing of its seasons, degrees. */
const tropics = 10

/** Where to count metres from: the plan's place, else the middle of what is drawn, else nowhere. */
export function homeOf(plan: Plan): LngLat {
  return placeOf(plan) ?? centreOf(plan.features) ?? nowhere
}
