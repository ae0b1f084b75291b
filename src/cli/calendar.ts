import { seasonTasks } from '#geo/calendar/tasks'
import { calendarFile, heightText } from '#geo/file/calendar'
import { checkPlan } from '#geo/plan/check'
import { cautionWith } from '#geo/wording/cautions'
import { type Answer, answer, jsonAnswer } from './answer'
import { joined, latestYear, noSeasons, openedPlan, withoutFieldChecks } from './plan-file'
import { problemLines } from './problems'

type Options = { readonly isJson: boolean; readonly year: number | null }

/** The season's work as an iCalendar file; `made` is the moment it is made at, in UTC. */
export function calendar(text: string, options: Options, made: string): Answer {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  if (plan === null || year === null) {
    const problems = plan === null ? ofReading : [...ofReading, noSeasons]
    return options.isJson ? jsonAnswer({ year, problems }, problems) : answer('', problemLines(problems), problems)
  }
  const outcome = seasonTasks(plan, year)
  const problems = withoutFieldChecks(joined(ofReading, joined(checkPlan(plan, year), outcome.problems)))
  if (options.isJson) {
    const height = heightText(plan.units)
    const tasks = (outcome.ok ? outcome.value : []).map(({ cautions, ...task }) => ({
      ...task,
      cautions: cautions.map(key => cautionWith(key, height).short),
    }))
    return jsonAnswer({ plan: plan.name, year, tasks, problems }, problems)
  }
  return answer(outcome.ok ? calendarFile(plan, outcome.value, made) : '', problemLines(problems), problems)
}
