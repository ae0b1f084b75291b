import { seededRandom } from '../random'
import { type Choice, exchange } from './exchange'
import { greedy } from './greedy'
import { columnsOf, Openings, type SitingProblem, worthOf } from './objective'

export type SearchOptions = {
  readonly seed?: number
  /**
   * Restarts that must pass without anything better before the search ends; without, 3 to 100, fewer the larger the
   * problem.
   */
  readonly patience?: number | undefined
  /** A value that no choice can exceed: the search ends when it is reached. */
  readonly ceiling?: number
  /** A choice to begin from, in place of greedy's. */
  readonly start?: readonly number[] | undefined
  /** Columns that are in every choice. */
  readonly fixed?: readonly number[]
  /** Asked before every restart; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean
  readonly onProgress?: (done: number, best: Choice) => void
}

/** So few choices are all looked at. */
const fewChoices = 300

/** Entries of the matrix that idle restarts may read before the search ends. */
const usualWork = 4e5

/**
 * The best choice found by greedy, exchange and seeded restarts: some columns of the best choice give way to others at
 * random and exchange starts again from there. The same seed gives the same answer.
 */
export function search(problem: SitingProblem, options: SearchOptions = {}): Choice {
  const { seed = 1, ceiling = Number.POSITIVE_INFINITY, fixed = [] } = options
  const random = seededRandom(seed)
  const kept = new Set(fixed)
  const first = options.start ?? greedy(problem, fixed)
  options.onProgress?.(0, { chosen: first, value: worthOf(problem, first) })
  let best = exchange(problem, first, { fixed: kept })
  // An exchange that ends at once reads about every column once for each that is chosen.
  const perRestart = Math.max(1, problem.point.length) * Math.max(1, best.chosen.length - kept.size)
  const most = options.patience ?? Math.min(100, Math.max(3, Math.floor(usualWork / perRestart)))
  if (choicesOf(problem) <= fewChoices) return bestOfAll(problem, best, kept)
  options.onProgress?.(0, best)
  let idle = 0
  for (let done = 0; idle < most; done += 1) {
    if (best.chosen.length <= kept.size) break
    if (best.value >= ceiling * (1 - 1e-9) || options.shouldStop?.() === true) break
    const next = exchange(problem, shaken(problem, best.chosen, kept, random), { fixed: kept })
    idle += 1
    if (next.value > best.value * (1 + 1e-12)) {
      best = next
      idle = 0
    }
    options.onProgress?.(done + 1, best)
  }
  return best
}

/** A choice with a third of its columns, at least two, given up for others of their kind. */
function shaken(
  problem: SitingProblem,
  chosen: readonly number[],
  kept: ReadonlySet<number>,
  random: () => number,
): number[] {
  const { kind } = problem
  const next = [...chosen]
  const columns = columnsOf(problem)
  const openings = new Openings(problem, chosen)
  const changes = Math.max(2, Math.round(chosen.length / 3))
  for (let change = 0; change < changes; change += 1) {
    const position = Math.floor(random() * next.length)
    const out = next[position]!
    if (kept.has(out)) continue
    openings.free(out)
    // A few tries find a free place of the kind; on ground that is nearly full the column stays.
    for (let attempt = 0; attempt < 20 && next[position] === out; attempt += 1) {
      const column = Math.floor(random() * columns)
      if (kind[column] === kind[out] && openings.isOpen(column)) next[position] = column
    }
    openings.take(next[position]!)
  }
  return next
}

/** How many choices there are, clashes aside; each kind is chosen from its own columns. */
function choicesOf({ kind, count }: SitingProblem): number {
  return count.reduce((product, most, k) => {
    const of = kind.reduce((sum, each) => sum + (each === k ? 1 : 0), 0)
    let choices = 1
    for (let i = 0; i < Math.min(most, of - most); i += 1) choices *= (of - i) / (i + 1)
    return product * choices
  }, 1)
}

/** The best of all choices, by adding columns in their order. */
function bestOfAll(problem: SitingProblem, from: Choice, kept: ReadonlySet<number>): Choice {
  const columns = columnsOf(problem)
  const size = from.chosen.length
  let best = from
  const visit = (chosen: readonly number[], next: number): void => {
    if (chosen.length === size) {
      const value = worthOf(problem, chosen)
      if (value > best.value * (1 + 1e-12)) best = { chosen, value }
      return
    }
    const openings = new Openings(problem, chosen)
    for (let column = next; column < columns; column += 1) {
      if (!kept.has(column) && openings.isOpen(column)) visit([...chosen, column], column + 1)
    }
  }
  visit([...kept], 0)
  return best
}
