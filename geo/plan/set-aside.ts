import { isFieldCheck, type Problem } from '../problem'
import { type Plan, type Season, type SetAside, seasonOf } from './plan'

/** Where and why a field check was put aside in a season; null where it was not, and for problems of other sorts. */
export function setAsideOf(season: Season | undefined, problem: Problem): SetAside | null {
  if (!isFieldCheck(problem)) return null
  return season?.setAside?.find(({ code, at }) => code === problem.code && at === problem.at) ?? null
}

/** Problems of a season with the grower's reason at each field check that was put aside. */
export function withSetAside(plan: Plan, year: number, problems: readonly Problem[]): readonly Problem[] {
  const season = seasonOf(plan, year)
  if (season?.setAside === undefined) return problems
  return problems.map(problem => {
    const entry = setAsideOf(season, problem)
    return entry === null ? problem : { ...problem, setAside: entry.reason }
  })
}
