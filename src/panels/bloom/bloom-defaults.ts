import { type DefaultBloom, defaultBloom, defaultForageBloom } from '#geo/bloom/defaults'
import { forageSettings } from '#geo/data/settings'
import type { Bloom, Plan } from '#geo/plan/plan'
import { daysBetween } from '#geo/time/day'
import { settingsOf } from '../../state/selectors'
import { isSouthern } from '../../text/home'
import { counted, dateText } from '../../text/words'

function placeOfBloom(plan: Plan, year: number) {
  return { region: plan.bloomRegion, year, isSouthern: isSouthern(plan) }
}

/** Default bloom of a crop at the plan's place; null where the tables cannot say. */
export function defaultForCrop(plan: Plan, year: number, crop: string): DefaultBloom | null {
  const settings = settingsOf(plan).crops[crop]
  return settings ? defaultBloom(settings, placeOfBloom(plan, year)) : null
}

export function defaultForForage(plan: Plan, year: number, forage: string): DefaultBloom | null {
  const settings = forageSettings[forage]
  return settings ? defaultForageBloom(settings, placeOfBloom(plan, year)) : null
}

/** "full bloom 25 April 2026; could be 20 days earlier or 17 days later". */
export function defaultText({ bloom, earliestFull, latestFull }: DefaultBloom): string {
  const earlier = counted(daysBetween(earliestFull, bloom.full), 'day')
  const later = counted(daysBetween(bloom.full, latestFull), 'day')
  return `full bloom ${dateText(bloom.full)}; could be ${earlier} earlier or ${later} later`
}

export function isSameBloom(a: Bloom | undefined, b: Bloom | undefined): boolean {
  return a !== undefined && b !== undefined && a.first === b.first && a.full === b.full && a.end === b.end
}

/** Three dates in order, a bloom's own condition. */
export function isInOrder({ first, full, end }: Bloom): boolean {
  return first < full && full < end
}
