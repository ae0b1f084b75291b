import { bloomHeat } from '../data/bloom-heat'
import { tableCropOf } from '../data/settings'
import { isSouthern, southernShift } from '../plan/home'
import { isObserved, type Plan, type Season, seasonOf } from '../plan/plan'
import { dateOfDay, dayOfSeason, type IsoDate, isIsoDate } from '../time/day'
import { meanDegreeDays, sineDegreeDays } from '../weather/degree-days'
import { dayReaching, type HeatSum, heatSum } from '../weather/degree-sum'
import { recordOf } from '../weather/record'

/** A season in which the grower saw full bloom and whose weather tells what heat that took. */
export type SeenHeat = { readonly year: number; readonly full: IsoDate; readonly total: number }

/** Heat towards full bloom of a crop in a season. Degree-days in degC d. */
export type Heat = {
  readonly base: number
  /** The day from which it is counted. */
  readonly from: IsoDate
  /** Degree-days to full bloom: the table's, or the mean of the grower's own seasons. */
  readonly total: number
  readonly isRescaled: boolean
  readonly seasons: readonly SeenHeat[]
  /** Degree-days reached so far, and the last day counted; null where none could be. */
  readonly sum: number
  /** The same stretch by single sine, which counts the warm hours of cold days: for comparing with other services. */
  readonly sumBySine: number
  readonly until: IsoDate | null
  /** Full bloom; null where the weather does not reach it. */
  readonly full: IsoDate | null
  /** `reached`, or why not: the weather ends, has a gap of many days, begins too late, or there is none. */
  readonly state: 'reached' | 'weather' | 'gap' | 'late' | 'none'
  /** Days without temperatures that were bridged. */
  readonly bridged: number
}

/** Heat of a crop in the season `year`; null for a crop that has no total in the tables. */
export function heatOf(plan: Plan, year: number, crop: string): Heat | null {
  const record = tableCropOf(crop, plan.crops)
  const figures = record && bloomHeat[record.id]
  if (!figures) return null
  const base = figures.base.value
  const dayFrom = (of: number) =>
    dayOfSeason(`${String(of).padStart(4, '0')}-${figures.from}`, of) + (isSouthern(plan) ? southernShift : 0)
  const sumIn = (season: Season, degreeDays = meanDegreeDays): HeatSum | null => {
    const weather = recordOf(season.weather?.days ?? [], season.year)
    return weather && heatSum(weather, dayFrom(season.year), base, degreeDays)
  }
  const seasons = plan.seasons.flatMap(season => (season.year === year ? [] : seenIn(season, crop, sumIn)))
  const isRescaled = seasons.length > 0
  const total = isRescaled ? seasons.reduce((all, seen) => all + seen.total, 0) / seasons.length : figures.total.value
  const season = seasonOf(plan, year)
  const sum = season ? sumIn(season) : null
  const sine = season ? sumIn(season, sineDegreeDays) : null
  const reached = sum && dayReaching(sum, total)
  const length = sum?.sums.length ?? 0
  return {
    base,
    from: dateOfDay(dayFrom(year), year),
    total,
    isRescaled,
    seasons,
    sum: sum?.sums[length - 1] ?? 0,
    sumBySine: sine?.sums.at(-1) ?? 0,
    until: sum && length > 0 ? dateOfDay(sum.start + length - 1, year) : null,
    full: reached === null ? null : dateOfDay(reached, year),
    state: reached !== null ? 'reached' : (sum?.end ?? 'none'),
    bridged: sum?.bridged ?? 0,
  }
}

/** What a season with weather says of the heat that a crop takes, where the grower saw its full bloom. */
function seenIn(season: Season, crop: string, sumIn: (season: Season) => HeatSum | null): readonly SeenHeat[] {
  const bloom = season.bloom && Object.hasOwn(season.bloom, crop) ? season.bloom[crop] : undefined
  if (bloom === undefined || !isObserved(bloom, 'full') || !isIsoDate(bloom.full)) return []
  const sum = sumIn(season)
  const total = sum?.sums[dayOfSeason(bloom.full, season.year) - sum.start]
  return total === undefined || total <= 0 ? [] : [{ year: season.year, full: bloom.full, total }]
}
