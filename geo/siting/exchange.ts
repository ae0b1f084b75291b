import { columnsOf, Openings, Served, type SitingProblem } from './objective'

/** A step must be worth at least this share of the value, so that rounding never makes the search go round. */
const leastStep = 1e-12

/** A choice of columns and what it is worth. */
export type Choice = { readonly chosen: readonly number[]; readonly value: number }

export type ExchangeOptions = {
  /** Columns that stay. */
  readonly fixed?: ReadonlySet<number>
  /** Columns that one column may be exchanged for; without, all. */
  readonly among?: (out: number) => readonly number[]
}

/**
 * Takes one chosen column out and puts a better one of the same kind in, until no such exchange helps (Teitz & Bart
 * 1968, with the ceiling that submodularity gives: an exchange gains no more than the new column alone would).
 */
export function exchange(
  problem: SitingProblem,
  from: readonly number[],
  { fixed = none, among }: ExchangeOptions = {},
): Choice {
  const { kind } = problem
  const chosen = [...from]
  const openings = new Openings(problem, chosen)
  const columns = columnsOf(problem)
  const ceilings = new Float64Array(columns)
  let served = new Served(problem, chosen)
  for (;;) {
    const order = among === undefined ? Array.from(ceilings.keys()) : []
    for (const column of order) ceilings[column] = served.gain(column)
    order.sort((a, b) => ceilings[b]! - ceilings[a]! || a - b)
    const least = leastStep * Math.abs(served.value)
    const losses = chosen.map(column => served.loss(column))
    const positions = Array.from(chosen.keys()).sort((a, b) => losses[a]! - losses[b]! || a - b)
    let isBetter = false
    for (const position of positions) {
      const out = chosen[position]!
      if (fixed.has(out)) continue
      served.remove(out)
      openings.free(out)
      let best = out
      let bestGain = losses[position]! + least
      for (const column of among?.(out) ?? order) {
        if (among === undefined && ceilings[column]! <= bestGain - losses[position]!) break
        if (kind[column] !== kind[out] || !openings.isOpen(column)) continue
        const gain = served.gain(column)
        if (gain > bestGain) {
          best = column
          bestGain = gain
        }
      }
      chosen[position] = best
      served.add(best)
      openings.take(best)
      if (best !== out) {
        isBetter = true
        break
      }
    }
    if (!isBetter) return { chosen, value: served.value }
    served = new Served(problem, chosen)
  }
}

const none: ReadonlySet<number> = new Set()
