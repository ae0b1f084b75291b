import { columnsOf, Openings, Served, type SitingProblem } from './objective'

/**
 * Chooses one column at a time, each time the one that adds most. A gain only falls as the set grows, so a gain from an
 * earlier round is a ceiling, and only columns whose ceiling is still the highest are worked out again (Minoux 1978,
 * accelerated greedy). With one kind of station the value is at least 1 - 1/e of the best there is
 * (Nemhauser, Wolsey & Fisher 1978). `given` columns are in the set from the start and count towards their kinds.
 */
export function greedy(problem: SitingProblem, given: readonly number[] = []): number[] {
  const chosen = [...given]
  const served = new Served(problem, given)
  const openings = new Openings(problem, given)
  const ceilings = Float64Array.from({ length: columnsOf(problem) }, (_, column) => served.gain(column))
  const order = Array.from(ceilings.keys()).sort((a, b) => ceilings[b]! - ceilings[a]! || a - b)
  for (;;) {
    let best = -1
    let bestGain = Number.NEGATIVE_INFINITY
    for (const column of order) {
      if (!openings.isOpen(column)) continue
      if (ceilings[column]! < bestGain) break
      const gain = served.gain(column)
      ceilings[column] = gain
      if (gain > bestGain || (gain === bestGain && column < best)) {
        best = column
        bestGain = gain
      }
    }
    if (best < 0) return chosen
    chosen.push(best)
    served.add(best)
    openings.take(best)
    order.sort((a, b) => ceilings[b]! - ceilings[a]! || a - b)
  }
}
