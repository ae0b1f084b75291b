import { timingFigures } from '../data/timing-figures'
import type { ReportProblem } from '../plan/report-problem'
import { dateOfDay, dayOfSeason, isIsoDate } from '../time/day'
import { type Flying, told } from './flying'
import type { TimingGround } from './timing-ground'

/** Half a year: a southern spring is taken to follow a northern one at this distance (assumed). */
const southernShift = 183

/** Nests taken in while bees still build, or left out into the season of wasps. Where no day is written down, nothing is said. */
export function checkTakingIn({ season, year, plane }: TimingGround, station: Flying, report: ReportProblem): void {
  const record = season.records?.[station.id]
  if (record?.takenIn === undefined || !isIsoDate(record.takenIn)) return
  const day = dayOfSeason(record.takenIn, year)
  const common = { name: station.name, date: record.takenIn, year }
  const capped = lastCap(record.visits ?? [])
  const { settling, takenInBy } = timingFigures
  if (capped !== null && day - dayOfSeason(capped, year) < settling.value) {
    const days = day - dayOfSeason(capped, year)
    report('warning', 'taken-in-early', station.id, { ...common, capped, days, ...told(settling) })
  } else if (capped === null && day < station.lastDay) {
    report('warning', 'taken-in-flight', station.id, { ...common, last: dateOfDay(station.lastDay, year) })
  }
  const limit = takenInBy.value + (plane.centre[1] < 0 ? southernShift : 0)
  if (day > limit) {
    const values = { ...common, by: dateOfDay(limit, year), source: told(takenInBy).source }
    report('warning', 'taken-in-late', station.id, values)
  }
}

type Visits = readonly { readonly date: string; readonly capped?: number | null }[]

/** The visit at which capped tubes were last seen to have become more; null where no visit counted any. */
function lastCap(visits: Visits): string | null {
  let most = 0
  let last: string | null = null
  for (const { date, capped } of visits
    .filter(({ date }) => isIsoDate(date))
    .sort((a, b) => (a.date < b.date ? -1 : 1))) {
    if (capped == null || !(capped > most)) continue
    most = capped
    last = date
  }
  return last
}
