import type { Parameter } from '../data/parameter'
import { dateText } from '../time/date-text'
import { dateOfDay } from '../time/day'

/** "6 April 2026" of a day of the season `year`. */
export function dayText(day: number, year: number): string {
  return dateText(dateOfDay(day, year))
}

/** "1 station", "3 stations". */
export function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`
}

/** "63 days (14 to 90)": a figure with its range. */
export function spanText({ value, low, high }: Pick<Parameter, 'value' | 'low' | 'high'>): string {
  const range = low === high ? '' : ` (${low} to ${high})`
  return `${counted(value, 'day')}${range}`
}

export function percent(share: number): string {
  return `${Math.round(share * 100)}%`
}
