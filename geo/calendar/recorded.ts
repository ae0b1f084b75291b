import { nameOf, type Station, type StationRecord, seasonOf } from '../plan/plan'
import { dayOfSeason, type IsoDate, isIsoDate } from '../time/day'
import { listed, oneLine } from '../wording/plain'
import type { Context } from './context'
import { dayText } from './words'

/** What the records say of a piece of work that is done station by station. */
export type Done = {
  /** The day on which the last station had it done; null where none has, or not all have yet. */
  readonly all: number | null
  /** Where it is done so far, and when, as a sentence; empty where nothing is written down. */
  readonly text: string
}

/** Dates written down for `stations`; a date that is no day counts as none. `verb`: "taken in". */
export function doneAt(
  { plan, year }: Context,
  stations: readonly Station[],
  verb: string,
  dateOf: (record: StationRecord) => IsoDate | undefined,
): Done {
  const records = seasonOf(plan, year)?.records ?? {}
  const days = stations.flatMap(station => {
    const record = Object.hasOwn(records, station.id) ? records[station.id] : undefined
    const date = record && dateOf(record)
    return date === undefined || !isIsoDate(date) ? [] : [{ station, day: dayOfSeason(date, year) }]
  })
  if (days.length === 0) return { all: null, text: '' }
  const told = days.map(({ station, day }) => `${oneLine(nameOf(station)) || station.id} on ${dayText(day, year)}`)
  const all = days.length === stations.length ? Math.max(...days.map(({ day }) => day)) : null
  return { all, text: `Recorded as ${verb}: ${listed(told)}.` }
}

/** The day, in this season's days, on which this year's brood was put in the cold: next season's record; null = not written down. */
export function recordedCold({ plan, year }: Context): number | null {
  const from = seasonOf(plan, year + 1)?.coldStore?.from
  return from === undefined || !isIsoDate(from) ? null : dayOfSeason(from, year)
}
