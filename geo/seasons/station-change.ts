import { type Plan, type Season, seasonOf } from '../plan/plan'
import type { LikeWithLike } from './like-with-like'
import { recordOf, type StationYear } from './record'

/** What was written down at a station in one season that counts do not show. */
export type Remarks = {
  readonly year: number
  /** Visits that looked at the mud, and those of them that found it dry. */
  readonly mudLooked: number
  readonly mudDry: number
  /** Notes and damage of visits, in the grower's own words; each once. */
  readonly words: readonly string[]
}

/** What a station's counts became from one season to the other, and what was remarked there. */
export type StationChange = {
  readonly id: string
  readonly name: string
  readonly from: StationYear
  readonly to: StationYear
  /** Capped tubes for each female set out; null where either is not known, or none were set out. */
  readonly cappedEach: { readonly from: number | null; readonly to: number | null }
  /** By how many times tubes for each female rose; null where that cannot be told. */
  readonly times: number | null
  readonly remarks: readonly [from: Remarks, to: Remarks]
}

/** Stations counted in both seasons, those first whose tubes for each female changed most. */
export function stationChanges(plan: Plan, [a, b]: readonly [number, number], { stations }: LikeWithLike) {
  const [then, now] = [seasonOf(plan, a)!, seasonOf(plan, b)!]
  return stations
    .filter(({ isCounted }) => isCounted)
    .map(({ id, name, from, to }): StationChange => {
      const cappedEach = { from: eachOf(from), to: eachOf(to) }
      const times = cappedEach.from && cappedEach.to !== null ? cappedEach.to / cappedEach.from : null
      return { id, name, from, to, cappedEach, times, remarks: [remarksOf(then, id), remarksOf(now, id)] }
    })
    .toSorted((x, y) => sizeOf(y.times) - sizeOf(x.times))
}

function eachOf({ capped, released }: StationYear): number | null {
  return capped === null || !(released.females > 0) ? null : capped / released.females
}

/** Twice as many and half as many are changes of one size; all tubes gone is the largest. */
function sizeOf(times: number | null): number {
  return times === null ? -1 : times > 0 ? Math.abs(Math.log(times)) : Number.POSITIVE_INFINITY
}

function remarksOf(season: Season, id: string): Remarks {
  const visits = recordOf(season, id)?.visits ?? []
  const looked = visits.filter(({ mudWet }) => typeof mudWet === 'boolean')
  const words = visits
    .flatMap(({ note, damage }) => [note, damage])
    .filter(text => text !== undefined && text.trim() !== '')
  return {
    year: season.year,
    mudLooked: looked.length,
    mudDry: looked.filter(({ mudWet }) => mudWet === false).length,
    words: [...new Set(words as string[])],
  }
}

/** What was remarked at a station: "2024: mud dry at 2 of 6 visits; “Mud tray dry.”". */
export function remarkTexts({ year, mudLooked, mudDry, words }: Remarks): readonly string[] {
  const mud =
    mudLooked === 0
      ? []
      : [
          mudDry === 0
            ? `${year}: mud wet at ${mudLooked === 1 ? 'the one visit' : `all ${mudLooked} visits`} that looked.`
            : `${year}: mud dry at ${mudDry} of ${mudLooked} ${mudLooked === 1 ? 'visit' : 'visits'} that looked.`,
        ]
  return [...mud, ...words.map(text => `${year}: “${text}”`)]
}
