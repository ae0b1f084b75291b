import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { groundOf, nestingShare } from '../stocking/season-ground'
import { answerOf } from './answer'
import { withinBudget } from './budget'
import { type Layout, placeStations, proven } from './place-stations'
import type { SuggestOptions } from './question'
import { type Setting, settingOf } from './setting'
import { cocoonsOfPlacings } from './stock-of-placings'
import type { Caution, Suggestion } from './suggestion'
import { forTarget } from './target'
import { thinningOf } from './thinning'

/** Where to put stations and what to stock them with, or why that cannot be said. */
export async function suggest(plan: Plan, year: number, options: SuggestOptions): Promise<Outcome<Suggestion>> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  const setting = settingOf(ground.value, options)
  const value = await answerTo(setting)
  return { ok: true, value: { ...value, thinning: thinningOf(setting, value) }, problems: ground.problems }
}

async function answerTo(setting: Setting): Promise<Suggestion> {
  const { question } = setting.options
  switch (question.kind) {
    case 'stations':
      return moreStations(setting, question)
    case 'target':
      return forTarget(setting, question.coverage)
    case 'money':
    case 'cocoons':
      return withinBudget(setting, question)
    default:
      return question satisfies never
  }
}

async function moreStations(
  setting: Setting,
  { count, cocoons }: { readonly count: number; readonly cocoons?: number },
): Promise<Suggestion> {
  const { settings } = setting.ground
  const { setOf = 1, prove } = setting.options
  const perStation = cocoonsOfPlacings(setting, cocoons === undefined ? undefined : setOf * Math.ceil(cocoons / setOf))
  const females = setting.placings.map(({ kind }, p) => perStation[p]! * nestingShare(settings.bees[kind.bee]))
  const counts = setting.placings.map(({ moves }) => (moves === null ? count : 1))
  const asked = counts.reduce((sum, each) => sum + each, 0)
  const answer = (layout: Layout): Suggestion => {
    const picks = layout.picks.map(pick => ({ ...pick, cocoons: perStation[pick.placing]! }))
    const cautions: Caution[] = picks.length < asked ? [{ kind: 'few-places', asked, placed: picks.length }] : []
    return answerOf(setting, picks, { ...layout, cautions })
  }
  const found = placeStations(setting, females, counts, { answer })
  return answer(prove === undefined ? found : await proven(setting, found, prove))
}
