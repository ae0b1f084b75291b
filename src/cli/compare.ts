import { compareSeasons } from '#geo/seasons/compare'
import { type Answer, answer, jsonAnswer } from './answer'
import { compareText } from './compare-text'
import { joined, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'

type Options = { readonly isJson: boolean; readonly years: readonly [number, number] | null }

/** One season beside another, as tables or as JSON. */
export function compare(text: string, { isJson, years }: Options): Answer {
  const { plan, ofReading } = openedPlan(text)
  const outcome = plan === null || years === null ? null : compareSeasons(plan, ...years)
  const problems = joined(ofReading, outcome?.problems ?? [])
  if (plan === null || outcome === null || !outcome.ok) {
    const result = { years, orchard: null, plantings: [], problems }
    return isJson ? jsonAnswer(result, problems) : answer('', problemLines(problems), problems)
  }
  if (isJson) return jsonAnswer({ ...outcome.value, problems }, problems)
  return answer(compareText(plan, outcome.value), linesBeside(problems), problems)
}
