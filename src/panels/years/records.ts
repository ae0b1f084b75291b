import {
  isStation,
  type Plan,
  type Season,
  type Station,
  type StationRecord,
  seasonOf,
  type Visit,
} from '#geo/plan/plan'
import { type IsoDate, isIsoDate } from '#geo/time/day'

/** A station's record in a season, just as it is kept. */
export function recordIn(season: Season | undefined, stationId: string): StationRecord {
  const records = season?.records
  return records !== undefined && Object.hasOwn(records, stationId) ? records[stationId]! : {}
}

/** Stations of a season: those in use, and those that have a record all the same; in the order of the plan. */
export function recordedStations(plan: Plan, year: number): readonly Station[] {
  const season = seasonOf(plan, year)
  const has = (entries: object | undefined, id: string) => entries !== undefined && Object.hasOwn(entries, id)
  return plan.features.filter(isStation).filter(({ id }) => has(season?.stations, id) || has(season?.records, id))
}

/** The latest count of capped tubes up to a day; visits with the same date count in their order. */
export function lastCount(visits: readonly Visit[], until: IsoDate | null): Counted | null {
  let last: Counted | null = null
  for (const { date, capped } of visits) {
    if (typeof capped !== 'number' || (until !== null && date > until)) continue
    if (last === null || date >= last.date) last = { date, capped }
  }
  return last
}

export type Counted = { readonly date: IsoDate; readonly capped: number }

/** The day to begin with: today where it belongs to the season, else the latest that something was written down for. */
export function usualDay(season: Season | undefined, year: number, today: IsoDate): IsoDate | null {
  if (today.startsWith(String(year))) return today
  const days = Object.values(season?.records ?? {}).flatMap(record => (record.visits ?? []).map(({ date }) => date))
  return days.filter(isIsoDate).toSorted().at(-1) ?? null
}
