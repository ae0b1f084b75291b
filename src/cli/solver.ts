import { highsSolver } from '#geo/stocking/highs-solver'
import type { Solver } from '#geo/stocking/solver'

/** The HiGHS solver, loaded when it is first asked for. */
export async function solver(): Promise<Solver> {
  const { default: load } = await import('highs')
  return highsSolver(await load())
}
