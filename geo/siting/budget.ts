import { answerOf, type StockedPick } from './answer'
import { upperBound } from './bound'
import { type BudgetQuestion, type Means, meansOf } from './budget-means'
import { budgetProgramme, placesIn } from './budget-programme'
import { Served, worthOf } from './objective'
import { columnOf, type Pick as Placed, pickOf, placeStations } from './place-stations'
import { matrixOf, type Setting } from './setting'
import { sharedOut } from './share-out'
import { cocoonsOfPlacings, femalesOfMovers } from './stock-of-placings'
import type { BoundMethod, Caution, Suggestion } from './suggestion'

type Laid = {
  /** New stations asked for. */
  readonly stations: number
  readonly picks: readonly StockedPick[]
  readonly value: number
}

/**
 * The most coverage for so much money, or from so many cocoons. Stations that move take the bees they have along, beside
 * those that the budget buys.
 */
export async function withinBudget(setting: Setting, question: BudgetQuestion): Promise<Suggestion> {
  const means = meansOf(setting, question)
  let best: Laid | null = null
  const told = (laid: Laid): void => {
    const now = () => answer(setting, laid, { bound: relaxedBound(setting, means, laid), method: 'lagrangian' })
    const full = weighed(setting)
    setting.options.onProgress?.({ stage: 'search', coverage: full > 0 ? laid.value / full : null, bound: null }, now)
  }
  // Without a new station there is something to lay out only where others move.
  if (setting.placings.length > 1) best = layOut(setting, means, 0)
  // From the usual stock of a station outwards: more and smaller stations, then fewer and larger ones.
  for (const step of [1, -1]) {
    for (let stations = means.usual + (step < 0 ? -1 : 0); stations >= 1; stations += step) {
      if (setting.options.shouldStop?.() === true || means.setsFor(stations, 0) < stations) break
      const laid = layOut(setting, means, stations)
      if (best !== null && laid.value <= best.value * (1 + 1e-9)) break
      best = laid
      told(best)
      if (means.isFixed) break
    }
    if (means.isFixed) break
  }
  if (best === null) return answerOf(setting, [], { bound: nothingMore(setting), isProven: true, method: 'lagrangian' })
  const refined = layOut(setting, means, best.stations, { isRefined: true })
  if (refined.value > best.value) best = refined
  const { found, ...verdict } = await proven(setting, meansOf(setting, question), best)
  return answer(setting, found, verdict)
}

function answer(setting: Setting, laid: Laid, { bound, method }: { bound: number; method: BoundMethod }): Suggestion {
  const fresh = freshIn(laid)
  const cautions: Caution[] = fresh < laid.stations ? [{ kind: 'few-places', asked: laid.stations, placed: fresh }] : []
  return answerOf(setting, laid.picks, { bound, isProven: bound <= laid.value * (1 + 1e-7), method, cautions })
}

/** What no way of spending the budget exceeds, by relaxation. */
function relaxedBound(setting: Setting, { pick }: Means, { value, stations }: Laid): number {
  const { shouldStop } = setting.options
  const movers = femalesOfMovers(setting)
  const problem = matrixOf(setting, [1, ...movers], [stations, ...movers.map(() => 1)])
  return Math.max(value, upperBound(problem, { best: value, pick, ...(shouldStop && { shouldStop }) }))
}

/** All that is wanted, as it is weighed. */
function weighed({ cells, weight }: Setting): number {
  return cells.wanted.reduce((sum, wanted, i) => sum + weight[i]! * wanted, 0)
}

function freshIn({ picks }: Pick<Laid, 'picks'>): number {
  return picks.filter(({ placing }) => placing === 0).length
}

/** Places for so many new stations and those that move, then whole sets shared out among the new ones. */
function layOut(
  setting: Setting,
  means: Means,
  stations: number,
  { isRefined = false }: { readonly isRefined?: boolean } = {},
): Laid {
  const movers = femalesOfMovers(setting)
  const bought = Math.max(0, stations - setting.unused.size)
  const equal = stations === 0 ? 0 : (means.setsFor(stations, bought) / stations) * means.unit
  const { picks } = placeStations(setting, [equal, ...movers], [stations, ...movers.map(() => 1)], {
    isRefined,
    ...(!isRefined && { patience: 0 }),
  })
  return shared(setting, means, picks, stations)
}

/** Whole sets shared out among the new stations of some picks. */
function shared(setting: Setting, means: Means, picks: readonly Placed[], stations: number): Laid {
  const problem = matrixOf(setting, [means.unit, ...femalesOfMovers(setting)], [])
  const fresh = picks.filter(({ placing }) => placing === 0)
  const moving = picks.filter(({ placing }) => placing !== 0)
  const { received } = new Served(
    problem,
    moving.map(pick => columnOf(setting, pick)),
  )
  const columns = fresh.map(pick => columnOf(setting, pick))
  const bought = fresh.filter(({ site }) => !setting.unused.has(setting.sites[site]!.id)).length
  const rest = { ...problem, base: received }
  const sets = sharedOut(rest, columns, { sets: means.setsFor(fresh.length, bought), most: means.most })
  const { setOf = 1 } = setting.options
  const own = cocoonsOfPlacings(setting, 0)
  const stocked = [
    ...fresh.map((pick, i) => ({ ...pick, cocoons: sets[i]! * setOf })).filter(({ cocoons }) => cocoons > 0),
    ...moving.map(pick => ({ ...pick, cocoons: own[pick.placing]! })),
  ]
  const all = columns.flatMap((column, i) => Array.from({ length: sets[i]! }, () => column))
  return { stations, picks: stocked, value: worthOf(rest, all) }
}

/** What no way of spending the budget exceeds; a solver, where one is asked, may also find better places. */
async function proven(
  setting: Setting,
  means: Means,
  best: Laid,
): Promise<{ readonly found: Laid; readonly bound: number; readonly method: BoundMethod }> {
  const { shouldStop, prove, onProgress } = setting.options
  const movers = femalesOfMovers(setting)
  const problem = matrixOf(setting, [1, ...movers], [best.stations, ...movers.map(() => 1)])
  const relaxed = relaxedBound(setting, means, best)
  const full = weighed(setting)
  const shareOf = (value: number) => (full > 0 ? value / full : null)
  onProgress?.({ stage: 'bound', coverage: shareOf(best.value), bound: shareOf(relaxed) })
  if (prove === undefined || shouldStop?.() === true) return { found: best, bound: relaxed, method: 'lagrangian' }
  const { programme, given } = budgetProgramme(problem, setting.sites.length, means)
  const solution = await prove.solver(programme, {
    timeLimit: prove.timeLimit,
    ...(shouldStop && { shouldStop }),
    onProgress: bound =>
      onProgress?.({
        stage: 'proof',
        coverage: shareOf(best.value),
        bound: shareOf(Math.max(best.value, Math.min(relaxed, bound + given))),
      }),
  })
  const places = solution.values && placesIn(problem, setting.sites.length, solution.values)
  const other =
    places &&
    shared(
      setting,
      means,
      places.map(column => pickOf(setting, column)),
      best.stations,
    )
  const found = other !== null && other.value > best.value * (1 + 1e-9) ? { ...other, stations: freshIn(other) } : best
  const isTighter = solution.bound !== null && solution.bound + given < relaxed
  const bound = Math.max(found.value, isTighter ? solution.bound! + given : relaxed)
  return { found, bound, method: isTighter ? 'solver' : 'lagrangian' }
}

/** What is served already, where the budget buys nothing. */
function nothingMore({ cells, weight }: Setting): number {
  return cells.base.reduce((sum, served, i) => sum + weight[i]! * served, 0)
}
