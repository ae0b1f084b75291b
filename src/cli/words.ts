import type { IsoDate } from '#geo/time/day'
import { months } from '#geo/time/months'

/** What stands where a figure cannot be said. */
export const notKnown = 'not known'

/** "6 April 2026". */
export function dateText(date: IsoDate): string {
  return `${Number(date.slice(8, 10))} ${months[Number(date.slice(5, 7)) - 1]} ${Number(date.slice(0, 4))}`
}

/** "1 warning", "3 warnings". */
export function counted(count: number, one: string): string {
  return `${grouped(count)} ${count === 1 ? one : `${one}s`}`
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items[0] ?? ''
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}

/** Digits in groups of three: "1,234,567". */
export function grouped(value: number): string {
  const [whole = '', decimals] = plainDigits(Math.abs(value)).split('.')
  const text = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  return `${value < 0 ? '-' : ''}${text}${decimals === undefined ? '' : `.${decimals}`}`
}

/** A number without an exponent. */
function plainDigits(value: number): string {
  const text = String(value)
  return text.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : text
}

/** Rounded to `digits` significant digits. */
export function significant(value: number, digits: number): number {
  return value === 0 ? 0 : Number(value.toPrecision(digits))
}

/** A computed count to the figures it deserves: whole below 100, two figures above; null = not known. */
export function estimate(value: number | null): string {
  if (value === null) return notKnown
  if (value > 0 && value < 0.5) return 'under 1'
  return grouped(value < 99.5 ? Math.round(value) : significant(value, 2))
}

/** A share as percent; never 100% or 0% of what only comes near it; null = not known. */
export function percent(share: number | null): string {
  if (share === null) return notKnown
  const hundredths = Math.round(share * 100)
  if (hundredths === 100 && share < 1 - 1e-9) return '99%'
  if (hundredths === 0 && share > 1e-9) return 'under 1%'
  return `${hundredths}%`
}

/** A name on one line, without characters that would steer the terminal. */
export function oneLine(text: string): string {
  return text.replace(/[\p{C}\s]+/gu, ' ').trim()
}
