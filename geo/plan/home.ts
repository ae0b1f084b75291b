import { centreOf, type LngLat } from '../space/plane'
import type { Plan } from './plan'

/** Nearer to the equator than this a place says nothing of its seasons, degrees. */
const tropics = 10

/** Half a year, in days: a southern spring is taken to follow a northern one at this distance (assumed). */
export const southernShift = 183

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

/** Latitude of a plan in degrees: the middle of what is drawn, else the place it was started at; null where neither is known. */
export function latitudeOf(plan: Pick<Plan, 'besides' | 'features'>): number | null {
  return (centreOf(plan.features) ?? placeOf(plan))?.[1] ?? null
}

/** Whether seasons at a plan's place are those of the south. Mason bees and their crops keep clear of the tropics. */
export function isSouthern(plan: Pick<Plan, 'besides' | 'features'>): boolean {
  return (placeOf(plan)?.[1] ?? latitudeOf(plan) ?? 0) < -tropics
}
