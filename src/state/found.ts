import type { Plan } from '#geo/plan/plan'
import type { YearRecord } from '#geo/seasons/year'
import type { Prices } from '#geo/stocking/stock'
import { isAnswerTo } from './boxes'

/** Coverage by the females that really nested, and what covering a hectare cost, with what was asked. */
export type Found = {
  readonly plan: Plan
  readonly year: number
  readonly prices: Prices | null
  readonly record: YearRecord
}

/** What one asks of a season's records; null where the page that shows it is not looked at. */
export type FoundQuestion = Omit<Found, 'record'>

/** The grower's prices; null as long as one of them is only assumed. */
export function typedPrices({ station, femaleCocoon, maleCocoon, tube }: Partial<Prices>): Prices | null {
  if (station === undefined || femaleCocoon === undefined || maleCocoon === undefined || tube === undefined) return null
  return { station, femaleCocoon, maleCocoon, tube }
}

/** Whether an answer still answers the question. */
export function isFoundFor(found: Found, { plan, year, prices }: FoundQuestion): boolean {
  return isAnswerTo(found, plan, year) && JSON.stringify(found.prices) === JSON.stringify(prices)
}
