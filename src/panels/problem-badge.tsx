import { setAsideOf } from '#geo/plan/set-aside'
import type { Problem } from '#geo/problem'
import { problemsOf } from '../state/selectors'
import { counted } from '../text/words'
import { alikeProblems } from './alike-problems'
import { useEvaluation, usePlan, useSeason, useYear } from './hooks'
import { useShell } from './shell'

/** What the field checks and the count have found, each once, worst first; without what was set aside this season. */
export function useProblems(): readonly Problem[] {
  const season = useSeason()
  return useAllProblems().filter(problem => setAsideOf(season, problem) === null)
}

/** The same with what was set aside. */
export function useAllProblems(): readonly Problem[] {
  const checked = problemsOf(usePlan(), useYear())
  const { value, isFresh } = useEvaluation()
  const computed = isFresh && value ? value.report.problems : []
  const known = new Set<string>()
  const order = { error: 0, warning: 1, note: 2 }
  return [...checked, ...computed]
    .filter(problem => {
      const key = `${problem.code} ${problem.at} ${JSON.stringify(problem.values)}`
      return !known.has(key) && known.add(key)
    })
    .sort((a, b) => order[a.severity] - order[b.severity])
}

/** How many problems there are; pressing opens them. Nothing where there is none. */
export function ProblemBadge() {
  const plan = usePlan()
  const problems = alikeProblems(plan, useProblems())
  const { side, showSide } = useShell()
  if (problems.length === 0) return null
  const errors = problems.filter(({ first }) => first.severity === 'error').length
  return (
    <button
      type="button"
      className="quiet problem-badge"
      aria-expanded={side === 'problems'}
      onClick={() => showSide(side === 'problems' ? null : 'problems')}
    >
      {counted(problems.length, 'problem')}
      {errors > 0 ? `, ${errors === 1 ? 'one stops' : `${errors} stop`} the count` : ' to look at'}
    </button>
  )
}
