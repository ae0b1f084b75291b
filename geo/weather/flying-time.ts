import type { BeeId } from '../data/own'
import { type Settings, settingsFor } from '../data/settings'
import { latitudeOf } from '../plan/home'
import { type Plan, seasonOf } from '../plan/plan'
import type { DailyCurve } from '../time/curve'
import { flightHours } from './flight-hours'
import { recordOf } from './record'
import { daylight } from './sun'

/**
 * Flying time h(t) of a bee on the days that a season's weather spans, as a share of a typical spring day's; 1 where
 * `known` is 0, as on any day outside. `isRainKnown` is 0 where rain is not given and so nothing was taken off for it.
 */
export type FlyingTime = DailyCurve & { readonly known: Uint8Array; readonly isRainKnown: Uint8Array }

/**
 * Flying time by a season's own weather; null where it holds none, or where the plan's latitude is not known. Hours are
 * rebuilt from each day's lowest and highest temperature, and its length from the plan's latitude: an estimate.
 */
export function flyingTime(
  plan: Plan,
  year: number,
  bee: BeeId,
  settings: Settings = settingsFor(plan),
): FlyingTime | null {
  const record = recordOf(seasonOf(plan, year)?.weather?.days ?? [], year)
  const latitude = latitudeOf(plan)
  if (record === null || latitude === null) return null
  const { start, minimum, maximum, rain, wind } = record
  const values = new Float64Array(minimum.length).fill(1)
  const known = new Uint8Array(minimum.length)
  const isRainKnown = new Uint8Array(minimum.length)
  for (let i = 0; i < values.length; i += 1) {
    if (Number.isNaN(minimum[i])) continue
    const day = {
      minimum: minimum[i]!,
      maximum: maximum[i]!,
      light: daylight(latitude, start + i),
      rain: orNull(rain[i]!),
      wind: orNull(wind[i]!),
    }
    values[i] = flightHours(day, settings.bees[bee]) / settings.site.typicalFlyingHours
    known[i] = 1
    isRainKnown[i] = day.rain === null ? 0 : 1
  }
  return { start, values, known, isRainKnown }
}

/** The plan as if a season held no weather: what coverage would be on typical spring days. */
export function withoutWeather(plan: Plan, year: number): Plan {
  if (seasonOf(plan, year)?.weather === undefined) return plan
  const seasons = plan.seasons.map(season => {
    if (season.year !== year) return season
    const { weather: _, ...others } = season
    return others
  })
  return { ...plan, seasons }
}

function orNull(value: number): number | null {
  return Number.isNaN(value) ? null : value
}
