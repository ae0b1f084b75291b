import type { LinearProgramme } from '../stocking/solver'
import type { TargetProblem } from './target-problem'

/**
 * The target as a mixed-integer programme with whole females, every point counted up to what it wants: first females at
 * each station, then whether it is open, what each point counts, and which openings cost nothing.
 */
export function targetProgramme(problem: TargetProblem): LinearProgramme {
  const { services, wanted, base, group, need, most, cost, opening, free = 0 } = problem
  const sites = most.length
  const rows = Array.from(wanted, (_, i) => ({
    low: Number.NEGATIVE_INFINITY,
    high: base[i]!,
    terms: [{ column: 2 * sites + i, factor: 1 }],
  }))
  for (let s = 0; s < sites; s += 1) {
    for (let entry = services.start[s]!; entry < services.start[s + 1]!; entry += 1) {
      rows[services.point[entry]!]!.terms.push({ column: s, factor: -services.service[entry]! })
    }
  }
  const open = most.map((limit, s) => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [
      { column: s, factor: 1 },
      { column: sites + s, factor: -limit },
    ],
  }))
  const needs = Array.from(need, (low, g) => ({
    low,
    high: Number.POSITIVE_INFINITY,
    terms: Array.from(wanted.keys())
      .filter(i => group[i] === g)
      .map(i => ({ column: 2 * sites + i, factor: 1 })),
  }))
  const apart = (problem.clashes ?? []).flatMap((near, s) =>
    Array.from(near)
      .filter(other => other > s)
      .map(other => ({
        low: 0,
        high: 1,
        terms: [s, other].map(each => ({ column: sites + each, factor: 1 })),
      })),
  )
  // A station that moves saves the price of a place that is open.
  const movable = free > 0 ? opening.flatMap((price, s) => (price > 0 ? [s] : [])) : []
  const firstMoved = 2 * sites + wanted.length
  const moved = movable.map((s, i) => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [
      { column: firstMoved + i, factor: 1 },
      { column: sites + s, factor: -1 },
    ],
  }))
  const movers = { low: 0, high: free, terms: movable.map((_, i) => ({ column: firstMoved + i, factor: 1 })) }
  return {
    sense: 'least',
    columns: [
      ...cost.map((each, s) => ({ cost: each, low: 0, high: most[s]!, isWhole: true })),
      ...opening.map(price => ({ cost: price, low: 0, high: 1, isWhole: true })),
      ...Array.from(wanted, high => ({ cost: 0, low: 0, high })),
      ...movable.map(s => ({ cost: -opening[s]!, low: 0, high: 1 })),
    ],
    rows: [...rows, ...open, ...needs, ...apart, ...moved, ...(movable.length > 0 ? [movers] : [])],
  }
}

/** The places that a solution of the programme opens. */
export function openIn({ most }: TargetProblem, values: ArrayLike<number>): number[] {
  return most.flatMap((_, s) => (values[most.length + s]! > 0.5 && values[s]! > 1e-6 ? [s] : []))
}
