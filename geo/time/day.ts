import { Temporal } from 'temporal-polyfill'

/** A calendar date, ISO 8601 `YYYY-MM-DD`. */
export type IsoDate = string

const form = /^\d{4}-\d{2}-\d{2}$/
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
}

/** Days before 1 January of `year`, counted from 1 January of the year 0 (Gregorian throughout, as ISO 8601). */
function daysBefore(year: number): number {
  const past = year - 1
  return 365 * year + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400) + 1
}

/**
 * Day count of a date; null where there is no such day. By arithmetic: seasons of weather hold hundreds of dates, each of
 * which is looked at with every edit.
 */
function countOf(date: IsoDate): number | null {
  if (!form.test(date)) return null
  const [year, month, day] = [Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8, 10))]
  const length = (monthLengths[month - 1] ?? 0) + (month === 2 && isLeap(year) ? 1 : 0)
  if (day < 1 || day > length) return null
  let past = month > 2 && isLeap(year) ? 1 : 0
  for (let each = 0; each < month - 1; each += 1) past += monthLengths[each]!
  return daysBefore(year) + past + day
}

function parse(date: IsoDate): Temporal.PlainDate {
  if (!form.test(date)) throw new RangeError(`not a calendar date: ${date}`)
  return Temporal.PlainDate.from(date, { overflow: 'reject' })
}

/** Whether `text` is a day that exists, written YYYY-MM-DD; 2026-02-29 does not. */
export function isIsoDate(text: string): boolean {
  return countOf(text) !== null
}

/** Day of the season's calendar year, 1 = 1 January of `year`; 31 December of the year before is 0. */
export function dayOfSeason(date: IsoDate, year: number): number {
  const count = countOf(date)
  if (count === null) throw new RangeError(`not a calendar date: ${date}`)
  return count - daysBefore(year)
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
