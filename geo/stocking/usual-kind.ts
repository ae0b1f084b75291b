import type { BeeId } from '../data/own'
import { releaseDay } from '../flight/release-day'
import type { Metres } from '../space/plane'
import { dateOfDay } from '../time/day'
import type { ReleaseShare, SeasonGround, StationKind } from './season-ground'

/** Kinds of station, one of which holds at each place. */
export type PlaceKinds = {
  readonly kinds: readonly StationKind[]
  /** Which of them holds at a place. */
  at(place: Metres): number
}

export type KindOptions = {
  readonly given?: readonly ReleaseShare[] | undefined
  /** Dates in place of those that stations of the season have, by their id. */
  readonly advised?: ReadonlyMap<string, readonly ReleaseShare[]> | undefined
}

/**
 * What a station without releases of its own holds, place by place: the dates given, else those of the nearest stocked
 * station of the same bee, whose plantings are most likely to be its own, else the best single day.
 */
export function kindsOfPlaces(ground: SeasonGround, bee: BeeId, { given = [], advised }: KindOptions = {}): PlaceKinds {
  const one = (releases: readonly ReleaseShare[]) => ({ kinds: [{ bee, releases }], at: () => 0 })
  if (given.length > 0) return one(given)
  const stocked = ground.supplies.filter(supply => supply.bee === bee && supply.input.females > 0)
  if (stocked.length === 0) return one([{ date: bestDate(ground, bee), share: 1 }])
  const known = new Map<string, number>()
  const kinds: StationKind[] = []
  const neighbours = stocked.map(({ id, season, input: { x, y } }) => {
    const releases = advised?.get(id) ?? sharesOf(season.releases ?? [])
    const key = JSON.stringify(releases)
    const kind = known.get(key) ?? kinds.push({ bee, releases }) - 1
    known.set(key, kind)
    return { x, y, kind }
  })
  return {
    kinds,
    at: ({ x, y }) => {
      const away = (each: Metres) => (each.x - x) ** 2 + (each.y - y) ** 2
      return neighbours.reduce((near, each) => (away(each) < away(near) ? each : near)).kind
    },
  }
}

/** What a station at one place holds. */
export function usualKind(ground: SeasonGround, bee: BeeId, place: Metres): StationKind {
  const { kinds, at } = kindsOfPlaces(ground, bee)
  return kinds[at(place)]!
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

/** A day of the season to begin from where nothing blooms that would set one: the end of March. */
const usualDay = 90

/** The day on which one release meets the blooms best, each bloom weighed by what its plantings want. */
function bestDate({ demand, settings, year }: SeasonGround, bee: StationKind['bee']): string {
  const wanted = demand.blooms.map(() => 0)
  for (const { group, points } of demand.grounds) {
    if (group.bloom !== null) wanted[group.bloom]! += (group.wanted * points.length) / 2
  }
  const blooms = demand.blooms.map(({ weight: days }, bloom) => ({ days, weight: wanted[bloom]! }))
  return dateOfDay(releaseDay(blooms, settings.bees[bee]) ?? usualDay, year)
}
