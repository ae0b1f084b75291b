import { withSetAside } from '#geo/plan/set-aside'
import { type Problem, problemText } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import { oneLine } from '#geo/wording/plain'
import { type Answer, answer, jsonAnswer } from './answer'
import { joined, latestYear, openedPlan } from './plan-file'
import { problemCount, problemList } from './problems'

const noSeasons: Problem = { code: 'no-seasons', severity: 'note', at: 'plan.seasons', values: {} }

type Options = { readonly isJson: boolean; readonly year: number | null }

/** All that is wrong or doubtful: of the whole file and its latest season, or of the one season asked for. */
export function check(text: string, options: Options): Answer {
  const { plan, problems: all, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  const ofSeason = plan === null || year === null ? [] : evaluate(plan, year).problems
  const ofNoSeason = plan !== null && year === null ? [noSeasons] : []
  const found = joined(options.year === null ? all : ofReading, [...ofSeason, ...ofNoSeason])
  const marked = plan === null || year === null ? found : withSetAside(plan, year, found)
  const problems = marked.filter(({ setAside }) => setAside === undefined)
  if (options.isJson) {
    const told = marked.map(problem => ({ ...problem, text: problemText(problem) }))
    return jsonAnswer({ plan: plan?.name ?? null, year, problems: told }, problems)
  }
  const list = problems.length === 0 ? '' : `\n${problemList(problems)}`
  const what = plan === null ? 'The file cannot be opened' : oneLine(plan.name) || 'The plan'
  const when = year === null ? '' : options.year === null ? `, latest season ${year}` : `, season ${year}`
  return answer(`${what}${when}: ${problemCount(problems)}\n${list}${asideText(marked)}`, '', problems)
}

/** The field checks that the grower has put aside, with the reasons given. */
function asideText(problems: readonly Problem[]): string {
  const aside = problems.filter(({ setAside }) => setAside !== undefined)
  if (aside.length === 0) return ''
  const lines = aside.map(
    problem => `  ${oneLine(problemText(problem))}\n    Reason: ${oneLine(problem.setAside || 'none given')}\n`,
  )
  return `\nPut aside (${aside.length}):\n${lines.join('')}`
}
