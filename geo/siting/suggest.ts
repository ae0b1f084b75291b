import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { groundOf, nestingShare } from '../stocking/season-ground'
import { answerOf } from './answer'
import { withinBudget } from './budget'
import { placeStations, proven } from './place-stations'
import type { SuggestOptions } from './question'
import { type Setting, settingOf } from './setting'
import { cocoonsOfPlacings } from './stock-of-placings'
import type { Caution, Suggestion } from './suggestion'
import { forTarget } from './target'

/** Where to put stations and what to stock them with, or why that cannot be said. */
export async function suggest(plan: Plan, year: number, options: SuggestOptions): Promise<Outcome<Suggestion>> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  const value = await answerTo(settingOf(ground.value, options))
  return { ok: true, value, problems: ground.problems }
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
  const found = placeStations(setting, females, counts)
  const layout = prove === undefined ? found : await proven(setting, found, prove)
  const picks = layout.picks.map(pick => ({ ...pick, cocoons: perStation[pick.placing]! }))
  const asked = counts.reduce((sum, each) => sum + each, 0)
  const cautions: Caution[] = picks.length < asked ? [{ kind: 'few-places', asked, placed: picks.length }] : []
  return answerOf(setting, picks, { ...layout, cautions })
}
