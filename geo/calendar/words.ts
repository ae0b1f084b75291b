import type { Parameter } from '../data/parameter'
import { dateOfDay } from '../time/day'
import { months } from '../time/months'

/** "6 April 2026" of a day of the season `year`. */
export function dayText(day: number, year: number): string {
  const date = dateOfDay(day, year)
  return `${Number(date.slice(8, 10))} ${months[Number(date.slice(5, 7)) - 1]} ${Number(date.slice(0, 4))}`
}

/** "1 station", "3 stations". */
export function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? ''
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
}

/** "63 days (14 to 90)": a figure with its range. */
export function spanText({ value, low, high }: Pick<Parameter, 'value' | 'low' | 'high'>): string {
  const range = low === high ? '' : ` (${low} to ${high})`
  return `${counted(value, 'day')}${range}`
}

export function percent(share: number): string {
  return `${Math.round(share * 100)}%`
}

/** A name on one line, without characters that no text should hold. */
export function oneLine(text: string): string {
  return text.replace(/[\p{C}\s]+/gu, ' ').trim()
}
