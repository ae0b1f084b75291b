import type { BloomPair, GroupTotals } from '../coverage/coverage'
import type { Ground } from '../coverage/demand'
import type { Limits } from '../coverage/limits'
import type { Supply } from '../coverage/supply'
import type { Settings } from '../data/settings'
import { cocoonsFor } from '../stocking/cocoons'
import { tubesFor } from '../stocking/tubes'
import { endOf } from '../time/curve'
import { dateOfDay } from '../time/day'
import type { OrchardResult, PlantingResult, StationResult } from './report'

type Row = { readonly ground: Ground; readonly totals: GroupTotals }

/** One planting's line. Without bloom nothing that hangs on days can be said: null, not zero. */
export function plantingResult(
  { id, name, crop, area, group }: Ground,
  totals: GroupTotals,
  limits: Limits | null,
): PlantingResult {
  const { points, wanted, supplied, served, reached, timingMatch } = totals
  const isKnown = group.bloom !== null
  const wants = wanted > 0
  return {
    id,
    name,
    crop,
    points,
    area: points * area,
    wanted,
    supplied: isKnown ? supplied : null,
    coverage: isKnown && wants ? shareOf(served, wanted) : null,
    reach: wants ? reached / points : null,
    timingMatch,
    shortBy: isKnown ? lackOf(served, wanted) : null,
    limit: limits?.limit ?? null,
    gains: limits?.gains ?? { distance: null, timing: null, numbers: null, competition: null },
  }
}

/**
 * The orchard's line: wanted and reach over all plantings; what hangs on days over those whose bloom is known, and null
 * where none is.
 */
export function orchardResult(rows: readonly Row[], busiest: OrchardResult['busiestDay']): OrchardResult {
  const known = rows.filter(({ ground }) => ground.group.bloom !== null)
  const sum = (of: readonly Row[], figure: (totals: GroupTotals) => number) =>
    of.reduce((total, { totals }) => total + figure(totals), 0)
  const wantedByKnown = sum(known, totals => totals.wanted)
  const served = sum(known, totals => totals.served)
  const wantedByAll = sum(rows, totals => totals.wanted)
  const reached = sum(rows, totals => (totals.points > 0 ? (totals.wanted * totals.reached) / totals.points : 0))
  return {
    wanted: wantedByAll,
    supplied: known.length > 0 || rows.length === 0 ? sum(known, totals => totals.supplied) : null,
    coverage: wantedByKnown > 0 ? shareOf(served, wantedByKnown) : null,
    reach: wantedByAll > 0 ? shareOf(reached, wantedByAll) : null,
    shortBy: known.length > 0 || rows.length === 0 ? lackOf(served, wantedByKnown) : null,
    busiestDay: busiest,
  }
}

/** A sum of many parts may differ from the whole in its last bits: nearer than this, full is full. */
const sameSum = 1e-9

function shareOf(part: number, whole: number): number {
  return part >= whole * (1 - sameSum) ? 1 : part / whole
}

function lackOf(served: number, wanted: number): number {
  return served >= wanted * (1 - sameSum) ? 0 : wanted - served
}

/** The day on which most females are wanted at once: bloom overlaps, so this is less than the sum of all plantings. */
export function busiestDay(
  rows: readonly Row[],
  blooms: readonly BloomPair[],
  year: number,
): OrchardResult['busiestDay'] {
  const wanted = blooms.map(() => 0)
  for (const { ground, totals } of rows) {
    if (ground.group.bloom !== null) wanted[ground.group.bloom]! += totals.wanted
  }
  const from = Math.min(...blooms.map(({ open }) => open.start))
  const to = Math.max(...blooms.map(({ open }) => endOf(open)))
  let busiest: { day: number; wanted: number } | null = null
  for (let day = from; day < to; day += 1) {
    const females = blooms.reduce((sum, { open }, i) => sum + wanted[i]! * (open.values[day - open.start] ?? 0), 0)
    if (females > (busiest?.wanted ?? 0)) busiest = { day, wanted: females }
  }
  return busiest && { date: dateOfDay(busiest.day, year), wanted: busiest.wanted }
}

/** One station's line: what nests there, and the cocoons and tubes that this takes. */
export function stationResult({ id, name, bee, season, input }: Supply, settings: Settings): StationResult {
  const values = settings.bees[bee]
  const cocoons = cocoonsFor(input.females, values)
  return {
    id,
    name,
    bee,
    females: input.females,
    femaleCocoons: cocoons.female,
    maleCocoons: cocoons.male,
    tubesWanted: tubesFor(input.females, values.tubesPerFemale, settings.site.spareTubes),
    tubes: season.tubes ?? null,
  }
}
