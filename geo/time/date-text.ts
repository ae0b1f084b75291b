import { type IsoDate, isIsoDate } from './day'
import { months } from './months'

/** "6 April 2026". Text that is no calendar date is given back as it stands. */
export function dateText(date: IsoDate): string {
  return isIsoDate(date) ? `${dayAndMonth(date)} ${Number(date.slice(0, 4))}` : date
}

/** "6 April", for places where the year is plain. */
export function dayAndMonth(date: IsoDate): string {
  return `${Number(date.slice(8, 10))} ${months[Number(date.slice(5, 7)) - 1]}`
}

/** "6 Apr", for the ends of an axis. */
export function shortDate(date: IsoDate): string {
  return `${Number(date.slice(8, 10))} ${months[Number(date.slice(5, 7)) - 1]?.slice(0, 3)}`
}
