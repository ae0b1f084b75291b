import { Served, type SitingProblem } from './objective'

/**
 * Shares whole sets of bees out among chosen columns, whose service is that of one set: each set goes where it adds
 * most (the value is concave in every station's stock), then sets change stations as long as that helps. At most `most`
 * sets in one station. Returns the sets of each, in the order of `columns`.
 */
export function sharedOut(
  problem: SitingProblem,
  columns: readonly number[],
  { sets, most }: { readonly sets: number; readonly most: number },
): number[] {
  const shares = columns.map(() => 0)
  const served = new Served(problem)
  let left = Math.min(sets, most * columns.length)
  // Many sets go out by handfuls first.
  for (let handful = Math.max(1, Math.floor(left / 200)); left > 0; handful = 1) {
    while (left >= handful && left > 0) {
      const to = best(columns, s => (shares[s]! + handful <= most ? served.gainOf(columns[s]!, handful) : never))
      if (to < 0) break
      served.change(columns[to]!, handful)
      shares[to]! += handful
      left -= handful
    }
    if (handful === 1) break
  }
  for (let round = 0; round < 200; round += 1) {
    const from = best(columns, s => (shares[s]! > 0 ? served.gainOf(columns[s]!, -1) : never))
    if (from < 0) break
    const loss = -served.gainOf(columns[from]!, -1)
    served.change(columns[from]!, -1)
    const to = best(columns, s => (s !== from && shares[s]! < most ? served.gainOf(columns[s]!, 1) : never))
    if (to < 0 || served.gainOf(columns[to]!, 1) <= loss * (1 + 1e-9)) {
      served.change(columns[from]!, 1)
      break
    }
    served.change(columns[to]!, 1)
    shares[from]! -= 1
    shares[to]! += 1
  }
  return shares
}

const never = Number.NEGATIVE_INFINITY

/** Position with the greatest figure; -1 where there is none. */
function best(columns: readonly number[], figure: (position: number) => number): number {
  let found = -1
  let most = never
  columns.forEach((_, position) => {
    const value = figure(position)
    if (value > most) {
      most = value
      found = position
    }
  })
  return found
}
