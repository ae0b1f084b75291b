import { type Cut, fewestFemales } from '../stocking/fewest'
import type { TargetProblem } from './target-problem'

/** Cost under which no answer lies, by two linear programmes. */
export function leastCostBound(problem: TargetProblem): number {
  const pool: Cut[] = []
  const spread = spreadCost(problem, problem.most)
  const relaxed = fewestFemales(problem, { cost: spread, pool })
  if (relaxed === null) return Number.POSITIVE_INFINITY
  const fewest = fewestFemales(problem, { cost: problem.most.map(() => 1), pool })
  const [first] = problem.opening
  const isAlike = problem.opening.every((price, s) => price === first && problem.most[s] === problem.most[0])
  if (fewest === null || !isAlike || !Number.isFinite(problem.most[0] ?? Number.POSITIVE_INFINITY)) return relaxed.bound
  // Equal stations: so many females need at least so many of them.
  const stations = Math.ceil(fewest.bound / problem.most[0]! - 1e-6)
  return Math.max(relaxed.bound, stations * first! + fewest.bound * Math.min(...problem.cost))
}

/** Cost of a female when the price of her station is spread over so many. */
export function spreadCost({ cost, opening }: TargetProblem, over: ArrayLike<number>): number[] {
  return cost.map((each, s) => {
    const share = Number.isFinite(over[s]!) && over[s]! > 0 ? opening[s]! / over[s]! : 0
    return Math.max(each + share, 1e-9)
  })
}
