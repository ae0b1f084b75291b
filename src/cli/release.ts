import { acceptAdvice } from '#geo/timing/accept-advice'
import { releaseAdvice } from '#geo/timing/release-advice'
import { answer, jsonAnswer, type Planned } from './answer'
import { joined, latestYear, noSeasons, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'
import { releaseText } from './release-text'

type Options = {
  readonly isJson: boolean
  readonly year: number | null
  readonly batches: 1 | 2 | 3 | null
  /** Id of a station; null = all of the season. */
  readonly station: string | null
}

/** When to set out the cocoons that the stations of a season hold; two batches at most unless told. */
export function release(text: string, { isJson, batches, station, ...options }: Options): Planned {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  const nothing = (problems: typeof ofReading): Planned => ({
    plan: null,
    answer: isJson ? jsonAnswer({ year, problems }, problems) : answer('', problemLines(problems), problems),
  })
  if (plan === null || year === null) return nothing(plan === null ? ofReading : [...ofReading, noSeasons])
  const outcome = releaseAdvice(plan, year, { scope: station ?? 'orchard', batches: batches ?? 2 })
  const problems = joined(ofReading, outcome.problems)
  if (!outcome.ok) return nothing(problems)
  const advised = acceptAdvice(year, outcome.value).apply(plan)
  const told = isJson
    ? jsonAnswer({ ...outcome.value, problems }, problems)
    : answer(releaseText(advised, outcome.value), linesBeside(problems), problems)
  return { plan: advised, answer: told }
}
