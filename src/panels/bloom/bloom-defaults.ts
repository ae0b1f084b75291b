import { type BloomPlace, type DefaultBloom, defaultBloom, defaultForageBloom, ownAppleDay } from '#geo/bloom/defaults'
import type { BloomRegion } from '#geo/data/own'
import { forageSettings } from '#geo/data/settings'
import { isSouthern } from '#geo/plan/home'
import { type Bloom, isObserved, type Plan, seasonOf } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { settingsOf } from '../../state/selectors'
import { counted } from '../../text/words'

/** What the default dates of a season hang on: the region, and the grower's own apple date where there is one. */
export type Hinge = { readonly region: BloomRegion; readonly apple: IsoDate | null }

/**
 * The hinge that the plan has for a season: apple as it was seen that year goes before a date set for the calendar. A date
 * that is no day is passed over; the check tells of it.
 */
export function hingeOf(plan: Plan, year: number): Hinge {
  const apple = appleSeen(plan, year) ?? seasonOf(plan, year)?.appleFullBloom
  return { region: plan.bloomRegion, apple: apple !== undefined && isIsoDate(apple) ? apple : null }
}

/** Full bloom of apple in a season, where it was seen; null otherwise. */
export function appleSeen(plan: Plan, year: number): IsoDate | null {
  const apple = seasonOf(plan, year)?.bloom?.apple
  return apple !== undefined && isObserved(apple, 'full') && isIsoDate(apple.full) ? apple.full : null
}

function placeOfBloom(plan: Plan, year: number, { region, apple }: Hinge): BloomPlace {
  const place = { region, year, isSouthern: isSouthern(plan) }
  return apple === null ? place : { ...place, apple: ownAppleDay(apple, place) }
}

/** Default bloom of a crop at the plan's place; null where the tables cannot say. */
export function defaultForCrop(
  plan: Plan,
  year: number,
  crop: string,
  hinge = hingeOf(plan, year),
): DefaultBloom | null {
  const settings = settingsOf(plan).crops[crop]
  return settings ? defaultBloom(settings, placeOfBloom(plan, year, hinge)) : null
}

export function defaultForForage(plan: Plan, year: number, forage: string): DefaultBloom | null {
  const settings = forageSettings[forage]
  return settings ? defaultForageBloom(settings, placeOfBloom(plan, year, hingeOf(plan, year))) : null
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
