import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { groundOf, nestingShare } from '../stocking/season-ground'
import { answerOf } from './answer'
import { withinBudget } from './budget'
import { type Layout, placeStations, proven } from './place-stations'
import type { SuggestOptions } from './question'
import { type Setting, settingOf } from './setting'
import { type Answered, stayOrMove } from './stay-or-move'
import { cocoonsOfPlacings } from './stock-of-placings'
import type { Caution, Suggestion } from './suggestion'
import { thinningOf } from './thinning'

/** Where to put stations and what to stock them with, or why that cannot be said. */
export async function suggest(plan: Plan, year: number, options: SuggestOptions): Promise<Outcome<Suggestion>> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  const setting = settingOf(ground.value, options)
  const { setting: asked, value } = await answerTo(setting)
  // The answer stands: what thinning costs may come later, or never.
  const { coverage } = value.after
  options.onProgress?.({ stage: 'report', coverage, bound: value.bound.coverage }, () => value)
  return { ok: true, value: { ...value, thinning: thinningOf(asked, value) }, problems: ground.problems }
}

async function answerTo(setting: Setting): Promise<Answered> {
  const { question } = setting.options
  switch (question.kind) {
    case 'stations':
      return { setting, value: await moreStations(setting, question) }
    case 'target':
      return stayOrMove(setting, question.coverage)
    case 'money':
    case 'cocoons':
      return { setting, value: await withinBudget(setting, question) }
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
