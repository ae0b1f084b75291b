import { readPlan } from '#geo/file/read'
import { checkPlan } from '#geo/plan/check'
import type { Plan } from '#geo/plan/plan'
import { isFieldCheck, type Problem } from '#geo/problem'

/** A plan, or null where nothing could be opened, with what was said about it on the way. */
export type Opened = {
  readonly plan: Plan | null
  /** All there is to say about the file and what it means, whatever the season. */
  readonly problems: readonly Problem[]
  /** Of these, what only reading can tell; the rest is told again by whoever works out a season. */
  readonly ofReading: readonly Problem[]
}

export function openedPlan(text: string): Opened {
  const outcome = readPlan(text)
  if (!outcome.ok) return { plan: null, problems: outcome.problems, ofReading: outcome.problems }
  const ofMeaning = new Set(checkPlan(outcome.value).map(same))
  const ofReading = outcome.problems.filter(problem => !ofMeaning.has(same(problem)))
  return { plan: outcome.value, problems: outcome.problems, ofReading }
}

/** Without what the field checks find in stations: they bear neither on what is drawn nor on the numbers in use. */
export function withoutFieldChecks(problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(problem => !isFieldCheck(problem))
}

/** The latest season of a plan; null where it has none. */
export function latestYear(plan: Plan): number | null {
  return plan.seasons.length === 0 ? null : Math.max(...plan.seasons.map(({ year }) => year))
}

/** There is nothing to work out in a plan without a season. */
export const noSeasons: Problem = { code: 'no-seasons', severity: 'error', at: 'plan.seasons', values: {} }

/** Both lists, what stands in both told once. */
export function joined(first: readonly Problem[], second: readonly Problem[]): readonly Problem[] {
  const told = new Set(first.map(same))
  return [...first, ...second.filter(problem => !told.has(same(problem)))]
}

function same(problem: Problem): string {
  return JSON.stringify(problem)
}
