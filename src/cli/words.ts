import { inThrees, significant } from '#geo/wording/plain'

/** What stands where a figure cannot be said. */
export const notKnown = 'not known'

/** "1 warning", "3 warnings". */
export function counted(count: number, one: string): string {
  return `${grouped(count)} ${count === 1 ? one : `${one}s`}`
}

/** Digits in groups of three: "1,234,567". */
export function grouped(value: number): string {
  return `${value < 0 ? '-' : ''}${inThrees(value)}`
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
