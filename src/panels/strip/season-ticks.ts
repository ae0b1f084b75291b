import { shortDate } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import type { Stretch } from './stretch'

export type Tick = { readonly day: number; readonly text: string }

/** Dates stand at least this far apart, px. */
const apart = 52

/** Which days of the month have a date, from the finest to the coarsest, and how far apart they are, days. */
const choices: readonly { readonly isMarked: (dayOfMonth: number) => boolean; readonly every: number }[] = [
  { isMarked: () => true, every: 1 },
  { isMarked: day => day % 2 === 1 && day < 31, every: 2 },
  { isMarked: day => day % 7 === 1 && day < 29, every: 7 },
  { isMarked: day => day === 1 || day === 15, every: 14 },
  { isMarked: day => day === 1, every: 28 },
]

/** Dates to stand below a stretch of days that is `plot` pixels wide: as many as there is room for. */
export function ticksOf({ from, to }: Stretch, year: number, plot: number): readonly Tick[] {
  const perDay = plot / Math.max(1, to - from)
  const { isMarked } = choices.find(({ every }) => every * perDay >= apart) ?? choices.at(-1)!
  // A date at the very edge would be cut.
  const edge = apart / 2 / perDay
  const ticks: Tick[] = []
  for (let day = Math.ceil(from + edge); day <= to - edge; day += 1) {
    const date = dateOfDay(day, year)
    if (isMarked(Number(date.slice(8, 10)))) ticks.push({ day, text: shortDate(date) })
  }
  return ticks
}
