import type { Daylight } from './sun'

/** Lowest and highest temperature of a day, degC, and its daylight. */
export type TemperatureDay = { readonly minimum: number; readonly maximum: number; readonly light: Daylight }

/**
 * Temperature while the sun is up, at `hour` (solar time): half a sine wave from the minimum at sunrise, whose top comes
 * two hours after noon.
 * Source: Linvill 1990, Calculating chilling hours and chill units from daily maximum and minimum temperature
 * observations, HortScience 25:14-16.
 */
export function daytimeTemperature({ minimum, maximum, light }: TemperatureDay, hour: number): number {
  return minimum + (maximum - minimum) * Math.sin((Math.PI * (hour - light.sunrise)) / (light.length + 4))
}

/**
 * Temperatures at the hours 0 to 23 of every day in a row (Linvill 1990): by day the sine, from sunset a fall by the
 * logarithm of the hours since, which reaches the next minimum at sunrise. Both halves of the night use ln(N + 1), so
 * that the curve has no step at midnight and never falls below the minimum. At the ends of the row the night before
 * and after is taken to be like that of the day itself.
 */
export function hourlyTemperatures(days: readonly TemperatureDay[]): Float64Array {
  const values = new Float64Array(24 * days.length)
  for (const [index, day] of days.entries()) {
    const before = days[index - 1] ?? day
    const after = days[index + 1] ?? day
    for (let hour = 0; hour < 24; hour += 1) {
      const { sunrise, sunset } = day.light
      values[24 * index + hour] =
        hour < sunrise
          ? nightTemperature(before, day, hour + 24)
          : hour <= sunset
            ? daytimeTemperature(day, hour)
            : nightTemperature(day, after, hour)
    }
  }
  return values
}

/** Temperature in the night between two days, `hour` counted from the first midnight of the earlier one. */
function nightTemperature(evening: TemperatureDay, morning: TemperatureDay, hour: number): number {
  const { sunset } = evening.light
  const atSunset = daytimeTemperature(evening, sunset)
  const length = 24 + morning.light.sunrise - sunset
  if (!(length > 0)) return atSunset
  return atSunset - ((atSunset - morning.minimum) * Math.log(hour - sunset + 1)) / Math.log(length + 1)
}
