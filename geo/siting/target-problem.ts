import type { StockProblem } from '../stocking/fewest'

/**
 * A target at least cost, apart from orchards: which stations to open at a price each, and how many females each holds
 * at `cost` a female, so that every group is served what it needs.
 */
export type TargetProblem = StockProblem & {
  /** Price of opening each station; 0 for one that stands already. */
  readonly opening: readonly number[]
  /** Females come in units of so many at each station. */
  readonly unit: readonly number[]
  /** For each station, those too near to it. */
  readonly clashes?: readonly ArrayLike<number>[]
}
