import type { StockProblem } from '../stocking/fewest'

/**
 * A target at least cost, apart from orchards: which stations to open at a price each, and how many females each holds
 * at `cost` a female, so that every group is served what it needs.
 */
export type TargetProblem = StockProblem & {
  /** Price of opening each station; 0 for one that stands already. */
  readonly opening: readonly number[]
  /** So many openings, the dearest, cost nothing: stations that stand elsewhere move there. None unless told. */
  readonly free?: number
  /** Females come in units of so many at each station. */
  readonly unit: readonly number[]
  /** For each station, those too near to it. */
  readonly clashes?: readonly ArrayLike<number>[]
}

/** What it costs to open some stations. */
export function openingCost(
  { opening, free = 0 }: Pick<TargetProblem, 'opening' | 'free'>,
  stations: readonly number[],
): number {
  const prices = stations.map(s => opening[s]!)
  if (free > 0) prices.sort((a, b) => b - a)
  return prices.slice(free).reduce((sum, price) => sum + price, 0)
}
