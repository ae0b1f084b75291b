import type { Plan } from '../plan/plan'
import type { Outcome } from '../problem'
import { groundOf, nestingShare } from '../stocking/season-ground'
import { assumedPrices, cocoonsInSets, costOf, stockOf, usualFemales } from '../stocking/stock'
import { upperBound } from './bound'
import { exchange } from './exchange'
import { greedy } from './greedy'
import { columnsOf, fullValue, worthOf } from './objective'
import type { SuggestOptions } from './question'
import { matrixOf, settingOf } from './setting'
import { femalesOfMovers } from './stock-of-placings'

/** What so many more stations would bring, what no layout of them exceeds, and what they cost. */
export type CurvePoint = {
  readonly count: number
  readonly coverage: number | null
  readonly bound: number | null
  readonly cost: number
}

export type CurveOptions = Omit<SuggestOptions, 'question' | 'prove' | 'onProgress'> & {
  /** New stations at most. */
  readonly most: number
  /** Female cocoons of each; enough for 50 nesting females unless told. */
  readonly cocoons?: number
  /** Told each point as it is known. */
  readonly onPoint?: (point: CurvePoint) => void
}

/**
 * Coverage against the number of new stations, from none to `most` or as many as find room: where another box stops
 * paying. All have the same stock. Found by greedy and exchange on unrefined places, so a suggestion for the same number
 * covers a little more; no point lies under the one before.
 */
export function coverageCurve(plan: Plan, year: number, options: CurveOptions): Outcome<readonly CurvePoint[]> {
  const ground = groundOf(plan, year)
  if (!ground.ok) return ground
  const { most, cocoons, onPoint, ...rest } = options
  const setting = settingOf(ground.value, { ...rest, question: { kind: 'stations', count: most } })
  const { settings } = ground.value
  const bee = settings.bees[setting.placings[0]!.kind.bee]
  const each = cocoons ?? cocoonsInSets(usualFemales, bee, rest.setOf ?? 1)
  const prices = rest.prices ?? assumedPrices
  const price = prices.station + costOf(stockOf(each, bee, settings.site), prices)
  const movers = femalesOfMovers(setting)
  const all = matrixOf(setting, [each * nestingShare(bee), ...movers], [most, ...movers.map(() => 1)])
  const full = fullValue(all)
  const shareOf = (value: number) => (full > 0 ? Math.min(1, value / full) : null)
  const points: CurvePoint[] = []
  let last = worthOf(all, [])
  for (let count = 0; count <= most && rest.shouldStop?.() !== true; count += 1) {
    const problem = { ...all, count: [count, ...movers.map(() => 1)] }
    const start = greedy(problem)
    if (start.filter(column => column < columnsOf(problem) / setting.placings.length).length < count) break
    const { chosen, value } = exchange(problem, start)
    // One station more never covers less.
    last = Math.max(last, value)
    const bound = Math.max(last, upperBound(problem, { best: value, chosen }))
    const point = { count, coverage: shareOf(last), bound: shareOf(bound), cost: count * price }
    points.push(point)
    onPoint?.(point)
  }
  return { ok: true, value: points, problems: ground.problems }
}
