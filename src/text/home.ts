import { isSouthern, placeOf } from '#geo/plan/home'
import type { Plan } from '#geo/plan/plan'
import { centreOf, type LngLat } from '#geo/space/plane'
import type { IsoDate } from '#geo/time/day'

/** Where a plan without a place of its own is drawn: the bare grid, off every coast. */
export const nowhere: LngLat = [0, 0]

/** The members beside a new plan's own that keep its place. */
export function besidesWithPlace(place: LngLat): Plan['besides'] {
  return { plan: { place } }
}

/** A day in early spring at a plan's place, to start from where nothing is known of its blooms; assumed. */
export function springDay(plan: Plan, year: number): IsoDate {
  return isSouthern(plan) ? `${year}-10-01` : `${year}-04-01`
}

/** From this day on a northern spring is over and the next is the one to plan for; assumed. */
const springOver = '07-01'

/** The season that a plan begun today is most likely for: in the north the next year's once spring is over. */
export function seasonToPlan(today: IsoDate, place: LngLat | null): number {
  const year = Number(today.slice(0, 4))
  const isNorth = place === null || place[1] >= 0
  return isNorth && today.slice(5) >= springOver ? year + 1 : year
}

/** Where to count metres from: the plan's place, else the middle of what is drawn, else nowhere. */
export function homeOf(plan: Plan): LngLat {
  return placeOf(plan) ?? centreOf(plan.features) ?? nowhere
}
