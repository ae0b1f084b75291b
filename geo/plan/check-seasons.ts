import { crops as tableCrops } from '../data/crops'
import { cropName } from '../data/settings'
import { checkBloom, checkDate } from './check-dates'
import { checkFigure, checkFigures } from './check-figures'
import { checkRecords } from './check-records'
import { checkBee } from './check-settings'
import { checkWeather } from './check-weather'
import { coldStoreLimits, limitFault, releaseLimits, seasonYear, stationLimits } from './limits'
import { pathText, shortened } from './place'
import { type Feature, isForage, isPlanting, isStation, nameOf, type Plan, type Season } from './plan'
import type { ReportProblem } from './report-problem'

/** What the seasons say; with `year` only that one, so that another year's slip does not hold up this year's result. */
export function checkSeasons(plan: Plan, year: number | undefined, report: ReportProblem): void {
  const features = new Map(plan.features.map(feature => [feature.id, feature]))
  const seen = new Set<number>()
  for (const [index, season] of plan.seasons.entries()) {
    const at = `plan.seasons[${index}].year`
    const isWanted = year === undefined || season.year === year
    if (isWanted && seen.has(season.year)) {
      // A repeated season is never used, so what it says cannot harm.
      report('warning', 'season-repeated', at, { year: season.year })
    } else if (isWanted) {
      checkFigure(season.year, seasonYear, { name: `Season ${index + 1}`, at, path: at }, report)
      checkSeason({ plan, season, index, features }, report)
    }
    seen.add(season.year)
  }
}

type Place = {
  readonly plan: Plan
  readonly season: Season
  readonly index: number
  readonly features: ReadonlyMap<string, Feature>
}

function checkSeason(place: Place, report: ReportProblem): void {
  const { season, index, features } = place
  const { year } = season
  const dateYear = limitFault(year, seasonYear) === null ? year : null
  checkBlooms(place, dateYear, report)
  if (season.appleFullBloom !== undefined) {
    const path = `plan.seasons[${index}].appleFullBloom`
    const dated = { name: `Season ${year}`, label: 'full bloom of apple', at: path, path, severity: 'warning' } as const
    // It may be of an earlier year: only whether the day exists is asked.
    checkDate(season.appleFullBloom, { ...dated, year: null }, report)
  }
  checkStations(place, dateYear, report)
  checkColdStore(place, dateYear, report)
  if (season.weather !== undefined) {
    checkWeather(season.weather.days, { path: `plan.seasons[${index}].weather.days`, year }, report)
  }
  const nameOfId = (id: string): string | null => {
    const feature = features.get(id)
    return feature === undefined ? null : shortened(nameOf(feature))
  }
  checkRecords(season, { index, year, dateYear, nameOf: nameOfId }, report)
}

function checkBlooms({ plan, season, index, features }: Place, year: number | null, report: ReportProblem): void {
  const grown = new Set(plan.features.filter(isPlanting).map(({ properties }) => properties.crop))
  for (const [key, bloom] of Object.entries(season.bloom ?? {})) {
    const path = pathText(['plan', 'seasons', index, 'bloom', key])
    const feature = features.get(key)
    const isBloomer = feature !== undefined && (isPlanting(feature) || isForage(feature))
    const isCrop = Object.hasOwn(plan.crops, key) || Object.hasOwn(tableCrops, key)
    if (!isBloomer && !isCrop) {
      report('note', 'bloom-unused', path, { key: shortened(key), year: season.year })
      continue
    }
    const name = isBloomer ? shortened(nameOf(feature)) : shortened(cropName(key, plan.crops))
    // Dates of a crop that nobody grows here spoil no result.
    const severity = isBloomer || grown.has(key) ? 'error' : 'warning'
    const ofForage = isBloomer && isForage(feature)
    checkBloom(bloom, { name, at: isBloomer ? key : path, path, year, severity, isForage: ofForage }, report)
  }
}

/** It bears on no result, so that a slip in it is no error. */
function checkColdStore({ season, index }: Place, year: number | null, report: ReportProblem): void {
  const { coldStore } = season
  if (coldStore === undefined) return
  const path = `plan.seasons[${index}].coldStore`
  const owner = { name: `Cold store of ${season.year}`, at: path, path }
  checkDate(coldStore.from, { ...owner, label: 'its start', path: `${path}.from`, year, severity: 'warning' }, report)
  checkFigures(coldStore, coldStoreLimits, owner, report)
}

function checkStations({ season, index, features }: Place, year: number | null, report: ReportProblem): void {
  for (const [id, station] of Object.entries(season.stations ?? {})) {
    const path = pathText(['plan', 'seasons', index, 'stations', id])
    const feature = features.get(id)
    if (feature === undefined || !isStation(feature)) {
      report('warning', 'station-unknown', path, {
        id: shortened(id),
        year: season.year,
        isDrawn: feature !== undefined,
      })
      continue
    }
    const owner = { name: shortened(nameOf(feature)), at: id, path }
    if (station.bee !== undefined) checkBee(station.bee, owner.name, id, report)
    checkFigures(station, stationLimits, owner, report)
    for (const [number, release] of (station.releases ?? []).entries()) {
      const inner = `${path}.releases[${number}]`
      const dated = { ...owner, label: 'release', path: `${inner}.date`, year, severity: 'error' } as const
      checkDate(release.date, dated, report)
      checkFigures(release, releaseLimits, { ...owner, path: inner }, report)
    }
  }
}
