import { acceptSuggestion } from '#geo/siting/accept'
import type { Question } from '#geo/siting/question'
import { suggest as suggestFor } from '#geo/siting/suggest'
import type { Solver } from '#geo/stocking/solver'
import { answer, jsonAnswer, type Planned } from './answer'
import { joined, latestYear, noSeasons, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'
import { suggestText } from './suggest-text'

type Options = {
  readonly isJson: boolean
  readonly year: number | null
  readonly stations: number | null
  readonly target: number | null
  readonly isProving: boolean
  readonly isAdvised: boolean
}

/** Seconds that a proof may take. */
const proofTime = 60

/** Where to put stations, for coverage or for a target. */
export async function suggest(text: string, options: Options, solver: () => Promise<Solver>): Promise<Planned> {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  const nothing = (problems: typeof ofReading): Planned => ({
    plan: null,
    answer: options.isJson ? jsonAnswer({ year, problems }, problems) : answer('', problemLines(problems), problems),
  })
  if (plan === null || year === null) return nothing(plan === null ? ofReading : [...ofReading, noSeasons])
  const question: Question =
    options.target === null
      ? { kind: 'stations', count: options.stations ?? 1 }
      : { kind: 'target', coverage: options.target }
  const prove = options.isProving ? { solver: await solver(), timeLimit: proofTime } : undefined
  const outcome = await suggestFor(plan, year, {
    question,
    ...(prove && { prove }),
    ...(options.isAdvised && { dates: 'advice' }),
  })
  const problems = joined(ofReading, outcome.problems)
  if (!outcome.ok) return nothing(problems)
  const told = options.isJson
    ? jsonAnswer({ ...outcome.value, problems }, problems)
    : answer(suggestText(plan, question, outcome.value), linesBeside(problems), problems)
  return { plan: acceptSuggestion(plan, outcome.value).apply(plan), answer: told }
}
