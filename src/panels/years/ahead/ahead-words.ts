import type { Plan } from '#geo/plan/plan'
import type { Care, Projection } from '#geo/seasons/project'
import { stationYears } from '#geo/seasons/record'
import type { Spread } from '#geo/seasons/spread'
import { listed } from '#geo/wording/plain'
import { counted, grouped, honest, percent } from '../../../text/words'

export const careNames: Readonly<Record<Care, string>> = {
  takenIn: 'Cocoons taken in, sorted and kept cold',
  outside: 'Nests left outside',
}

export const measures = [
  { value: 'coverage', name: 'Coverage', isShare: true },
  { value: 'females', name: 'Nesting females', isShare: false },
  { value: 'cocoons', name: 'Cocoons', isShare: false },
  { value: 'tubes', name: 'Filled tubes', isShare: false },
] as const

export type AheadMeasure = (typeof measures)[number]['value']

/** "56% (34% to 84%)"; one figure where the band has no width. */
export function bandText({ low, mid, high }: Spread, word: (value: number) => string): string {
  return low === high ? word(mid) : `${word(mid)} (${word(low)} to ${word(high)})`
}

export function wordOf(measure: AheadMeasure): (value: number) => string {
  return measure === 'coverage' ? percent : honest
}

/** The answer before any table: where the last season stands, as a band. */
export function aheadSentence({ seasons, care }: Projection): string {
  const last = seasons.at(-1)!
  const how = care === 'takenIn' ? 'With cocoons taken in' : 'With nests left outside'
  if (last.coverage === null) return `${how}, coverage in ${last.year} cannot be said: no bloom is known.`
  const { low, high } = last.coverage
  const span =
    percent(low) === percent(high) ? `about ${percent(high)}` : `anything from ${percent(low)} to ${percent(high)}`
  return `${how} and nothing bought, these bees may come to ${span} of what is wanted in ${last.year}.`
}

/** What the band begins from, and how counting narrows it. */
export function basisText(plan: Plan, { from, seasons }: Projection): string {
  const found = stationYears(plan, from)
  const known = found.filter(({ capped, daughters }) => capped !== null || daughters !== null).length
  const later = seasons.filter(({ isCounted }) => isCounted).map(({ year }) => String(year))
  const start =
    known === 0
      ? `Nothing was counted in ${from}, so the band is wide from the first season on. Capped tubes counted and nests opened narrow it.`
      : `It begins with what was counted in ${from} at ${known === found.length ? (known === 1 ? 'the one station' : `all ${grouped(known)} stations`) : `${grouped(known)} of ${counted(found.length, 'station')}`}. Each season that you count takes the place of what is reckoned here, and the band begins anew from it, narrower.`
  return later.length === 0 ? start : `${start} Your counts of ${listed(later)} stand in it already.`
}

/** Tubes to add by season, for the middle way. */
export function tubesSentence({ seasons }: Projection): string {
  const first = seasons.find(({ tubesToAdd }) => tubesToAdd.length > 0)
  if (first === undefined) return 'On the middle way the tubes that hang there are enough.'
  return `On the middle way tubes run short from ${first.year} on: have these more than there are now, or bees leave for other places.`
}
