import { bees } from '../data/bees'
import { beeIds } from '../data/own'
import { coldDays, seasonWork } from '../data/season-work'
import { longCold, mostColdDegrees } from '../data/timing-figures'
import { type Plan, seasonOf } from '../plan/plan'
import type { ReportProblem } from '../plan/report-problem'
import { dateOfDay, dayOfSeason, daysBetween, isIsoDate } from '../time/day'
import { type Flying, lastBusyDay, told } from './flying'
import type { TimingGround } from './timing-ground'

/** How long and how cold the cocoons were kept before they were set out, by what their bee needs; and when cold began. */
export function checkColdStore(ground: TimingGround, stations: readonly Flying[], report: ReportProblem): void {
  const { season, year } = ground
  const { coldStore } = season
  if (coldStore === undefined || !isIsoDate(coldStore.from)) return
  const at = `plan.seasons[${ground.plan.seasons.indexOf(season)}].coldStore`
  const { from, temperature } = coldStore
  for (const bee of new Set(stations.map(station => station.bee))) {
    const cold = coldDays[bee]
    const mostDegrees = mostColdDegrees[bee]
    const long = longCold[bee]
    const dates = stations
      .filter(station => station.bee === bee)
      .flatMap(({ batches }) => batches.map(({ date }) => date))
    const ordered = dates.toSorted()
    const [first, last] = [ordered[0]!, ordered.at(-1)!]
    const common = { bee: bees[bee].name, year, from }
    const [least, most] = [daysBetween(from, first), daysBetween(from, last)]
    if (least < cold.low) {
      report('warning', 'cold-short', at, { ...common, date: first, days: least, ...told(cold, cold.low) })
    }
    if (most > cold.high)
      report('warning', 'cold-long', at, { ...common, date: last, days: most, ...told(cold, cold.high) })
    if (temperature !== undefined && temperature > mostDegrees.value) {
      report('warning', 'cold-warm', at, { ...common, temperature, ...told(mostDegrees) })
    } else if (
      long !== undefined &&
      temperature !== undefined &&
      most > long.days.value &&
      temperature > long.degrees.value
    ) {
      const days = { days: most, date: last, most: long.days.value }
      report('warning', 'cold-warm', at, { ...common, temperature, ...days, ...told(long.degrees) })
    }
  }
  checkAutumn(ground, at, report)
}

/** Cold that began before the brood of the season before can have been adult, or long after. Both are estimates. */
function checkAutumn({ plan, year, season, settings }: TimingGround, at: string, report: ReportProblem): void {
  const { from } = season.coldStore!
  const day = dayOfSeason(from, year - 1)
  const brood = broodDays(plan, year - 1, settings)
  if (brood === null) return
  const { eggToAdult, adultToCold } = seasonWork
  const adult = brood.last + eggToAdult.value
  const common = { from, year, last: dateOfDay(brood.last, year - 1), days: eggToAdult.value }
  if (day < adult) {
    report('warning', 'cold-early', at, {
      ...common,
      adult: dateOfDay(adult, year - 1),
      source: told(eggToAdult).source,
    })
  } else if (day - (brood.last + eggToAdult.high) > adultToCold.high) {
    // Even the slowest brood has been adult for long.
    const figures = { adult: dateOfDay(brood.last + eggToAdult.high, year - 1), most: eggToAdult.high }
    report('note', 'cold-late', at, { ...common, ...figures, ...told(adultToCold, adultToCold.high) })
  }
}

/** Days from New Year beyond which a date cannot be meant for the season. */
const farOff = 600

/** The last day of a season on which its bees, by their dates of release, still built in number; null where none flew. */
function broodDays(plan: Plan, year: number, settings: TimingGround['settings']): { readonly last: number } | null {
  let last = Number.NEGATIVE_INFINITY
  for (const use of Object.values(seasonOf(plan, year)?.stations ?? {})) {
    const values = beeIds.includes(use.bee ?? plan.bee) ? settings.bees[use.bee ?? plan.bee] : undefined
    if (values === undefined) continue
    const batches = (use.releases ?? [])
      .filter(({ date, females }) => females > 0 && isIsoDate(date))
      .map(({ date, females }) => ({ day: dayOfSeason(date, year), females }))
      // The checks of that season may have found this and that, which is told there.
      .filter(({ day }) => Math.abs(day) < farOff)
    if (batches.length === 0) continue
    last = Math.max(last, lastBusyDay(batches, values))
  }
  return Number.isFinite(last) ? { last } : null
}
