import { type FoundQuestion, typedPrices } from './found'
import type { PlannerState } from './store'

/** What the page that is looked at asks of a season's records; null where it asks nothing. */
export function foundQuestion({ document, view, boxes }: PlannerState): FoundQuestion | null {
  if (document.plan === null || view.page !== 'years' || view.yearTask !== null) return null
  return { plan: document.plan, year: view.year, prices: typedPrices(boxes.ask.prices) }
}
