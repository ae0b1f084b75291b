import type { Plan } from '../plan/plan'
import { nestingShare, type SeasonGround, seasonGround } from '../stocking/season-ground'
import { assumedPrices, costOf, mostTubes, releasesOf, stockOf } from '../stocking/stock'
import { sureCocoons } from '../stocking/sure'
import { acceptSuggestion, idAfter } from './accept'
import { inHandOf, stillToBuy } from './in-hand'
import type { Pick } from './place-stations'
import type { Setting } from './setting'
import type { BoundMethod, Caution, SuggestedStation, Suggestion } from './suggestion'
import { whyText } from './why'

/** A pick with the whole female cocoons it is stocked with, and the station that moves there to be stocked anew. */
export type StockedPick = Pick & { readonly cocoons: number; readonly moves?: string | undefined }

export type Verdict = {
  /** Weighed females served that no layout exceeds; null where the question is what it costs. */
  readonly bound: number | null
  readonly isProven: boolean
  readonly method: BoundMethod
  readonly reached?: boolean | null
  /** Least cost of any layout, for a target. */
  readonly cost?: number
  readonly cautions?: readonly Caution[]
  /** Stations to be moved that the answer does without. */
  readonly spared?: readonly string[]
}

/** Makes the answer of picks: whole things, true coverage of the plan as it would be, what each station is good for. */
export function answerOf(setting: Setting, picks: readonly StockedPick[], verdict: Verdict): Suggestion {
  const { ground, options, placings, sites } = setting
  const { plan, year, settings } = ground
  const ids = newIds(plan, picks.filter(({ placing }) => placing === 0).length)
  const stocked = picks.map(pick => {
    const { moves } = placings[pick.placing]!
    const site = sites[pick.site]!
    const kind = moves === null ? setting.kindAt(site) : placings[pick.placing]!.kind
    const stock = stockOf(pick.cocoons, settings.bees[kind.bee], settings.site)
    const own = moves === null ? null : ground.supplies.find(({ id }) => id === moves)!
    const reused = moves === null && setting.unused.has(site.id)
    const standing = moves ?? pick.moves ?? (reused ? site.id : null)
    return {
      ...site,
      ...stock,
      sure: sureCocoons(stock, nestingShare(settings.bees[kind.bee])),
      tubes: own?.season.tubes ?? stock.tubes,
      id: standing ?? ids.shift()!,
      new: standing === null,
      reused,
      bought: moves === null,
      bee: kind.bee,
      releases: own?.season.releases ?? releasesOf(stock, kind.releases),
    }
  })
  const given = ground.supplies.filter(({ id }) => options.roles?.[id] === 'drop').map(({ id }) => id)
  const dropped = [...given, ...(verdict.spared ?? [])]
  const bare = stocked.map(({ x: _x, y: _y, ...station }) => ({ ...station, why: '', gains: [] }))
  const changed = acceptSuggestion(plan, { year, stations: bare, dropped }).apply(plan)
  const after = seasonGround(changed, year)
  const gains = gainsOf(
    after,
    bare.map(station => idAfter(plan, year, station)),
  )
  const stations: SuggestedStation[] = bare.map((station, i) => ({
    ...station,
    gains: gains[i]!,
    why: whyText({ ...station, gains: gains[i]! }),
  }))
  const before = sharesOf(ground, options.weights)
  const then = sharesOf(after, options.weights)
  const prices = options.prices ?? assumedPrices
  const fresh = stations.filter(each => each.new).length
  const inHand = inHandOf(setting)
  const bought = stations.filter(each => each.bought)
  const cost = fresh * prices.station + costOf(stillToBuy(bought, inHand), prices)
  const most = before.wanted > 0 && verdict.bound !== null ? verdict.bound / before.wanted : null
  return {
    year,
    before: { coverage: before.coverage },
    after: { coverage: then.coverage },
    bound: {
      coverage: most === null ? null : Math.min(1, Math.max(most, then.coverage ?? 0)),
      proven: verdict.isProven,
      method: verdict.method,
      ...(verdict.cost !== undefined && { cost: verdict.cost }),
    },
    cost,
    stations,
    dropped,
    spared: verdict.spared ?? [],
    inHand,
    plantings: before.plantings.map((planting, i) => ({ ...planting, after: then.plantings[i]!.before })),
    places: { count: sites.length, thinned: setting.candidates.sites.length, pitch: setting.candidates.pitch },
    thinning: null,
    reached: verdict.reached ?? null,
    cautions: [...(verdict.cautions ?? []), ...notMoved(setting), ...cautionsOf(after, stations)],
  }
}

/** Coverage of a season, weighed by planting. */
export function sharesOf(ground: SeasonGround, weights: Readonly<Record<string, number>> = {}) {
  let wanted = 0
  let served = 0
  const plantings = ground.demand.grounds.slice(0, ground.plantings).map(({ id, name, group }, g) => {
    const totals = ground.coverage.totalsOf(g)
    const isKnown = group.bloom !== null && totals.wanted > 0
    const weight = weights[id] ?? 1
    if (isKnown) {
      wanted += weight * totals.wanted
      served += weight * totals.served
    }
    return { id, name, before: isKnown ? Math.min(1, totals.served / totals.wanted) : null }
  })
  return { wanted, plantings, coverage: wanted > 0 ? Math.min(1, served / wanted) : null }
}

/** Ids `station-1`, `station-2`, … after the highest in use. */
function newIds(plan: Plan, count: number): string[] {
  const numbers = plan.features.map(({ id }) => Number(/^station-(\d{1,9})$/.exec(id)?.[1] ?? 0))
  const first = Math.max(0, ...numbers) + 1
  return Array.from({ length: count }, (_, i) => `station-${first + i}`)
}

/** What is lost by planting if one station is taken away. */
function gainsOf(ground: SeasonGround, ids: readonly string[]): SuggestedStation['gains'][] {
  const { coverage, demand, plantings, supplies } = ground
  const served = demand.grounds.slice(0, plantings).map((_, g) => coverage.totalsOf(g).served)
  return ids.map(id => {
    const index = supplies.findIndex(supply => supply.id === id)
    coverage.removeStation(index)
    const without = demand.grounds.slice(0, plantings).map((_, g) => coverage.totalsOf(g).served)
    coverage.addStation(supplies[index]!.input, index)
    return demand.grounds
      .slice(0, plantings)
      .map(({ id: planting, name }, g) => ({ id: planting, name, females: served[g]! - without[g]! }))
      .filter(({ females }) => females > 0.05)
      .sort((a, b) => b.females - a.females)
  })
}

/** Stations that were to move and could not. */
function notMoved({ ground, options, placings, movers }: Setting): Caution[] {
  const movable = new Set([...placings.map(({ moves }) => moves), ...movers.map(({ id }) => id)])
  const stations = ground.supplies.map(({ id }) => id).filter(id => options.roles?.[id] === 'move' && !movable.has(id))
  return stations.length > 0 ? [{ kind: 'not-moved', stations }] : []
}

function cautionsOf(after: SeasonGround, stations: readonly SuggestedStation[]): Caution[] {
  const cautions: Caution[] = []
  const tubes = Math.max(0, ...stations.filter(each => each.bought).map(each => each.tubes))
  if (tubes > mostTubes) cautions.push({ kind: 'large-stations', tubes, most: mostTubes })
  const females = after.supplies.reduce((sum, { input }) => sum + input.females * input.effectiveness, 0)
  const { wanted } = sharesOf(after)
  if (females > wanted && wanted > 0) cautions.push({ kind: 'more-than-wanted', females, wanted })
  const { grounds } = after.demand
  const unknown = grounds.filter(({ group }) => !group.isForage && group.bloom === null && group.wanted > 0)
  if (unknown.length > 0) cautions.push({ kind: 'no-bloom', plantings: unknown.map(({ id }) => id) })
  return cautions
}
