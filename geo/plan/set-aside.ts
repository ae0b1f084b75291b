import { isFieldCheck, type Problem } from '../problem'
import { type Plan, seasonOf } from './plan'

/** Problems of a season with the grower's reason at each field check that was put aside. */
export function withSetAside(plan: Plan, year: number, problems: readonly Problem[]): readonly Problem[] {
  const aside = seasonOf(plan, year)?.setAside ?? []
  if (aside.length === 0) return problems
  return problems.map(problem => {
    const entry = isFieldCheck(problem) && aside.find(({ code, at }) => code === problem.code && at === problem.at)
    return entry ? { ...problem, setAside: entry.reason } : problem
  })
}
