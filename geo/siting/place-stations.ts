import type { Metres } from '../space/plane'
import { upperBound } from './bound'
import { leastPitch } from './candidates'
import { type Choice, exchange } from './exchange'
import { fullValue, Openings, type SitingProblem, worthOf } from './objective'
import { prove } from './programme'
import type { SuggestOptions } from './question'
import { search } from './search'
import { matrixOf, refine, type Setting } from './setting'
import type { BoundMethod, Suggestion } from './suggestion'

/** A station put at a place: indices into a setting's placings and sites. */
export type Pick = { readonly placing: number; readonly site: number }

/** Where stations of given stock should stand, and what no other choice of these places can exceed. */
export type Layout = {
  readonly picks: readonly Pick[]
  /** Value of the picks and its ceiling, in weighed females served. */
  readonly value: number
  readonly bound: number
  readonly isProven: boolean
  readonly method: BoundMethod
  readonly problem: SitingProblem
}

type PlaceOptions = {
  /** Finer places are tried round the best. */
  readonly isRefined?: boolean
  readonly patience?: number
  /** Without, all that points want stands for the bound. */
  readonly isBounded?: boolean
  /** Makes an answer of the best layout so far, for whoever follows the search. */
  readonly answer?: (layout: Layout) => Suggestion
}

/** Rounds of finer places round the best so far. */
const rounds = 3

/** Chooses places for `count[p]` stations of placing p with `females[p]` nesting females each. */
export function placeStations(
  setting: Setting,
  females: readonly number[],
  count: readonly number[],
  { isRefined = true, patience, isBounded = true, answer }: PlaceOptions = {},
): Layout {
  const { seed = 1, shouldStop, onProgress } = setting.options
  let problem = matrixOf(setting, females, count)
  const full = fullValue(problem)
  const shareOf = (value: number) => (full > 0 ? value / full : null)
  const told = (choice: Choice) => {
    const now = answer && (() => answer(layoutOf(setting, problem, choice, { isBounded: true })))
    onProgress?.({ stage: 'search', coverage: shareOf(choice.value), bound: null }, now)
  }
  const settings = {
    seed,
    patience,
    ...(shouldStop && { shouldStop }),
    onProgress: (_: number, choice: Choice) => told(choice),
  }
  let best = search(problem, settings)
  let picks = best.chosen.map(column => pickOf(setting, column))
  for (let round = 0; isRefined && round < rounds && shouldStop?.() !== true; round += 1) {
    const places: Metres[] = picks.map(({ site }) => setting.sites[site]!)
    if (places.length === 0 || !refine(setting, places, round)) break
    problem = matrixOf(setting, females, count)
    const start = picks.map(pick => columnOf(setting, pick))
    best = exchange(problem, start, { among: out => nearColumns(setting, out) })
    picks = best.chosen.map(column => pickOf(setting, column))
    told(best)
  }
  best = onStanding(setting, problem, best)
  const layout = layoutOf(setting, problem, best, { isBounded })
  if (isBounded) onProgress?.({ stage: 'bound', coverage: shareOf(layout.value), bound: shareOf(layout.bound) })
  return layout
}

/** A choice as a layout; without a bound of its own, what all points want is one. */
function layoutOf(
  setting: Setting,
  problem: SitingProblem,
  { chosen }: Choice,
  { isBounded }: { readonly isBounded: boolean },
): Layout {
  const { shouldStop } = setting.options
  const picks = chosen.map(column => pickOf(setting, column))
  const value = worthOf(problem, chosen)
  const bound = isBounded
    ? upperBound(problem, { best: value, chosen, ...(shouldStop && { shouldStop }) })
    : fullValue(problem)
  return { picks, value, bound, isProven: isSame(value, bound), method: 'lagrangian', problem }
}

/** A station that stands unused is taken for a new one if that costs no more than this share of the value. */
const littleLoss = 1e-3

/** In place of new stations those that stand unused, where they do nearly as well. */
function onStanding(setting: Setting, problem: SitingProblem, from: Choice): Choice {
  const { sites, unused } = setting
  if (unused.size === 0) return from
  const standing = (column: number) => unused.has(sites[column % sites.length]!.id)
  let best = from
  for (let column = 0; column < sites.length; column += 1) {
    if (!standing(column) || best.chosen.includes(column)) continue
    for (const out of best.chosen.filter(each => each < sites.length && !standing(each))) {
      const chosen = best.chosen.map(each => (each === out ? column : each))
      const openings = new Openings(
        problem,
        chosen.filter(each => each !== column),
      )
      const value = openings.isOpen(column) ? worthOf(problem, chosen) : 0
      if (value < from.value * (1 - littleLoss)) continue
      best = { chosen, value }
      break
    }
  }
  return best
}

/** Columns of the same placing at the places round the one where column `out` stands. */
function nearColumns(setting: Setting, out: number): readonly number[] {
  const { placing, site } = pickOf(setting, out)
  const { x, y } = setting.sites[site]!
  const reach = Math.max(leastPitch, setting.candidates.pitch)
  return setting.sites.flatMap((other, i) =>
    Math.abs(other.x - x) <= reach && Math.abs(other.y - y) <= reach ? [columnOf(setting, { placing, site: i })] : [],
  )
}

/** Asks a solver to prove a layout, or to find a better one. The bound is kept when it is stopped. */
export async function proven(
  setting: Setting,
  layout: Layout,
  how: NonNullable<SuggestOptions['prove']>,
): Promise<Layout> {
  const { shouldStop, onProgress } = setting.options
  const { problem } = layout
  const full = fullValue(problem)
  const shareOf = (value: number | null) => (value === null || !(full > 0) ? null : value / full)
  const proof = await prove(problem, how.solver, {
    timeLimit: how.timeLimit,
    ...(shouldStop && { shouldStop }),
    onProgress: (bound, objective) =>
      onProgress?.({
        stage: 'proof',
        coverage: shareOf(Math.max(layout.value, objective ?? 0)),
        bound: shareOf(Math.min(layout.bound, bound)),
      }),
  })
  const value = proof.chosen === null ? -1 : worthOf(problem, proof.chosen)
  const isBetter = value > layout.value * (1 + 1e-9)
  const best = isBetter ? value : layout.value
  const isTighter = proof.bound !== null && proof.bound < layout.bound
  // The solver works to its own tolerance: its bound is never told to lie under a choice that is in hand.
  const bound = Math.max(best, isTighter ? proof.bound! : layout.bound)
  return {
    ...layout,
    picks: isBetter ? proof.chosen!.map(column => pickOf(setting, column)) : layout.picks,
    value: best,
    bound,
    isProven: proof.isProven || isSame(best, bound),
    method: isTighter || proof.isProven ? 'solver' : layout.method,
  }
}

function isSame(value: number, bound: number): boolean {
  return bound <= value * (1 + 1e-7)
}

export function pickOf({ sites }: Setting, column: number): Pick {
  return { placing: Math.floor(column / sites.length), site: column % sites.length }
}

export function columnOf({ sites }: Setting, { placing, site }: Pick): number {
  return placing * sites.length + site
}
