import { chillModels } from '../data/chill-models'

/** Hours between freezing and 7.2 degC. */
export function chillingHours(temperatures: Iterable<number>): number {
  const { from, to } = chillModels.hours
  let hours = 0
  for (const temperature of temperatures) if (temperature >= from && temperature <= to) hours += 1
  return hours
}

/**
 * Utah chill units: hours weighed by temperature, warm ones taking back.
 * Source: Richardson, Seeley & Walker 1974, A model for estimating the completion of rest for 'Redhaven' and 'Elberta'
 * peach trees, HortScience 9:331-332; upper ends of the classes counted in.
 */
export function utahUnits(temperatures: Iterable<number>): number {
  let units = 0
  for (const temperature of temperatures) {
    units += chillModels.utah.find(({ upTo }) => temperature <= upTo)!.units
  }
  return units
}

/**
 * Chill portions of the dynamic model: an intermediate that builds up in the cold and falls apart in warmth is fixed as
 * a portion once there is enough of it. The first hour only starts the record.
 * Source: Fishman, Erez & Couvillon 1987, Journal of Theoretical Biology 124:473-483; Erez, Fishman, Linsley-Noakes &
 * Allan 1990, Acta Horticulturae 276:165-174.
 */
export function chillPortions(temperatures: Iterable<number>): number {
  const { e0, e1, a0, a1, slope, fixed } = chillModels.dynamic
  let portions = 0
  let product = 0
  let isFirst = true
  for (const temperature of temperatures) {
    if (isFirst) {
      isFirst = false
      continue
    }
    const kelvin = temperature + 273
    const limit = (a0 / a1) * Math.exp((e1 - e0) / kelvin)
    product = limit - (limit - product) * Math.exp(-a1 * Math.exp(-e1 / kelvin))
    if (product < 1) continue
    const share = 1 / (1 + Math.exp((-slope * fixed * (kelvin - fixed)) / kelvin))
    portions += product * share
    product *= 1 - share
  }
  return portions
}

/**
 * Growing degree hours of one hour: nothing below 4 degC, all of it at 25, nothing again above 36.
 * Source: Anderson, Richardson & Kesner 1986, Validation of chill unit and flower bud phenology models for
 * 'Montmorency' sour cherry, Acta Horticulturae 184:71-78.
 */
export function growingDegreeHours(temperature: number): number {
  const { base, best, most } = chillModels.heat
  if (temperature < base || temperature > most) return 0
  if (temperature <= best) {
    return ((best - base) / 2) * (1 + Math.cos(Math.PI + (Math.PI * (temperature - base)) / (best - base)))
  }
  return (best - base) * (1 + Math.cos(Math.PI / 2 + ((Math.PI / 2) * (temperature - best)) / (most - best)))
}
