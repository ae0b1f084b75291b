import { csvText } from '#geo/file/csv-text'
import { valueOn } from '#geo/time/curve'
import { dateText } from '#geo/time/date-text'
import { dateOfDay, daysBetween } from '#geo/time/day'
import { dateSpan, honest } from '../../text/words'
import { openText, type SeasonDay, type SeasonPicture, seasonDays } from './season-days'
import { frostWords } from './season-frost'
import { type FlyingDay, flyingOn, hoursText } from './season-weather'

/** A line of the season's table: a day, or a week with what was most in it. */
export type SeasonRow = {
  readonly when: string
  readonly open: string
  readonly females: string
  /** Hours, of each bee in use; empty without weather. */
  readonly flying: string
  /** Frost that kills flowers; empty where there was none. */
  readonly frost: string
}

const nothingOpen = 'nothing drawn'

export function dayRows(bands: SeasonPicture, year: number): readonly SeasonRow[] {
  return seasonDays(bands).map(({ day, open, females, flying, frosts }) => ({
    when: dateText(dateOfDay(day, year)),
    open: openText(open) || nothingOpen,
    females: honest(females),
    flying: flyingText(flying),
    frost: frostWords(frosts, bands.units) ?? '',
  }))
}

/** Weeks from Monday to Sunday; of each bloom, and of the females, the most that any of its days has. */
export function weekRows(bands: SeasonPicture, year: number): readonly SeasonRow[] {
  const weeks = new Map<number, SeasonDay[]>()
  for (const each of seasonDays(bands)) {
    const week = Math.floor(daysBetween(aMonday, dateOfDay(each.day, year)) / 7)
    weeks.set(week, [...(weeks.get(week) ?? []), each])
  }
  return [...weeks.values()].map(days => ({
    when: dateSpan(dateOfDay(days[0]!.day, year), dateOfDay(days.at(-1)!.day, year)),
    open: openText(mostOpen(days)) || nothingOpen,
    females: honest(Math.max(...days.map(({ females }) => females))),
    flying: flyingText(weekFlying(days)),
    frost:
      frostWords(
        days.flatMap(({ frosts }) => frosts),
        bands.units,
      ) ?? '',
  }))
}

/** "6.2"; with several bees "6.2 / 4.1", in the order of the bands. */
function flyingText(flying: readonly FlyingDay[]): string {
  return flying.map(({ hours }) => (hours === null ? 'not known' : hoursText(hours))).join(' / ')
}

/** Hours of a week: the sum of its days, not known where one of them is not. */
function weekFlying(days: readonly SeasonDay[]): readonly FlyingDay[] {
  return days[0]!.flying.map(({ id }, i) => {
    const hours = days.map(({ flying }) => flying[i]!.hours)
    return { id, hours: hours.includes(null) ? null : hours.reduce<number>((sum, each) => sum + each!, 0) }
  })
}

const aMonday = '2024-01-01'

function mostOpen(days: readonly SeasonDay[]): SeasonDay['open'] {
  const most = new Map<string, number>()
  for (const { label, share } of days.flatMap(({ open }) => open))
    most.set(label, Math.max(share, most.get(label) ?? 0))
  return [...most].map(([label, share]) => ({ label, share }))
}

export const rowHeads: Readonly<Record<keyof SeasonRow, string>> = {
  when: 'When',
  open: 'In bloom',
  females: 'Females at work',
  flying: 'Flying hours',
  frost: 'Frost',
}

/** The table for pasting elsewhere: columns apart by tabs. */
export function rowsText(rows: readonly SeasonRow[]): string {
  const hasWeather = rows.some(({ flying }) => flying !== '')
  const lines = [rowHeads, ...rows].map(({ when, open, females, flying, frost }) =>
    [when, open, females, ...(hasWeather ? [flying, frost] : [])].join('\t'),
  )
  return `${lines.join('\n')}\n`
}

/** Day by day with a column for every bloom and every station, for a spreadsheet; shares from 0 to 1. */
export function seasonCsv(bands: SeasonPicture, year: number): string {
  const { blooms, flights, flying } = bands
  const heads = [
    'date',
    ...blooms.map(({ label }) => `${label}, share open`),
    ...flights.map(({ label }) => `${label}, females at work`),
    ...flying.map(({ label }) => `${label}, hours`),
    ...(flying.length > 0 ? ['frost'] : []),
  ]
  const rounded = (value: number, digits: number) => Number(value.toFixed(digits))
  const lines = seasonDays(bands).map(({ day, frosts }) => [
    dateOfDay(day, year),
    ...blooms.map(({ curve }) => rounded(valueOn(curve, day), 3)),
    ...flights.map(({ curve, females }) => rounded(females * valueOn(curve, day), 1)),
    ...flyingOn(flying, day).map(({ hours }) => (hours === null ? '' : rounded(hours, 2))),
    ...(flying.length > 0 ? [frostWords(frosts, bands.units) ?? ''] : []),
  ])
  return csvText([heads, ...lines])
}
