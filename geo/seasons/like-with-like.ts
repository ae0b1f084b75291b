import { type Plan, type Season, seasonOf } from '../plan/plan'
import type { Problem } from '../problem'
import { dayOfSeason } from '../time/day'
import { usageOf } from './mixed-stock'
import { type StationYear, stationYears } from './record'
import { type OrchardYear, orchardYear } from './year'

/** Stations in both years, and both years' sums over those that were counted in both alone. */
export type LikeWithLike = {
  readonly stations: readonly {
    readonly id: string
    readonly name: string
    readonly from: StationYear
    readonly to: StationYear
    /** Capped tubes, or opened nests, are known in both years. */
    readonly isCounted: boolean
  }[]
  /** null where no station was counted in both years. */
  readonly from: OrchardYear | null
  readonly to: OrchardYear | null
  /** Changes in how it was counted, which can look like changes in the bees. */
  readonly problems: readonly Problem[]
}

export function likeWithLike(plan: Plan, a: number, b: number): LikeWithLike {
  const after = new Map(stationYears(plan, b).map(station => [station.id, station]))
  const stations = stationYears(plan, a).flatMap(from => {
    const to = after.get(from.id)
    if (to === undefined) return []
    const isIn = (of: (station: StationYear) => unknown) => of(from) !== null && of(to) !== null
    const isCounted = isIn(({ capped }) => capped) || isIn(({ daughters }) => daughters)
    return [{ id: from.id, name: from.name, from, to, isCounted }]
  })
  const counted = stations.filter(({ isCounted }) => isCounted)
  const [then, now] = [seasonOf(plan, a)!, seasonOf(plan, b)!]
  return {
    stations,
    from:
      counted.length > 0
        ? orchardYear(
            plan,
            a,
            counted.map(({ from }) => from),
          )
        : null,
    to:
      counted.length > 0
        ? orchardYear(
            plan,
            b,
            counted.map(({ to }) => to),
          )
        : null,
    problems: counted.flatMap(({ id, from, to }) => methodProblems(then, now, id, from, to)),
  }
}

/** Days between the seasons' last counts, by day of season, above which they are not the same count. */
const sameWeeks = 21

function methodProblems(then: Season, now: Season, id: string, from: StationYear, to: StationYear): readonly Problem[] {
  const what: string[] = []
  const [before, after] = [usageOf(then, id), usageOf(now, id)]
  if (from.cappedOn && to.cappedOn) {
    const days = dayOfSeason(to.cappedOn, now.year) - dayOfSeason(from.cappedOn, then.year)
    if (Math.abs(days) > sameWeeks)
      what.push(`the last count was ${Math.abs(days)} days ${days > 0 ? 'later' : 'earlier'}`)
  }
  const isWhole = ({ capped, tubesOpened }: StationYear) =>
    capped === null || tubesOpened === null ? null : tubesOpened >= capped
  const [wholeThen, wholeNow] = [isWhole(from), isWhole(to)]
  if (wholeThen !== null && wholeNow !== null && wholeThen !== wholeNow) {
    what.push(wholeNow ? 'all tubes were opened, not some' : 'some tubes were opened, not all')
  }
  const isOther = (key: 'bore' | 'depth' | 'material') =>
    before[key] !== undefined && after[key] !== undefined && before[key] !== after[key]
  if (isOther('bore') || isOther('depth') || isOther('material')) what.push('the tubes were of another kind')
  if (from.bee !== to.bee) what.push('it held another bee')
  if (what.length === 0) return []
  const values = { name: from.name, from: then.year, to: now.year, what: what.join('; ') }
  return [{ code: 'method-changed', severity: 'note', at: id, values }]
}
