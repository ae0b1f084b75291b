import { type Cut, fewestFemales } from '../stocking/fewest'
import type { TargetProblem } from './target-problem'

/** Cost under which no answer lies, by linear programmes. */
export function leastCostBound(problem: TargetProblem): number {
  const { opening, most, cost, free = 0 } = problem
  const pool: Cut[] = []
  const relaxed = fewestFemales(problem, { cost: spreadCost(problem, most), pool })
  if (relaxed === null) return Number.POSITIVE_INFINITY
  // What stations that move save is at most the dearest openings; stock alone is paid for in any case.
  const dearest = [...opening].sort((a, b) => b - a)
  const saved = dearest.slice(0, free).reduce((sum, price) => sum + price, 0)
  const stock = free > 0 ? (fewestFemales(problem, { cost, pool })?.bound ?? 0) : 0
  const least = Math.max(relaxed.bound - saved, stock)
  const fewest = fewestFemales(problem, { cost: most.map(() => 1), pool })
  const largest = Math.max(...most)
  if (fewest === null || !Number.isFinite(largest)) return least
  // So many females need at least so many stations; those that cost least are opened first.
  const stations = Math.ceil(fewest.bound / largest - 1e-6)
  const paid = dearest
    .reverse()
    .slice(0, Math.max(0, stations - free))
    .reduce((sum, price) => sum + price, 0)
  return Math.max(least, paid + fewest.bound * Math.min(...cost))
}

/** Cost of a female when the price of her station is spread over so many. */
export function spreadCost({ cost, opening }: TargetProblem, over: ArrayLike<number>): number[] {
  return cost.map((each, s) => {
    const share = Number.isFinite(over[s]!) && over[s]! > 0 ? opening[s]! / over[s]! : 0
    return Math.max(each + share, 1e-9)
  })
}
