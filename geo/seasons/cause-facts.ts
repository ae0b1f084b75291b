import { bloomOf } from '../bloom/bloom'
import type { BeeId } from '../data/own'
import { type Feature, isForage, isPlanting, isPresent, nameOf, type Plan, type Season, seasonOf } from '../plan/plan'
import type { Report } from '../report/report'
import { dayOfSeason } from '../time/day'
import { usageOf, usedStations } from './mixed-stock'

/** What differs between two seasons, as people would tell it. */
export type CauseFacts = {
  /** Names of plantings and forage areas. */
  readonly plantings: { readonly added: readonly string[]; readonly removed: readonly string[] }
  readonly stations: { readonly added: readonly string[]; readonly removed: readonly string[] }
  readonly stock: {
    /** Female cocoons set out, and the different days on which they were. */
    readonly females: readonly [from: number, to: number]
    readonly batches: readonly [from: number, to: number]
    readonly bees: readonly [from: readonly BeeId[], to: readonly BeeId[]]
  }
  /** Days by which full bloom came later, averaged over the females wanted; null where no planting's is known twice. */
  readonly bloomDays: number | null
  /** Days of the seasons for which weather is known. */
  readonly weatherDays: readonly [from: number, to: number]
}

export function causeFacts(
  plan: Plan,
  a: number,
  b: number,
  { then, now }: { readonly then: Report; readonly now: Report },
): CauseFacts {
  const [from, to] = [seasonOf(plan, a)!, seasonOf(plan, b)!]
  const nameById = new Map(plan.features.map(feature => [feature.id, nameOf(feature)]))
  const [usedThen, usedNow] = [usedStations(plan, from), usedStations(plan, to)]
  const names = (ids: readonly string[], without: readonly string[]) =>
    ids.filter(id => !without.includes(id)).map(id => nameById.get(id)!)
  const grown = plan.features.filter(feature => isPlanting(feature) || isForage(feature))
  const there = (year: number, other: number) =>
    grown.filter(each => isPresent(each, year) && !isPresent(each, other)).map(nameOf)
  const stock = [stockFacts(plan, from), stockFacts(plan, to)] as const
  return {
    plantings: { added: there(b, a), removed: there(a, b) },
    stations: { added: names(usedNow, usedThen), removed: names(usedThen, usedNow) },
    stock: {
      females: [stock[0].females, stock[1].females],
      batches: [stock[0].batches, stock[1].batches],
      bees: [stock[0].bees, stock[1].bees],
    },
    bloomDays: bloomShift(plan, [from, to], [then, now]),
    weatherDays: [from.weather?.days.length ?? 0, to.weather?.days.length ?? 0],
  }
}

function stockFacts(plan: Plan, season: Season) {
  const uses = usedStations(plan, season).map(id => usageOf(season, id))
  const releases = uses.flatMap(use => use.releases ?? []).filter(({ females }) => females > 0)
  const stocked = uses.filter(use => (use.releases ?? []).some(({ females }) => females > 0))
  return {
    females: releases.reduce((sum, { females }) => sum + females, 0),
    batches: new Set(releases.map(({ date }) => date)).size,
    bees: [...new Set(stocked.map(use => use.bee ?? plan.bee))].sort(),
  }
}

function bloomShift(
  plan: Plan,
  [from, to]: readonly [Season, Season],
  reports: readonly [Report, Report],
): number | null {
  const wanted = (id: string) =>
    reports.reduce((sum, { plantings }) => sum + (plantings.find(line => line.id === id)?.wanted ?? 0), 0)
  const fullDay = (season: Season, feature: Feature) => {
    const crop = 'crop' in feature.properties ? feature.properties.crop : undefined
    const bloom = bloomOf(season.bloom, feature.id, crop)
    return bloom === undefined ? null : dayOfSeason(bloom.full, season.year)
  }
  let [days, weight] = [0, 0]
  for (const feature of plan.features.filter(isPlanting)) {
    const [then, now] = [fullDay(from, feature), fullDay(to, feature)]
    if (then === null || now === null) continue
    days += (now - then) * wanted(feature.id)
    weight += wanted(feature.id)
  }
  return weight > 0 ? days / weight : null
}
