import { Temporal } from 'temporal-polyfill'

/** A calendar date, ISO 8601 `YYYY-MM-DD`. */
export type IsoDate = string

const form = /^\d{4}-\d{2}-\d{2}$/

function parse(date: IsoDate): Temporal.PlainDate {
  if (!form.test(date)) throw new RangeError(`not a calendar date: ${date}`)
  return Temporal.PlainDate.from(date, { overflow: 'reject' })
}

/** Whether `text` is a day that exists, written YYYY-MM-DD; 2026-02-29 does not. */
export function isIsoDate(text: string): boolean {
  try {
    parse(text)
    return true
  } catch {
    return false
  }
}

/** Day of the season's calendar year, 1 = 1 January of `year`; 31 December of the year before is 0. */
export function dayOfSeason(date: IsoDate, year: number): number {
  return daysBetween(Temporal.PlainDate.from({ year, month: 1, day: 1 }).toString(), date) + 1
}

/** The date of day `day` of the season `year`; the inverse of `dayOfSeason`. */
export function dateOfDay(day: number, year: number): IsoDate {
  return Temporal.PlainDate.from({ year, month: 1, day: 1 })
    .add({ days: day - 1 })
    .toString()
}

export function addDays(date: IsoDate, days: number): IsoDate {
  return parse(date).add({ days }).toString()
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return parse(from).until(parse(to), { largestUnit: 'day' }).days
}
