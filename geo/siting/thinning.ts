import { nestingShare } from '../stocking/season-ground'
import { fullValue, worthOf } from './objective'
import { columnOf, placeStations } from './place-stations'
import { addSites, matrixOf, type Setting, settingOf } from './setting'
import { femalesOfMovers } from './stock-of-placings'
import type { Suggestion, Thinning } from './suggestion'

/** More work than this (pairs of points and places, by stations) would keep people waiting for a figure on the side. */
const mostWork = 8e6

/**
 * Doubles the density of places once, and compares by the same yardstick: stations with the mean stock of the answer, at
 * its places and at the best that are found among the denser ones. null for the grower's own places, which are not
 * thinned, and where there is nothing to compare or it would take too long.
 */
export function thinningOf(setting: Setting, { stations, places }: Suggestion): Thinning | null {
  const { ground, options, candidates, services } = setting
  const fresh = stations.filter(each => each.bought)
  if (candidates.pitch === 0 || stations.length === 0 || options.shouldStop?.() === true) return null
  if (2 * services[0]!.point.length * stations.length > mostWork) return null
  const { onProgress: _, prove: __, ...quiet } = options
  const density = 2 * (options.places?.density ?? 1)
  const denser = settingOf(ground, { ...quiet, places: { ...options.places, density } })
  const doubled = denser.candidates.sites.length
  const cocoons = fresh.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0) / Math.max(1, fresh.length)
  const movers = femalesOfMovers(denser)
  const females = [cocoons * nestingShare(ground.settings.bees[denser.placings[0]!.kind.bee]), ...movers]
  const counts = [fresh.length, ...movers.map(() => 1)]
  const best = placeStations(denser, females, counts, { isBounded: false })
  // The answer's own places beside the denser ones: points and cells are then the same for both.
  const first = denser.sites.length
  addSites(
    denser,
    stations.map(({ id, at, source, notes }) => ({ id, at, source, notes, ...ground.plane.toMetres(at) })),
  )
  const problem = matrixOf(denser, females, counts)
  const columns = stations.map(({ id, bought }, i) => {
    const placing = bought ? 0 : denser.placings.findIndex(({ moves }) => moves === id)
    return columnOf(denser, { placing, site: first + i })
  })
  const gain = best.value - worthOf(problem, columns)
  const full = fullValue(problem)
  const loss = full > 0 ? Math.max(0, gain / full) : 0
  return { places: places.thinned, doubled, loss }
}
