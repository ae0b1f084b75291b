import loadHighs from 'highs'
import wasm from 'highs/runtime?url'
import { highsSolver } from '#geo/stocking/highs-solver'
import type { Solver } from '#geo/stocking/solver'

/** The general solver. It is some megabytes, so it is loaded only when a proof is asked for. */
export async function solver(): Promise<Solver> {
  return highsSolver(await loadHighs({ locateFile: () => wasm }))
}
