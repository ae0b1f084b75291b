import { type Feature, isPlanting, nameOf, type Plan } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { Model, modelOf } from '../report/model'
import type { PlantingResult, Report } from '../report/report'
import { type CauseFacts, causeFacts } from './cause-facts'
import { causeText } from './cause-text'
import { type LikeWithLike, likeWithLike } from './like-with-like'
import { type Cause, causeNames, differingCauses, type Mixture, mixedPlan } from './mixture'
import { stationYears } from './record'
import { shapleyValues } from './shapley'
import type { Spread } from './spread'
import { foundCoverage } from './year'

/** A figure in both years; null where it was not there or cannot be said. `change` = to - from. */
export type Change = { readonly from: number | null; readonly to: number | null; readonly change: number | null }

/** Parts of a change of coverage, by what differs between the years; they add up to it. */
export type Causes = Readonly<Record<Cause, number>>

export type PlantingComparison = Change & {
  readonly id: string
  readonly name: string
  readonly crop: string
  /** null where the planting's coverage is not known in both years. */
  readonly causes: Causes | null
  readonly wanted: Change
  readonly supplied: Change
  readonly reach: Change
  readonly timingMatch: Change
  readonly shortBy: Change
}

/** One season beside another. `from`, `to` and `change` of a planting are its coverage. */
export type Comparison = {
  readonly years: readonly [number, number]
  readonly orchard: {
    readonly coverage: Change
    readonly causes: Causes | null
    readonly wanted: Change
    readonly supplied: Change
    readonly reach: Change
    readonly shortBy: Change
    /** Coverage by the females that really nested, in either year; null where none were counted. */
    readonly found: { readonly from: Spread | null; readonly to: Spread | null }
  }
  /** Plantings of either year, in the order of the plan. */
  readonly plantings: readonly PlantingComparison[]
  /** Each cause that differs in words: "two new stations". */
  readonly reasons: readonly { readonly cause: Cause; readonly text: string; readonly change: number }[]
  readonly facts: CauseFacts
  readonly stations: LikeWithLike
}

/**
 * What changed from season `a` to season `b`, and why. The change in coverage is split over six causes by Shapley
 * values: coverage is worked out for every mixture of the two years (`mixedPlan`), and each cause gets what it changes,
 * averaged over all orders in which the causes might have come. A mixture in which nothing is wanted, or no bloom is
 * known, covers nothing. Seasons may be given in either order: the one way is exactly the other with its signs turned.
 */
export function compareSeasons(plan: Plan, a: number, b: number): Outcome<Comparison> {
  const [from, to] = [modelOf(plan, a), modelOf(plan, b)]
  const problems = distinct([...from.problems, ...to.problems])
  if (!from.ok || !to.ok) return { ok: false, problems }
  const [then, now] = [from, to].map(({ value }) => value.report({ withLimits: false })) as [Report, Report]
  const differing = differingCauses(plan, ...inOrder(a, b))
  const causesOf = causesBetween(plan, [a, b], differing, [then, now])
  const orchardChange = (figure: 'coverage' | 'wanted' | 'supplied' | 'reach' | 'shortBy') =>
    change(then.orchard[figure], now.orchard[figure])
  const causes = causesOf(report => report.orchard.coverage)
  const found = (year: number, report: Report) => foundCoverage(plan, year, stationYears(plan, year), report)
  const facts = causeFacts(plan, a, b, { then, now })
  const stations = likeWithLike(plan, a, b)
  const value: Comparison = {
    years: [a, b],
    orchard: {
      coverage: orchardChange('coverage'),
      causes,
      wanted: orchardChange('wanted'),
      supplied: orchardChange('supplied'),
      reach: orchardChange('reach'),
      shortBy: orchardChange('shortBy'),
      found: { from: found(a, then), to: found(b, now) },
    },
    plantings: plan.features.filter(isPlanting).flatMap(feature => {
      const [before, after] = [then, now].map(report => lineOf(report, feature.id)) as [Line, Line]
      return before === null && after === null ? [] : [plantingComparison(feature, before, after, causesOf)]
    }),
    reasons: causes === null ? [] : reasonsOf(causes, differing, facts),
    facts,
    stations,
  }
  return { ok: true, value, problems: distinct([...then.problems, ...now.problems, ...stations.problems]) }
}

type Line = PlantingResult | null
type CausesOf = (coverage: (report: Report) => number | null) => Causes | null

function plantingComparison(feature: Feature, then: Line, now: Line, causesOf: CausesOf): PlantingComparison {
  const figure = (of: (line: PlantingResult) => number | null) => change(then && of(then), now && of(now))
  return {
    id: feature.id,
    name: nameOf(feature),
    crop: (then ?? now)!.crop,
    ...figure(line => line.coverage),
    causes: then && now && causesOf(report => lineOf(report, feature.id)?.coverage ?? null),
    wanted: figure(line => line.wanted),
    supplied: figure(line => line.supplied),
    reach: figure(line => line.reach),
    timingMatch: figure(line => line.timingMatch),
    shortBy: figure(line => line.shortBy),
  }
}

/** Works out every mixture of the two years once; then splits the change of any coverage in the report. */
function causesBetween(
  plan: Plan,
  [a, b]: readonly [number, number],
  causes: readonly Cause[],
  [then, now]: readonly [Report, Report],
): CausesOf {
  const isForward = a <= b
  const [early, late] = inOrder(a, b)
  const all = 2 ** causes.length - 1
  const reports = Array.from({ length: all + 1 }, (_, players) => {
    if (players === 0) return isForward ? then : now
    if (players === all) return isForward ? now : then
    const yearOf = (cause: Cause) => ((players >> causes.indexOf(cause)) & 1 && causes.includes(cause) ? late : early)
    const mixture = Object.fromEntries(causeNames.map(cause => [cause, yearOf(cause)])) as Mixture
    const mixed = mixedPlan(plan, mixture)
    return new Model(mixed.plan, mixed.year, []).report({ withLimits: false })
  })
  return coverage => {
    if (coverage(then) === null || coverage(now) === null) return null
    const parts = shapleyValues(causes.length, players => coverage(reports[players]!) ?? 0)
    const partOf = (cause: Cause): number => {
      const part = parts[causes.indexOf(cause)] ?? 0
      return isForward || part === 0 ? part : -part
    }
    return Object.fromEntries(causeNames.map(cause => [cause, partOf(cause)])) as Causes
  }
}

/** Always from the earlier year on, so that both ways meet the same sums. */
function inOrder(a: number, b: number): [number, number] {
  return a <= b ? [a, b] : [b, a]
}

function reasonsOf(causes: Causes, differing: readonly Cause[], facts: CauseFacts): Comparison['reasons'] {
  return differing
    .flatMap(cause => {
      const text = causeText(cause, facts)
      return text === null ? [] : [{ cause, text, change: causes[cause] }]
    })
    .sort((x, y) => Math.abs(y.change) - Math.abs(x.change))
}

function lineOf(report: Report, id: string): Line {
  return report.plantings.find(line => line.id === id) ?? null
}

export function change(from: number | null, to: number | null): Change {
  return { from, to, change: from === null || to === null ? null : to - from }
}

/** Problems of both seasons, those of the plan itself once. */
function distinct(problems: readonly Problem[]): readonly Problem[] {
  return [...new Map(problems.map(problem => [JSON.stringify(problem), problem])).values()]
}
