import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { groundOf, nestingShare } from '../stocking/season-ground'
import { cocoonsInSets, usualFemales } from '../stocking/stock'
import { exchange } from './exchange'
import { greedy } from './greedy'
import { fullValue, worthOf } from './objective'
import type { SuggestOptions } from './question'
import { matrixOf, settingOf } from './setting'

/** Coverage that so many more stations would bring. */
export type CurvePoint = { readonly stations: number; readonly coverage: number }

/**
 * Coverage against the number of new stations, from none to `most`: where another box stops paying. Each has the same
 * stock (`cocoons`, or enough for 50 nesting females). Found by greedy and exchange on unrefined places, so a
 * suggestion for the same number covers a little more. Stations that were to move stay.
 */
export function coverageCurve(
  plan: Plan,
  year: number,
  options: Omit<SuggestOptions, 'question'> & { readonly most: number; readonly cocoons?: number },
): Outcome<readonly CurvePoint[]> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  const { most, cocoons, ...rest } = options
  const roles = Object.fromEntries(Object.entries(rest.roles ?? {}).filter(([, role]) => role === 'drop'))
  const setting = settingOf(ground.value, { ...rest, roles, question: { kind: 'stations', count: most } })
  const bee = ground.value.settings.bees[setting.placings[0]!.kind.bee]
  const females = (cocoons ?? cocoonsInSets(usualFemales, bee, rest.setOf ?? 1)) * nestingShare(bee)
  const problem = matrixOf(setting, [females], [most])
  const full = fullValue(problem)
  const order = greedy(problem)
  const points: CurvePoint[] = []
  let last = 0
  for (let stations = 0; stations <= order.length && rest.shouldStop?.() !== true; stations += 1) {
    const start = order.slice(0, stations)
    const { value } =
      stations === 0 ? { value: worthOf(problem, []) } : exchange({ ...problem, count: [stations] }, start)
    // One station more never covers less.
    last = Math.max(last, full > 0 ? Math.min(1, value / full) : 0)
    points.push({ stations, coverage: last })
  }
  return { ok: true, value: points, problems: ground.problems }
}
