import { type FrostFlag, frostFlags } from '#geo/bloom/frost'
import type { Plan } from '#geo/plan/plan'
import { dayOfSeason } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { withUnit } from '../../text/units'
import { cropTitle } from '../titles'

/** A frost hard enough to kill flowers of one crop at its stage. */
export type Frost = FrostFlag & { readonly day: number; readonly cropName: string }

/** Nights of the season in which the weather fell to what kills a tenth of a crop's flowers or more. */
export function frostsOf(plan: Plan, year: number): readonly Frost[] {
  return frostFlags(plan, year).map(flag => ({
    ...flag,
    day: dayOfSeason(flag.date, year),
    cropName: cropTitle(plan, flag.crop),
  }))
}

/** Whether a frost is one of the bloom that is kept under `key`, a crop or a planting. */
export function isFrostOf({ crop, plantings }: Frost, key: string): boolean {
  return crop === key || plantings.includes(key)
}

/** "frost of −2.5 °C, enough to kill a tenth of the flowers of Apple". null without frost. */
export function frostWords(frosts: readonly Frost[], units: Plan['units']): string | null {
  const [first] = frosts
  if (first === undefined) return null
  const lowest = withUnit(Math.min(...frosts.map(({ minimum }) => minimum)), 'temperature', units)
  const names = (isSevere: boolean) => [
    ...new Set(frosts.filter(frost => frost.isSevere === isSevere).map(({ cropName }) => cropName)),
  ]
  const parts = [
    { amount: 'nine tenths', crops: names(true) },
    { amount: 'a tenth', crops: names(false) },
  ].filter(({ crops }) => crops.length > 0)
  const told = parts.map(({ amount, crops }) => `${amount} of the flowers of ${listed(crops)}`)
  return `frost of ${lowest}, enough to kill ${listed(told)}`
}
