import { flyingModel } from '../data/flying-model'
import { daytimeTemperature, type TemperatureDay } from './hours'

/** The temperatures between which a bee's work rises from none to full, degC. */
export type FlightThresholds = { readonly flightFrom: number; readonly flightFull: number }

/** Weather of one day; rain in mm and wind in m/s, null where unknown: then nothing is taken off for it. */
export type FlightDay = TemperatureDay & { readonly rain: number | null; readonly wind: number | null }

/**
 * Hours of full work that a day allows, 0 to 24: every whole hour with the sun up counts by its temperature, all are
 * lessened for rain and wind. An estimate of our own on published thresholds.
 */
export function flightHours(day: FlightDay, { flightFrom, flightFull }: FlightThresholds): number {
  const { sunrise, sunset } = day.light
  let hours = 0
  for (let hour = Math.floor(sunrise) + 1; hour < sunset; hour += 1) {
    const warmth = (daytimeTemperature(day, hour) - flightFrom) / (flightFull - flightFrom)
    hours += Math.max(0, Math.min(1, warmth))
  }
  return hours * dryShare(day.rain) * calmShare(day.wind)
}

function dryShare(rain: number | null): number {
  return rain === null ? 1 : Math.exp(-rain / flyingModel.rainScale.value)
}

function calmShare(wind: number | null): number {
  if (wind === null) return 1
  const { windFull, windNone } = flyingModel
  return Math.max(0, Math.min(1, (windNone.value - wind) / (windNone.value - windFull.value)))
}
