import type { Supply } from '../coverage/supply'
import { sourceText } from '../data/thresholds'
import { adviceFigures } from '../data/timing-figures'
import type { Plan } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { dateOfDay, dayOfSeason, type IsoDate } from '../time/day'
import type { Advice, AdviceOptions, BeeAdvice, DatedShare } from './advice'
import { type Asked, allowedDays, askedStations } from './allowed-days'
import { type Batch, tidied } from './day-search'
import { type Dates, Measure } from './measure'
import { firstCropOf, leaningOn } from './named-blossom'
import { isFedOn } from './open-forage'
import { type BeeGroup, ScheduleSearch, type Schedules, withOneFemale } from './schedule-search'
import { coverageBy, type TimingGround, timingGround } from './timing-ground'

/**
 * The best one, two or three batches of the cocoons that stations hold: dates and shares, for each bee of the orchard or
 * for one station. Found by working out the coverage of whole schedules; single days are tried one and all. Never
 * earlier than blossom near the stations is open for the first nesting females. At the scope of the orchard all
 * stations of a bee go out together.
 */
export function releaseAdvice(plan: Plan, year: number, options: AdviceOptions): Outcome<Advice> {
  const laidOut = timingGround(plan, year)
  if (!laidOut.ok) return laidOut
  const ground = laidOut.value
  const { scope } = options
  const inScope = ground.supplies.filter(({ id }) => scope === 'orchard' || id === scope)
  if (inScope.length === 0) return refused('advice-no-stations', scope === 'orchard' ? '' : scope, { year })
  const stocked = inScope.filter(({ input }) => input.females > 0)
  const isStocked = stocked.length > 0
  const supplies = isStocked ? stocked : inScope
  const coverage = coverageBy(
    ground,
    supplies.map(({ input }) => withOneFemale(input)),
  )
  const asked = askedStations(ground, supplies, coverage)
  if (asked.every(({ near }) => near.length === 0) && ground.demand.blooms.length === 0) {
    return refused('advice-no-blossom', '', { year })
  }
  const problems: Problem[] = []
  const groups = groupsOf(ground, asked, problems)
  const isStarter = isStocked && femaleCocoons(supplies) < adviceFigures.starterCocoons.value
  if (isStarter && options.batches > 1) problems.push(starterNote(supplies))
  const others = ground.supplies.filter(supply => !supplies.includes(supply))
  const search = new ScheduleSearch(ground, groups, coverage, suppliedBy(ground, others))
  if (search.isIdle) return refused('advice-no-blossom', '', { year })
  const measure = new Measure(ground, asked, scope === 'orchard' ? null : coverage)
  const most = isStarter || !isStocked ? 1 : options.batches
  const value = bestOf({ ground, groups, asked, search, measure, most, isStocked, scope })
  return { ok: true, value, problems }
}

type Search = {
  readonly ground: TimingGround
  readonly groups: readonly BeeGroup[]
  readonly asked: readonly Asked[]
  readonly search: ScheduleSearch
  readonly measure: Measure
  readonly most: 1 | 2 | 3
  readonly isStocked: boolean
  readonly scope: string
}

/** Of the schedules found, and the plan's own where that keeps the same rules, the one with most coverage. */
function bestOf({ ground, groups, asked, search, measure, most, isStocked, scope }: Search): Advice {
  const { year } = ground
  let schedules = search.single()
  let found = datesOf(groups, schedules, year)
  const common = { year, scope }
  if (!isStocked) {
    const stations = [...found].map(([{ supply }, batches]) => ({ id: supply.id, batches }))
    const figures = { coverage: null, atFirstCrop: null, own: null, isOwn: false, isOwnUnfed: false }
    return {
      ...common,
      ...figures,
      stations,
      bees: groups.map((group, g) => beeAdvice(ground, group, dated(group, schedules[g]!, year))),
    }
  }
  let coverage = measure.of(found)
  let best = schedules
  for (let batches = 2; batches <= most; batches += 1) {
    schedules = search.more(schedules, batches as 2 | 3)
    const dates = datesOf(groups, schedules, year)
    const reached = measure.of(dates)
    if (reached === null || coverage === null || !(reached >= coverage + adviceFigures.batchWorth.value)) continue
    best = schedules
    found = dates
    coverage = reached
  }
  const own = new Map(asked.map(each => [each, ownShares(each)]))
  const ownCoverage = measure.of(own)
  const isOwnUnfed = !groups.every(group => waitsForBlossom(ground, group))
  const isOwn =
    ownCoverage !== null &&
    coverage !== null &&
    ownCoverage > coverage + 1e-12 &&
    !isOwnUnfed &&
    groups.every(group => pooled(group).length <= most)
  const firstDates = new Map(
    groups.flatMap(group => {
      const date = firstCropOf(ground, group)?.date
      return date === undefined ? [] : group.stations.map(each => [each, [{ date, share: 1 }]] as const)
    }),
  )
  return {
    ...common,
    bees: groups.map((group, g) => beeAdvice(ground, group, isOwn ? pooled(group) : dated(group, best[g]!, year))),
    stations: [...(isOwn ? own : found)].map(([{ supply }, batches]) => ({ id: supply.id, batches })),
    coverage: isOwn ? ownCoverage : coverage,
    atFirstCrop: firstDates.size === asked.length ? measure.of(firstDates) : null,
    own: ownCoverage,
    isOwn,
    isOwnUnfed,
  }
}

function datesOf(groups: readonly BeeGroup[], schedules: Schedules, year: number): Dates {
  return new Map(
    groups.flatMap((group, g) => {
      const batchesOf = (asked: Asked) =>
        tidied(schedules[g]!.map(({ day, share }) => ({ day: group.waits.get(asked)![day]!, share })))
      return group.stations.map(asked => [asked, dated(group, batchesOf(asked), year)] as const)
    }),
  )
}

function dated({ days }: BeeGroup, batches: readonly Batch[], year: number): readonly DatedShare[] {
  return batches.map(({ day, share }) => ({ date: dateOfDay(days[day]!, year), share }))
}

function groupsOf(ground: TimingGround, asked: readonly Asked[], problems: Problem[]): BeeGroup[] {
  const kinds = [...new Set(asked.map(({ supply }) => supply.bee))]
  return kinds.map(bee => {
    const stations = asked.filter(({ supply }) => supply.bee === bee)
    const allowed = allowedDays(ground, stations)
    const { forageReach } = adviceFigures
    for (const { supply } of allowed.bare) {
      const values = { name: supply.name, limit: forageReach.value, source: sourceText(forageReach), year: ground.year }
      problems.push({ code: 'advice-station-bare', severity: 'warning', at: supply.id, values })
    }
    return { bee, stations, ...allowed }
  })
}

/** A station's own dates and the share of its females that goes out on each. */
function ownShares({ supply }: Asked): readonly DatedShare[] {
  return sharesByDate(supply.season.releases ?? [])
}

/** The same over all stations of a group. */
function pooled({ stations }: BeeGroup): readonly DatedShare[] {
  return sharesByDate(stations.flatMap(({ supply }) => supply.season.releases ?? []))
}

function sharesByDate(
  releases: readonly { readonly date: IsoDate; readonly females: number }[],
): readonly DatedShare[] {
  const byDate = new Map<IsoDate, number>()
  for (const { date, females } of releases) if (females > 0) byDate.set(date, (byDate.get(date) ?? 0) + females)
  const total = [...byDate.values()].reduce((sum, females) => sum + females, 0)
  return [...byDate].sort(([a], [b]) => (a < b ? -1 : 1)).map(([date, females]) => ({ date, share: females / total }))
}

/** Whether each of the plan's own dates waits for blossom near its station. */
function waitsForBlossom(ground: TimingGround, { bee, stations, bare }: BeeGroup): boolean {
  const values = ground.settings.bees[bee]
  return stations.every(
    asked =>
      bare.includes(asked) ||
      ownShares(asked).every(({ date }) => isFedOn(ground, asked.near, dayOfSeason(date, ground.year), values)),
  )
}

function beeAdvice(ground: TimingGround, group: BeeGroup, shares: readonly DatedShare[]): BeeAdvice {
  return {
    bee: group.bee,
    stations: group.stations.map(({ supply }) => supply.id),
    batches: shares.map(({ date, share }) => ({ date, share, leansOn: leaningOn(ground, group, date) })),
    firstCrop: firstCropOf(ground, group),
  }
}

function suppliedBy(ground: TimingGround, supplies: readonly Supply[]): Float64Array {
  return coverageBy(
    ground,
    supplies.map(({ input }) => input),
  ).supplied
}

function femaleCocoons(supplies: readonly Supply[]): number {
  return supplies.flatMap(({ season }) => season.releases ?? []).reduce((sum, { females }) => sum + females, 0)
}

function starterNote(supplies: readonly Supply[]): Problem {
  const { starterCocoons } = adviceFigures
  const values = { cocoons: femaleCocoons(supplies), limit: starterCocoons.value, source: sourceText(starterCocoons) }
  return { code: 'advice-starter', severity: 'note', at: '', values }
}

function refused(
  code: 'advice-no-stations' | 'advice-no-blossom',
  at: string,
  values: Problem['values'],
): Outcome<Advice> {
  return { ok: false, problems: [{ code, severity: 'error', at, values }] }
}
