import type { Ground } from '../coverage/demand'
import { bees } from '../data/bees'
import { sourceText, type Threshold } from '../data/thresholds'
import { adviceFigures, timingFigures } from '../data/timing-figures'
import { shortened } from '../plan/place'
import { problemList, type ReportProblem } from '../plan/report-problem'
import type { Problem } from '../problem'
import type { DailyCurve } from '../time/curve'
import { dateOfDay } from '../time/day'
import { checkColdStore } from './cold-checks'
import { type Flying, flyingStations, told } from './flying'
import { groundsWithin, isFedOn, isOpenOn } from './open-forage'
import { checkTakingIn } from './taking-in-checks'
import type { TimingGround } from './timing-ground'

/** Field checks of a season's dates, each with its threshold and source. None stops a result; what is not known is not judged. */
export function timingChecks(ground: TimingGround): readonly Problem[] {
  const { report, finish } = problemList()
  const stations = flyingStations(ground)
  for (const station of stations) {
    checkReleases(ground, station, report)
    checkTakingIn(ground, station, report)
  }
  checkTails(ground, stations, report)
  checkCrops(ground, stations, report)
  checkBatches(ground, stations, report)
  checkColdStore(ground, stations, report)
  return finish()
}

/** Batches set out long before anything near blooms, or after the last full bloom near. */
function checkReleases(ground: TimingGround, station: Flying, report: ReportProblem): void {
  const { demand, settings, year } = ground
  const values = settings.bees[station.bee]
  if (station.near.length === 0) return
  const blooms = station.near.map(({ bloom }) => demand.blooms[bloom]!.open)
  const lastFull = Math.max(...blooms.map(peakDay))
  for (const { day, date } of station.batches) {
    const common = { name: station.name, date, year }
    const nesting = dateOfDay(day + Math.round(values.lag), year)
    if (day + values.lag > lastFull) {
      const full = dateOfDay(lastFull, year)
      report('warning', 'released-late', station.id, { ...common, nesting, full, lag: values.lag })
      continue
    }
    if (isFedOn(ground, station.near, day, values)) continue
    const bare = daysWithout(blooms, day)
    const limit = limitPassed(bare)
    if (limit === null) continue
    const severity = limit === timingFigures.bareNote ? 'note' : 'warning'
    const isFar = limit === timingFigures.bareFar
    const figures = { days: bare, isFar, reach: adviceFigures.forageReach.value, blossom: dateOfDay(day + bare, year) }
    report(severity, 'released-early', station.id, { ...common, ...figures, ...told(limit) })
  }
}

/** Days from `day` on until one of the blooms is open; 0 = it is open then. */
function daysWithout(blooms: readonly DailyCurve[], day: number): number {
  const last = Math.max(...blooms.map(({ start, values }) => start + values.length))
  let days = 0
  while (day + days < last && !blooms.some(open => isOpenOn(open, day + days))) days += 1
  return days
}

function limitPassed(days: number): Threshold | null {
  const { bareFar, bareWarning, bareNote } = timingFigures
  return [bareFar, bareWarning, bareNote].find(({ value }) => days > value) ?? null
}

function peakDay({ start, values }: DailyCurve): number {
  return start + values.indexOf(Math.max(...values))
}

/** Flight that goes on after the last blossom near has gone: told once, of the station where it goes on longest. */
function checkTails({ demand, year }: TimingGround, stations: readonly Flying[], report: ReportProblem): void {
  const tails = stations
    .filter(({ near }) => near.length > 0)
    .map(station => {
      const last = Math.max(...station.near.map(({ bloom }) => lastOpenDay(demand.blooms[bloom]!.open)))
      return { station, last, days: station.lastDay - last }
    })
    .filter(({ days }) => days > timingFigures.bareTail.value)
    .sort((a, b) => b.days - a.days)
  const [longest] = tails
  if (longest === undefined) return
  const { station, last, days } = longest
  const dates = { from: dateOfDay(last, year), to: dateOfDay(station.lastDay, year) }
  const figures = { days, reach: adviceFigures.forageReach.value, count: tails.length, ...told(timingFigures.bareTail) }
  report('note', 'tail-bare', '', { name: station.name, year, ...dates, ...figures })
}

function lastOpenDay(open: DailyCurve): number {
  return open.start + open.values.findLastIndex((_, i) => isOpenOn(open, open.start + i))
}

/** Blooms that are full before the first bees within reach of any of their plantings nest: one word for each bloom of a crop. */
function checkCrops(ground: TimingGround, stations: readonly Flying[], report: ReportProblem): void {
  const { demand, settings, supplies, year } = ground
  const reached = new Map<number, Flying & { readonly nesting: number }>()
  for (const station of stations) {
    const values = settings.bees[station.bee]
    const supply = supplies.find(({ id }) => id === station.id)!
    const nesting = Math.round(station.batches[0]!.day + values.lag)
    for (const index of groundsWithin(ground, supply.input, values.typicalForagingRadius)) {
      if (nesting < (reached.get(index)?.nesting ?? Number.POSITIVE_INFINITY))
        reached.set(index, { ...station, nesting })
    }
  }
  const missed = [...reached].filter(([index, { nesting }]) => {
    const { group } = demand.grounds[index]!
    return !group.isForage && group.wanted > 0 && nesting > peakDay(demand.blooms[group.bloom!]!.open)
  })
  const kinds = new Set(missed.map(([index]) => kindOf(demand.grounds[index]!)))
  for (const kind of kinds) {
    const alike = missed.filter(([index]) => kindOf(demand.grounds[index]!) === kind)
    const [index, { nesting, bee }] = alike[0]!
    const { id, name, group } = demand.grounds[index]!
    const dates = {
      nesting: dateOfDay(nesting, year),
      full: dateOfDay(peakDay(demand.blooms[group.bloom!]!.open), year),
    }
    const { lag, source } = { lag: settings.bees[bee].lag, source: sourceText(bees[bee].parameters.lag) }
    report('warning', 'bloom-unattended', id, {
      name: shortened(name),
      others: alike.length - 1,
      year,
      ...dates,
      lag,
      source,
    })
  }
}

function kindOf({ crop, group }: Ground): string {
  return `${crop} ${group.bloom}`
}

/** All bees at once, though bloom goes on longer than one batch lives. */
function checkBatches({ demand, year }: TimingGround, stations: readonly Flying[], report: ReportProblem): void {
  const batches = stations.flatMap(station => station.batches)
  const [first] = batches
  const cocoons = batches.reduce((sum, { females }) => sum + females, 0)
  if (first === undefined || cocoons < adviceFigures.starterCocoons.value) return
  if (batches.some(({ date }) => date !== first.date)) return
  const blooms = demand.grounds
    .filter(({ group }) => !group.isForage && group.wanted > 0 && group.bloom !== null)
    .map(({ group }) => demand.blooms[group.bloom!]!.open)
  const open = (day: number) => blooms.some(bloom => isOpenOn(bloom, day))
  const from = Math.min(...blooms.map(({ start }) => start))
  const to = Math.max(...blooms.map(({ start, values }) => start + values.length))
  const days = Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i).filter(open)
  const span = days.length > 0 ? days.at(-1)! - days[0]! + 1 : 0
  if (!(span > timingFigures.longBloom.value)) return
  const dates = { date: first.date, from: dateOfDay(days[0]!, year), to: dateOfDay(days.at(-1)!, year) }
  report('warning', 'one-batch', '', { year, ...dates, days: span, ...told(timingFigures.longBloom) })
}
