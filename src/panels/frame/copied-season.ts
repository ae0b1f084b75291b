import type { Season, StationSeason } from '#geo/plan/plan'
import { dateOfDay, dayOfSeason, type IsoDate } from '#geo/time/day'

/**
 * A season's plan for another year: bloom, stations in use and releases, every date on the same day of the season.
 * What happened (stages that were seen, weather, records, fruit set) and the lots of cocoons belong to their own year and stay there.
 */
export function copiedSeason(season: Season, year: number): Season {
  const moved = (date: IsoDate) => dateOfDay(dayOfSeason(date, season.year), year)
  const bloom = mapValues(season.bloom, ({ first, full, end, observed: _, ...rest }) => ({
    ...rest,
    first: moved(first),
    full: moved(full),
    end: moved(end),
  }))
  const stations = mapValues(season.stations, ({ releases, ...use }): StationSeason => {
    if (releases === undefined) return use
    return { ...use, releases: releases.map(({ lot: _, ...release }) => ({ ...release, date: moved(release.date) })) }
  })
  return { year, ...(bloom ? { bloom } : {}), ...(stations ? { stations } : {}) }
}

function mapValues<T>(
  entries: Readonly<Record<string, T>> | undefined,
  of: (value: T) => T,
): Readonly<Record<string, T>> | undefined {
  return entries && Object.fromEntries(Object.entries(entries).map(([key, value]) => [key, of(value)]))
}
