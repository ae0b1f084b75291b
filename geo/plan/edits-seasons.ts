import type { IsoDate } from '../time/day'
import type { Edit, Patch } from './edits'
import { patched } from './edits'
import { thingById } from './edits-wording'
import {
  type Bloom,
  type BloomStage,
  bloomStages,
  isObserved,
  type Plan,
  type Release,
  type Season,
  type StationSeason,
  seasonOf,
  type WeatherDay,
} from './plan'

/** Bloom of a crop, or of one planting or forage area, in a season; null = no bloom of its own. */
export function setBloom(year: number, key: string, bloom: Bloom | null, gestureKey?: string): Edit {
  return {
    label: plan => `${bloom ? 'Change' : 'Clear'} bloom of ${thingById(plan, key)}`,
    key: gestureKey,
    apply: plan => changeSeason(plan, year, season => withEntry(season, 'bloom', key, bloom ?? undefined)),
  }
}

/**
 * One stage of a bloom marked as really seen, or no longer so; the bloom must be there. Stages stand in their order,
 * what is no stage after them.
 */
export function setObserved(year: number, key: string, stage: BloomStage, isSeen: boolean): Edit {
  return {
    label: plan => `${isSeen ? 'Mark' : 'Unmark'} a bloom date of ${thingById(plan, key)} as seen`,
    apply: plan =>
      changeSeason(plan, year, season => {
        const bloom = season.bloom && Object.hasOwn(season.bloom, key) ? season.bloom[key] : undefined
        if (bloom === undefined) throw new RangeError(`no bloom of ${key} in ${year}`)
        if (isObserved(bloom, stage) === isSeen) return season
        const others = (bloom.observed ?? []).filter(each => each !== stage)
        const seen = new Set(isSeen ? [...others, stage] : others)
        const observed = [
          ...bloomStages.filter(each => seen.has(each)),
          ...others.filter(each => !(bloomStages as readonly string[]).includes(each)),
        ]
        const patch = { observed: observed.length > 0 ? observed : undefined }
        return withEntry(season, 'bloom', key, patched(bloom, patch))
      }),
  }
}

/** Full bloom of apple that a season's estimates count from, of its own year or of an earlier one; null = the region's. */
export function setAppleFullBloom(year: number, date: IsoDate | null): Edit {
  return {
    label: `${date ? 'Set' : 'Clear'} the apple date of ${year}`,
    apply: plan => changeSeason(plan, year, season => patched(season, { appleFullBloom: date ?? undefined })),
  }
}

/** The daily weather of a season; null takes it away. */
export function setWeather(year: number, days: readonly WeatherDay[] | null): Edit {
  return {
    label: `${days === null ? 'Remove' : 'Change'} weather of ${year}`,
    apply: plan =>
      changeSeason(plan, year, season => {
        if (days === null || days.length === 0) return patched(season, { weather: undefined })
        return patched(season, { weather: { ...season.weather, days } })
      }),
  }
}

/** Days of weather with others over them, in order of date: a figure that the new day lacks stays as it was. */
export function mergedWeather(before: readonly WeatherDay[], after: readonly WeatherDay[]): readonly WeatherDay[] {
  const days = new Map<string, WeatherDay>()
  // Of a day given twice the first holds, as everywhere.
  for (const day of before) if (!days.has(day[0])) days.set(day[0], day)
  for (const [date, ...figures] of after) {
    const known = days.get(date)
    const [minimum, maximum, rain, wind] = figures.map((figure, i) => figure ?? known?.[i + 1] ?? null) as (
      | number
      | null
    )[]
    days.set(date, [date, minimum!, maximum!, rain!, wind!])
  }
  return [...days.values()].sort(([a], [b]) => (a < b ? -1 : 1))
}

/** How a station is used in a season: a patch over what is there; null takes the station out of use. */
export function setStationSeason(
  year: number,
  stationId: string,
  patch: Patch<StationSeason> | null,
  gestureKey?: string,
): Edit {
  return {
    label: plan => {
      const name = thingById(plan, stationId)
      return patch ? `Change use of ${name}` : `Take ${name} out of use`
    },
    key: gestureKey,
    apply: plan =>
      changeSeason(plan, year, season => {
        if (patch === null) return withEntry(season, 'stations', stationId, undefined)
        return withEntry(season, 'stations', stationId, patched(entryOfStation(season, stationId) ?? {}, patch))
      }),
  }
}

/** The batches of cocoons a station gets in a season; it is in use from then on. */
export function setReleases(year: number, stationId: string, releases: readonly Release[], gestureKey?: string): Edit {
  return {
    ...setStationSeason(year, stationId, { releases: releases.length > 0 ? releases : undefined }, gestureKey),
    label: plan => `Change releases at ${thingById(plan, stationId)}`,
  }
}

/** One more season; seasons stand in the order of their years. */
export function addSeason(season: Season): Edit {
  return {
    label: `Add season ${season.year}`,
    apply(plan) {
      if (seasonOf(plan, season.year)) throw new RangeError(`the plan already has a season ${season.year}`)
      return { ...plan, seasons: inOrder([...plan.seasons, season]) }
    },
  }
}

export function removeSeason(year: number): Edit {
  return {
    label: `Remove season ${year}`,
    apply(plan) {
      const seasons = plan.seasons.filter(season => season.year !== year)
      return seasons.length === plan.seasons.length ? plan : { ...plan, seasons }
    },
  }
}

/** The plan with use and own bloom of vanished things taken out of all seasons. */
export function withoutReferences(plan: Plan, gone: ReadonlySet<string>): Plan {
  const crops = new Set(plan.features.flatMap(({ properties }) => ('crop' in properties ? [properties.crop] : [])))
  const seasons = plan.seasons.map(season => {
    let changed = season
    for (const id of gone) {
      changed = withEntry(changed, 'stations', id, undefined)
      // A crop may have the name of the vanished thing; its bloom stays.
      if (!crops.has(id)) changed = withEntry(changed, 'bloom', id, undefined)
    }
    return changed
  })
  return { ...plan, seasons: sameWhereEqual(plan.seasons, seasons) }
}

/** The plan with use and own bloom of originals given to their copies: bloom in all seasons, use from `year` on. */
export function withCopiedReferences(plan: Plan, copyIds: ReadonlyMap<string, string>, year?: number): Plan {
  const from = year ?? Math.max(...plan.seasons.map(season => season.year))
  const seasons = plan.seasons.map(season => {
    let changed = season
    for (const [id, copyId] of copyIds) {
      const bloom = season.bloom && Object.hasOwn(season.bloom, id) ? season.bloom[id] : undefined
      if (bloom) changed = withEntry(changed, 'bloom', copyId, bloom)
      const use = entryOfStation(season, id)
      if (use && season.year >= from) changed = withEntry(changed, 'stations', copyId, use)
    }
    return changed
  })
  return { ...plan, seasons: sameWhereEqual(plan.seasons, seasons) }
}

function entryOfStation(season: Season, stationId: string): StationSeason | undefined {
  return season.stations && Object.hasOwn(season.stations, stationId) ? season.stations[stationId] : undefined
}

/** A season that was not there before comes into being with its first entry. */
export function changeSeason(plan: Plan, year: number, change: (season: Season) => Season): Plan {
  const before = seasonOf(plan, year) ?? { year }
  const after = change(before)
  if (after === before) return plan
  const others = plan.seasons.filter(season => season !== before)
  if (others.length === plan.seasons.length) return { ...plan, seasons: inOrder([...others, after]) }
  return { ...plan, seasons: plan.seasons.map(season => (season === before ? after : season)) }
}

/** A season with one entry set, or taken away (`undefined`); a map without entries goes too. */
export function withEntry<Name extends 'bloom' | 'stations' | 'records' | 'fruitSet'>(
  season: Season,
  name: Name,
  key: string,
  entry: NonNullable<Season[Name]>[string] | undefined,
): Season {
  const before: object = season[name] ?? {}
  const after = patched(before, { [key]: entry })
  if (after === before) return season
  return patched(season, { [name]: Object.keys(after).length > 0 ? after : undefined })
}

function inOrder(seasons: readonly Season[]): readonly Season[] {
  return seasons.toSorted((a, b) => a.year - b.year)
}

function sameWhereEqual<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  return after.every((each, index) => each === before[index]) ? before : after
}
