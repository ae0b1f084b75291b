import { hasErrors, type Outcome } from '../problem'
import { checkPlan } from './check'
import { type Plan, type Season, seasonOf } from './plan'

/** The season to work out, with all that a check of the plan found; or why it cannot be worked out. */
export function computableSeason(plan: Plan, year: number): Outcome<Season> {
  const problems = checkPlan(plan, year)
  const value = seasonOf(plan, year)
  if (value === undefined) {
    const seasons = plan.seasons.map(season => season.year).join(', ')
    const missing = { code: 'no-season', severity: 'error', at: '', values: { year, seasons } } as const
    return { ok: false, problems: [...problems, missing] }
  }
  return hasErrors(problems) ? { ok: false, problems } : { ok: true, value, problems }
}
