import { isSouthern, latitudeOf, southernShift } from '../plan/home'
import { type Plan, seasonOf } from '../plan/plan'
import { dateOfDay, dayOfSeason, type IsoDate } from '../time/day'
import { chillingHours, chillPortions, growingDegreeHours, utahUnits } from './chill'
import { hourlyTemperatures } from './hours'
import { recordOf } from './record'
import { daylight } from './sun'

/** Chill of the winter before a season, by its own weather: estimates from hours rebuilt out of daily figures. */
export type WinterChill = {
  readonly from: IsoDate
  readonly until: IsoDate
  readonly hours: number
  readonly utah: number
  readonly portions: number
  /** Growing degree hours since New Year. */
  readonly growingHours: number
  /** Days of the stretch without temperatures: passed over, so that the chill is at least this. */
  readonly missing: number
}

/** Chill is counted from the 1 October before a season to its 31 March; half a year later in the south. */
const window = ['10-01', '03-31'] as const

/** Chill up to a season's spring; null where its weather holds no winter day or the latitude is not known. */
export function winterChill(plan: Plan, year: number): WinterChill | null {
  const record = recordOf(seasonOf(plan, year)?.weather?.days ?? [], year)
  const latitude = latitudeOf(plan)
  if (record === null || latitude === null) return null
  const shift = isSouthern(plan) ? southernShift : 0
  const [begin, end] = window
  const from = Math.max(record.start, dayOfSeason(`${year - 1}-${begin}`, year) + shift)
  const until = Math.min(record.start + record.minimum.length - 1, dayOfSeason(`${year}-${end}`, year) + shift)
  const days = Array.from({ length: Math.max(0, until - from + 1) }, (_, i) => from + i)
  const known = days.filter(day => !Number.isNaN(record.minimum[day - record.start]))
  if (known.length === 0) return null
  const hours = hourlyTemperatures(
    known.map(day => ({
      minimum: record.minimum[day - record.start]!,
      maximum: record.maximum[day - record.start]!,
      light: daylight(latitude, day),
    })),
  )
  const sinceNewYear = 24 * known.filter(day => day < 1 + shift).length
  return {
    from: dateOfDay(from, year),
    until: dateOfDay(until, year),
    hours: chillingHours(hours),
    utah: utahUnits(hours),
    portions: chillPortions(hours),
    growingHours: hours.subarray(sinceNewYear).reduce((sum, degrees) => sum + growingDegreeHours(degrees), 0),
    missing: days.length - known.length,
  }
}
