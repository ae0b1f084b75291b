import type { Plan, Units } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import type { Report } from '#geo/report/report'
import { type Answer, answer, jsonAnswer } from './answer'
import { coverageText } from './coverage-text'
import { joined, latestYear, noSeasons, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'

type Options = { readonly isJson: boolean; readonly year: number | null; readonly units: Units | null }

/** A season's coverage as a table or as JSON. */
export function coverage(text: string, options: Options): Answer {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  if (plan === null || year === null) {
    const problems = plan === null ? ofReading : [...ofReading, noSeasons]
    return unanswered(plan, year, problems, options)
  }
  const outcome = evaluate(plan, year)
  const problems = joined(ofReading, outcome.problems)
  if (!outcome.ok) return unanswered(plan, year, problems, options)
  const report: Report = { ...outcome.value, problems }
  if (options.isJson) return jsonAnswer(report, problems)
  return answer(coverageText(plan, report, options.units ?? plan.units), linesBeside(problems), problems)
}

/** The shape of a result in which nothing could be worked out. */
function unanswered(plan: Plan | null, year: number | null, problems: readonly Problem[], options: Options): Answer {
  const result = { plan: plan?.name ?? null, year, orchard: null, plantings: [], stations: [], problems }
  return options.isJson ? jsonAnswer(result, problems) : answer('', problemLines(problems), problems)
}
