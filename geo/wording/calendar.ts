import type { Wording } from './wording'

/** Sentences on what the season's calendar cannot hold, and why. */
export const calendarWording = {
  'calendar-no-stations': v =>
    `No station is in use in ${v.year}. The calendar holds what hangs on bloom alone; put a station into use for the rest.`,
  'calendar-no-releases': v =>
    `No cocoons are set out in ${v.year}, so it is not known when bees fly. Rounds, last flight, taking in, cold, opening and what follows are left out; give a station its release dates.`,
  'calendar-no-bloom': v =>
    `Nothing has bloom dates in ${v.year}, so release dates cannot be held against bloom. The other dates stand.`,
  'calendar-no-females': v =>
    `No female cocoons are set out in ${v.year}: without them nobody nests, and when bees fly is not known. Give the releases their numbers.`,
  'calendar-empty': v =>
    `There is nothing to put into a calendar of ${v.year}: no bloom dates and no cocoons set out. Give a crop its bloom, or a station its releases.`,
} as const satisfies Record<string, Wording>
