import { dateText, dayAndMonth } from '#geo/time/date-text'
import { type IsoDate, isIsoDate } from '#geo/time/day'
import { inThrees, significant } from '#geo/wording/plain'

/** "17 April to 6 May 2026"; both years where they differ. */
export function dateSpan(from: IsoDate, to: IsoDate): string {
  if (!isIsoDate(from) || !isIsoDate(to)) return `${dateText(from)} to ${dateText(to)}`
  if (from.slice(0, 4) !== to.slice(0, 4)) return `${dateText(from)} to ${dateText(to)}`
  if (from.slice(0, 7) === to.slice(0, 7)) return `${Number(from.slice(8, 10))} to ${dateText(to)}`
  return `${dayAndMonth(from)} to ${dateText(to)}`
}

/** Figures nearer to nothing than this are told as that. */
const leastTold = 0.001

/** Digits in groups of three: "1,234,567"; never an exponent: what is next to nothing is "under 0.001". */
export function grouped(value: number): string {
  const size = Math.abs(value)
  if (size > 0 && size < leastTold) return value > 0 ? `under ${leastTold}` : '0'
  return `${value < 0 ? '−' : ''}${inThrees(value)}`
}

/**
 * A computed count to the figures it deserves: whole below 100, two figures above. The figures behind it are known to
 * a third or so, so more would pretend.
 */
export function honest(value: number): string {
  const size = Math.abs(value)
  if (size > 0 && size < 0.5) return 'under 1'
  return grouped(size < 99.5 ? Math.round(value) : significant(value, 2))
}

/** "about 140"; a plain 0 stays "0", and what is under 1 is not about it. */
export function about(value: number): string {
  return Math.abs(value) < 0.5 ? honest(value) : `about ${honest(value)}`
}

/** "about 38 females", "about 1 female", "under 1 female", "0 females". */
export function aboutCounted(value: number, one: string, many = `${one}s`): string {
  const size = Math.abs(value)
  return `${about(value)} ${size > 0 && size < 1.5 ? one : many}`
}

/** "118 to 171" of a low and a high end; one figure where both read the same. */
export function rangeText(low: number, high: number, word: (value: number) => string = whole): string {
  const from = word(low)
  const to = word(high)
  return from === to ? from : `${from} to ${to}`
}

/** Rounded to whole, grouped. */
export function whole(value: number): string {
  return grouped(Math.round(value))
}

/** A share as percent: "73%". Never says 100% or 0% of what is only near it. */
export function percent(share: number): string {
  const hundredths = Math.round(share * 100)
  if (hundredths === 100 && share < 1 - 1e-9) return '99%'
  if (hundredths === 0 && share > 1e-9) return 'under 1%'
  return `${grouped(hundredths)}%`
}

/** Share points gained: "+12 points". */
export function points(share: number): string {
  const hundredths = Math.round(share * 100)
  const amount = grouped(Math.abs(hundredths))
  const noun = Math.abs(hundredths) === 1 ? 'point' : 'points'
  if (hundredths === 0) return `no ${noun}`
  return `${hundredths > 0 ? '+' : '−'}${amount} ${noun}`
}

/** "1 station", "3 stations". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`
}

export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

const compass = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const

/** The nearest of sixteen compass words for degrees clockwise from north. */
export function compassWord(degrees: number): string {
  const turned = ((degrees % 360) + 360) % 360
  return compass[Math.round(turned / 22.5) % 16] as string
}

/** "118° (east-south-east)". */
export function directionText(degrees: number): string {
  return `${grouped(significant(degrees, 4))}° (${compassWord(degrees)})`
}
