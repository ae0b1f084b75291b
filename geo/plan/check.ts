import type { Problem } from '../problem'
import type { Plan } from './plan'

/** What a plan's meaning has against it, beyond its shape. */
export function checkPlan(plan: Plan, _year?: number): readonly Problem[] {
  const counts = new Map<string, number>()
  for (const { id } of plan.features) counts.set(id, (counts.get(id) ?? 0) + 1)
  return [...counts]
    .filter(([, count]) => count > 1)
    .map(([id, count]) => ({ code: 'id-repeated', severity: 'error', at: id, values: { id, count } }))
}
