import { mostServed } from '../stocking/fewest'
import { nestingShare } from '../stocking/season-ground'
import { assumedPrices, mostCocoons, mostTubes, shareOfReach } from '../stocking/stock'
import { answerOf } from './answer'
import { defaultSpacing } from './candidates'
import { inHandOf, worthInHand } from './in-hand'
import { leastCost } from './least-cost'
import { moversTo } from './movers'
import { clashesOf, openingOf, refine, type Setting } from './setting'
import type { Caution, Suggestion } from './suggestion'
import { leastCostBound } from './target-bound'
import type { TargetProblem } from './target-problem'
import { openIn, targetProgramme } from './target-programme'
import { type TargetAnswer, wholeAnswer, withMore } from './whole-answer'

/** With more stations than this, finer places round each would be more than can be weighed up. */
const mostRefined = 12

/** Times that what true coverage is short of is asked for on top. */
const mostTopUps = 8

/**
 * At least `coverage` of what every planting wants, at least cost. A station that moves saves the price of a new one, is
 * stocked anew, and brings its cocoons and tubes along.
 */
export async function forTarget(setting: Setting, coverage: number): Promise<Suggestion> {
  const { options } = setting
  // Cocoons and tubes of stations that move need not be bought.
  const has = worthInHand(inHandOf(setting), options.prices)
  const afterwards = (cost: number) => known(Math.max(0, cost - has))
  let asked = targetOf(setting, coverage)
  let least = leastCostBound(asked.problem)
  const search = (start?: readonly number[]) =>
    leastCost(asked.problem, {
      seed: options.seed ?? 1,
      ...(start && { start }),
      ...(options.shouldStop && { shouldStop: options.shouldStop }),
      onProgress: (cost, stations) => {
        const now = () => {
          const found = wholeAnswer(asked.problem, stations)
          return answer(setting, asked, { found, least, isSolver: false, coverage })
        }
        options.onProgress?.(
          { ...noCoverage, stage: 'search', cost: afterwards(cost), costBound: afterwards(least) },
          now,
        )
      },
    })
  let found = search()
  const isFew = found !== null && found.stations.length > 0 && found.stations.length <= mostRefined
  const places = isFew ? found!.stations.map(s => setting.sites[s]!) : []
  if (found !== null && isFew && refine(setting, places, 0)) {
    asked = targetOf(setting, coverage)
    least = leastCostBound(asked.problem)
    const again = search(found.stations)
    if (again !== null && again.cost < found.cost) found = again
  }
  options.onProgress?.({
    ...noCoverage,
    stage: 'bound',
    cost: found && afterwards(found.cost),
    costBound: afterwards(least),
  })
  let isSolver = false
  if (options.prove !== undefined && found !== null) {
    const { cost } = found
    const proof = await options.prove.solver(targetProgramme(asked.problem), {
      timeLimit: options.prove.timeLimit,
      ...(options.shouldStop && { shouldStop: options.shouldStop }),
      onProgress: bound =>
        options.onProgress?.({
          ...noCoverage,
          stage: 'proof',
          cost: afterwards(cost),
          costBound: afterwards(Math.min(cost, Math.max(least, bound))),
        }),
    })
    if (proof.bound !== null && proof.bound > least) {
      least = proof.bound
      isSolver = true
    }
    // Of the solver's answer only its places are taken: stock and cost are worked out as for any other.
    const other = proof.values && wholeAnswer(asked.problem, openIn(asked.problem, proof.values))
    if (other !== null && other.cost < found.cost * (1 - 1e-9)) found = other
  }
  return answer(setting, asked, { found, least, isSolver, coverage })
}

const noCoverage = { coverage: null, bound: null } as const

/** A least cost that is beyond all is none. */
function known(cost: number): number | null {
  return Number.isFinite(cost) ? cost : null
}

function answer(
  setting: Setting,
  { problem, grounds, most }: Asked,
  {
    found,
    least,
    isSolver,
    coverage,
  }: { found: TargetAnswer | null; least: number; isSolver: boolean; coverage: number },
): Suggestion {
  const { setOf = 1 } = setting.options
  const { demand } = setting.ground
  const wanted = wantedBy(problem)
  const stopping = grounds.flatMap((g, group) =>
    most[group]! < coverage * wanted[group]! * (1 - 1e-9)
      ? [{ id: demand.grounds[g]!.id, most: most[group]! / wanted[group]! }]
      : [],
  )
  const { tubes = mostTubes } = setting.options
  const cautions: Caution[] = [
    ...(stopping.length > 0 ? [{ kind: 'out-of-reach', plantings: stopping } as const] : []),
    ...(found === null ? [{ kind: 'no-layout', coverage, tubes } as const] : []),
  ]
  const verdict = {
    bound: null,
    cost: Math.max(0, least - worthInHand(inHandOf(setting), setting.options.prices)),
    isProven: false,
    method: isSolver ? 'solver' : 'lagrangian',
    cautions,
  } as const
  const answerWith = ({ stations, units }: Pick<TargetAnswer, 'stations' | 'units'>) => {
    const { moverOf, spared } = moversTo(setting, stations)
    const picks = stations.map((site, i) => ({
      placing: 0,
      site,
      cocoons: units[i]! * setOf,
      moves: moverOf.get(site),
    }))
    // Without an answer nothing is given up.
    return answerOf(setting, picks, found === null ? verdict : { ...verdict, spared })
  }
  let now = answerWith(found ?? { stations: [], units: [] })
  let { stations } = found ?? { stations: [] }
  // Cells and cocoons shared among dates leave small differences: what is still short is asked for on top.
  let need = problem.need
  for (let round = 1; round <= mostTopUps && found !== null; round += 1) {
    const short = grounds.map((g, group) => {
      const { after } = now.plantings.find(({ id }) => id === demand.grounds[g]!.id)!
      return Math.max(0, problem.need[group]! - (after ?? 1) * wanted[group]!)
    })
    if (short.every((value, group) => value <= 1e-7 * wanted[group]!)) break
    need = need.map((value, group) => value + round * short[group]!)
    const more = wholeAnswer({ ...problem, need }, stations) ?? withMore({ ...problem, need }, stations)
    if (more === null) break
    // A station that was filled up with others beside it stays open, even if they could do without it this time.
    stations = [...new Set([...stations, ...more.stations])]
    now = answerWith(more)
  }
  const reached = now.plantings.every(({ after }) => after === null || after >= coverage - 1e-6)
  const proven = found !== null && now.cost <= verdict.cost * (1 + 1e-6)
  return { ...now, reached, bound: { ...now.bound, proven } }
}

/** A target as a plain problem, the planting of each of its groups, and the most that each can be served. */
type Asked = { readonly problem: TargetProblem; readonly grounds: readonly number[]; readonly most: Float64Array }

function targetOf(setting: Setting, coverage: number): Asked {
  const { ground, options, placings, cells, services, sites } = setting
  const { setOf = 1, prices = assumedPrices } = options
  const { settings } = ground
  const bee = settings.bees[placings[0]!.kind.bee]
  const share = nestingShare(bee)
  const cocoons = mostCocoons(options.tubes ?? mostTubes, bee, settings.site, setOf)
  const perFemale =
    (prices.femaleCocoon + bee.malesPerFemale * prices.maleCocoon) / Math.max(share, 1e-12) +
    bee.tubesPerFemale * (1 + settings.site.spareTubes) * prices.tube
  const grounds = [...new Set(cells.ground)]
  const groupOf = new Map(grounds.map((g, i) => [g, i]))
  const forEach = (value: number) => sites.map(() => value)
  const bare: TargetProblem = {
    services: services[0]!,
    wanted: cells.wanted,
    base: cells.base,
    group: cells.ground.map(g => groupOf.get(g)!),
    groups: grounds.length,
    need: new Float64Array(grounds.length),
    most: forEach(cocoons * share),
    cost: forEach(Math.max(perFemale, 1e-6)),
    opening: openingOf(setting, prices.station),
    free: setting.movers.length,
    unit: forEach(setOf * Math.max(share, 1e-12)),
    clashes: clashesOf(sites, options.places?.spacing ?? defaultSpacing),
  }
  const most = mostServed(bare)
  const need = wantedBy(bare).map((all, g) =>
    most[g]! >= coverage * all * (1 - 1e-9) ? coverage * all : shareOfReach * most[g]!,
  )
  return { problem: { ...bare, need }, grounds, most }
}

function wantedBy({ wanted, group, groups }: TargetProblem): Float64Array {
  const sums = new Float64Array(groups)
  wanted.forEach((value, i) => {
    sums[group[i]!]! += value
  })
  return sums
}
