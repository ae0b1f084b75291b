import type { BeeId } from '../data/own'
import { bestRelease } from '../flight/flight'
import { dateOfDay } from '../time/day'
import type { ReleaseShare, SeasonGround, StationKind } from './season-ground'

/**
 * What a station without releases of its own holds: those given, else the season's of the same bee in their
 * proportion, else the best single day.
 */
export function usualKind(ground: SeasonGround, bee: BeeId, given: readonly ReleaseShare[] = []): StationKind {
  if (given.length > 0) return { bee, releases: given }
  const same = ground.supplies.filter(supply => supply.bee === bee).flatMap(({ season }) => season.releases ?? [])
  const releases = sharesOf(same)
  return { bee, releases: releases.length > 0 ? releases : [{ date: bestDate(ground, bee), share: 1 }] }
}

/** Shares of the cocoons that go out on each date. */
export function sharesOf(releases: readonly { readonly date: string; readonly females: number }[]): ReleaseShare[] {
  const byDate = new Map<string, number>()
  for (const { date, females } of releases) {
    if (females > 0) byDate.set(date, (byDate.get(date) ?? 0) + females)
  }
  const total = [...byDate.values()].reduce((sum, females) => sum + females, 0)
  return [...byDate.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([date, females]) => ({ date, share: females / total }))
}

/** The day on which one release meets the blooms best, each bloom weighed by what its plantings want. */
function bestDate({ demand, settings, year }: SeasonGround, bee: StationKind['bee']): string {
  const wanted = demand.blooms.map(() => 0)
  for (const { group, points } of demand.grounds) {
    if (group.bloom !== null) wanted[group.bloom]! += (group.wanted * points.length) / 2
  }
  const total = wanted.reduce((sum, each) => sum + each, 0)
  if (!(total > 0)) return dateOfDay(90, year)
  const from = Math.min(...demand.blooms.map(({ weight }) => weight.start))
  const to = Math.max(...demand.blooms.map(({ weight }) => weight.start + weight.values.length))
  const values = new Float64Array(to - from)
  demand.blooms.forEach(({ weight }, bloom) => {
    weight.values.forEach((value, i) => {
      values[weight.start + i - from]! += (value * wanted[bloom]!) / total
    })
  })
  return dateOfDay(bestRelease({ start: from, values }, settings.bees[bee]).day, year)
}
