import type { BeeId } from '../data/own'
import { isStation, type Plan, type Release, type Season, type StationSeason } from '../plan/plan'
import { dayOfSeason } from '../time/day'

/** Female cocoons set out at one place, of one bee, by day of season. */
type Batches = ReadonlyMap<number, number>

/** Stock by station, then by bee. */
export type PlacedStock = ReadonlyMap<string, ReadonlyMap<BeeId, Batches>>

/** Stations that a season uses and that are drawn, in the order of the plan. */
export function usedStations(plan: Plan, season: Season): readonly string[] {
  const used = season.stations ?? {}
  return plan.features.filter(isStation).flatMap(({ id }) => (Object.hasOwn(used, id) ? [id] : []))
}

export function usageOf(season: Season, stationId: string): StationSeason {
  return season.stations && Object.hasOwn(season.stations, stationId) ? season.stations[stationId]! : {}
}

/** A season's stock where it stands. */
export function stockOf(plan: Plan, season: Season): PlacedStock {
  return new Map(
    usedStations(plan, season).map(id => {
      const use = usageOf(season, id)
      return [id, new Map([[use.bee ?? plan.bee, batchesOf(use.releases ?? [], season.year)]])]
    }),
  )
}

function batchesOf(releases: readonly Release[], year: number): Batches {
  const batches = new Map<number, number>()
  for (const { date, females } of releases) addTo(batches, dayOfSeason(date, year), females)
  return batches
}

/**
 * The stock of one season at the places of another. A station in use in both keeps its batches as far as may be; the
 * sum of each bee's batches stays what it was.
 *
 * Places of the one season that the stock's own season does not know take the share of the bee's females that they
 * hold in their own season (where that has none of the bee: the share of all its females that stands there), in batches
 * like those of the whole stock. The rest, and what stood at places given up, goes to the stations in use in both, in
 * proportion to what they held. Where neither can take it, all places take equal parts.
 */
export function movedStock(stock: PlacedStock, places: PlacedStock): PlacedStock {
  const kept = [...places.keys()].filter(id => stock.has(id))
  const added = [...places.keys()].filter(id => !stock.has(id))
  if (added.length === 0 && kept.length === stock.size) return stock
  const moved = new Map<string, Map<BeeId, Batches>>([...places.keys()].map(id => [id, new Map()]))
  const put = (id: string, bee: BeeId, batches: Batches, factor: number) => {
    if (!(factor > 0)) return
    const there = new Map(moved.get(id)!.get(bee))
    for (const [day, females] of batches) addTo(there, day, females * factor)
    moved.get(id)!.set(bee, there)
  }
  for (const bee of beesOf(stock)) {
    const pool = new Map<number, number>()
    for (const byBee of stock.values()) {
      for (const [day, females] of byBee.get(bee) ?? []) addTo(pool, day, females)
    }
    const all = sumOf(pool)
    if (!(all > 0)) continue
    const held = (id: string) => sumOf(stock.get(id)?.get(bee))
    const heldByKept = kept.reduce((sum, id) => sum + held(id), 0)
    const weights = weightsOf(places, added, bee)
    const weightOfAdded = added.reduce((sum, id) => sum + weights.get(id)!, 0)
    if (heldByKept === 0 && weightOfAdded === 0) {
      for (const id of places.keys()) put(id, bee, pool, 1 / places.size)
      continue
    }
    const toAdded = heldByKept === 0 ? 1 : weightOfAdded
    for (const id of added) put(id, bee, pool, weightOfAdded > 0 ? (toAdded * weights.get(id)!) / weightOfAdded : 0)
    for (const id of kept) {
      const own = stock.get(id)!.get(bee)
      if (own && heldByKept > 0) put(id, bee, own, ((1 - toAdded) * all) / heldByKept)
    }
  }
  return moved
}

/** Share of a season's females of `bee`, or of all bees where it has none of it, that stands at each of `ids`. */
function weightsOf(places: PlacedStock, ids: readonly string[], bee: BeeId): ReadonlyMap<string, number> {
  const ofBee = (id: string) => sumOf(places.get(id)!.get(bee))
  const ofAll = (id: string) => [...places.get(id)!.values()].reduce((sum, batches) => sum + sumOf(batches), 0)
  const total = (of: (id: string) => number) => [...places.keys()].reduce((sum, id) => sum + of(id), 0)
  const of = total(ofBee) > 0 ? ofBee : ofAll
  const all = total(of)
  return new Map(ids.map(id => [id, all > 0 ? of(id) / all : 0]))
}

function beesOf(stock: PlacedStock): ReadonlySet<BeeId> {
  return new Set([...stock.values()].flatMap(byBee => [...byBee.keys()]))
}

function sumOf(batches: Batches | undefined): number {
  return [...(batches?.values() ?? [])].reduce((sum, females) => sum + females, 0)
}

function addTo(batches: Map<number, number>, day: number, females: number): void {
  batches.set(day, (batches.get(day) ?? 0) + females)
}
