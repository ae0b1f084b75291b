import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { modelOf } from './model'
import type { Report } from './report'

/** Coverage of a plan in the season `year`, with what holds each planting back. */
export function evaluate(plan: Plan, year: number): Outcome<Report> {
  const model = modelOf(plan, year)
  if (!model.ok) return model
  const report = model.value.report({ withLimits: true })
  return { ok: true, value: report, problems: report.problems }
}
