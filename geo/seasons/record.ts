import type { BeeId } from '../data/own'
import { thresholds } from '../data/thresholds'
import { isStation, type NestCounts, nameOf, type Plan, type Season, type StationRecord, seasonOf } from '../plan/plan'
import { believable, tubesOf } from '../plan/record-faults'
import type { IsoDate } from '../time/day'
import { usageOf } from './mixed-stock'
import { type SampledShare, sampledShare, sampledTotal, tubesToOpen } from './sample'
import { beeSpreads, type Spread, spreadOf } from './spread'

/** A count of all tubes of a station, or what a part of them lets one reckon; low and high null = cannot be said. */
export type Harvest = {
  readonly count: number
  readonly low: number | null
  readonly high: number | null
  /** `all` = every capped tube was opened; `tubes` = some were, counted one by one; `sum` = some were, only their sum is known. */
  readonly from: 'all' | 'tubes' | 'sum'
}

/** What was counted at one station in one season; null = not counted, which is not zero. */
export type StationYear = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly tubes: number | null
  /** Cocoons set out. */
  readonly released: { readonly females: number; readonly males: number | null }
  /** Capped tubes at the last visit that counted them. */
  readonly capped: number | null
  readonly cappedOn: IsoDate | null
  readonly tubesOpened: number | null
  /** Females that really nested: most tubes seen capped over the tubes that a female fills. */
  readonly nested: Spread | null
  /** Share of the females set out that nested; over 1 where others moved in, or females filled fewer tubes than most do. */
  readonly establishment: Spread | null
  readonly cellsPerTube: number | null
  readonly femaleShare: number | null
  /** Share of cells lost, over all causes, and cells lost by cause. */
  readonly lossShare: SampledShare | null
  /** Tubes more to open until the share lost is known closely enough (`sampleReach`); null where that cannot be told. */
  readonly tubesToOpen: number | null
  readonly losses: Readonly<Record<string, number>> | null
  /** Healthy cocoons of all its capped tubes. */
  readonly daughters: Harvest | null
  readonly sons: Harvest | null
  /** Daughters per female set out. */
  readonly return: number | null
  readonly takenIn: IsoDate | null
}

/** A season's counts, station by station in the order of the plan: stations in use, and others with a record. */
export function stationYears(plan: Plan, year: number): readonly StationYear[] {
  const season = seasonOf(plan, year)
  if (season === undefined) return []
  const spreads = beeSpreads(plan, ['tubesUsedPerFemale'])
  return plan.features.filter(isStation).flatMap(station => {
    const isUsed = season.stations !== undefined && Object.hasOwn(season.stations, station.id)
    const record = recordOf(season, station.id)
    if (!isUsed && record === null) return []
    const bee = usageOf(season, station.id).bee ?? plan.bee
    const usedPerFemale = (end: 'low' | 'mid' | 'high') => spreads(bee, end).tubesUsedPerFemale
    return [
      { id: station.id, name: nameOf(station), bee, ...countsOf(season, station.id, record ?? {}, usedPerFemale) },
    ]
  })
}

/** A station's record as far as it can be believed; null where nothing was recorded. */
export function recordOf(season: Season, stationId: string): StationRecord | null {
  if (season.records === undefined || !Object.hasOwn(season.records, stationId)) return null
  return believable(season.records[stationId]!, tubesOf(season, stationId))
}

function countsOf(
  season: Season,
  id: string,
  record: StationRecord,
  usedPerFemale: (end: 'low' | 'mid' | 'high') => number,
): Omit<StationYear, 'id' | 'name' | 'bee'> {
  const releases = usageOf(season, id).releases ?? []
  const females = releases.reduce((sum, release) => sum + release.females, 0)
  const males = releases.map(release => release.males)
  const counted = (record.visits ?? [])
    .flatMap(({ date, capped }) => (typeof capped === 'number' ? [{ date, capped }] : []))
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
  const last = counted.at(-1) ?? null
  const most = counted.reduce((top, { capped }) => Math.max(top, capped), 0)
  // More tubes filled by each female make fewer females.
  const nested =
    last && usedPerFemale('low') > 0
      ? { low: most / usedPerFemale('high'), mid: most / usedPerFemale('mid'), high: most / usedPerFemale('low') }
      : null
  const opened = openedOf(record, last?.capped ?? null)
  return {
    tubes: tubesOf(season, id) ?? null,
    released: {
      females,
      males: males.every(each => each !== undefined) ? males.reduce<number>((sum, each) => sum + each!, 0) : null,
    },
    capped: last?.capped ?? null,
    cappedOn: last?.date ?? null,
    nested,
    establishment: nested && females > 0 ? spreadOf(end => nested[end] / females) : null,
    ...opened,
    return: opened.daughters && females > 0 ? opened.daughters.count / females : null,
    takenIn: record.takenIn ?? null,
  }
}

type Opened = Pick<
  StationYear,
  'tubesOpened' | 'cellsPerTube' | 'femaleShare' | 'lossShare' | 'tubesToOpen' | 'losses' | 'daughters' | 'sons'
>

function openedOf({ opening }: StationRecord, capped: number | null): Opened {
  if (opening === undefined) {
    const nothing = { cellsPerTube: null, femaleShare: null, lossShare: null, tubesToOpen: null, losses: null }
    return { tubesOpened: null, ...nothing, daughters: null, sons: null }
  }
  const tubes = opening.tubes ?? []
  const tubesOpened = opening.tubesOpened ?? (tubes.length > 0 ? tubes.length : null)
  // Tube by tube only where the list holds every tube opened.
  const list = tubes.length > 0 && tubes.length === tubesOpened ? tubes : null
  const sum = (of: (counts: NestCounts) => number | null): number | null => of(opening) ?? (list && sumOf(list.map(of)))
  const cells = sum(counts => counts.cells ?? null)
  const females = sum(counts => counts.females ?? null)
  const males = sum(counts => counts.males ?? null)
  const lost = sum(lostOf)
  const harvest = (count: number | null, of: (counts: NestCounts) => number | null): Harvest | null => {
    if (count === null) return null
    const known = { count, low: count, high: count, from: 'all' } as const
    if (capped === null || tubesOpened === null || tubesOpened >= capped) return known
    if (tubesOpened === 0) return null
    const each = list?.map(of)
    if (each?.every(value => value !== null)) {
      const { total, low, high } = sampledTotal(each as number[], capped)!
      return { count: total, low, high, from: 'tubes' }
    }
    // What was counted is there; how far the other tubes differ was not written down.
    return { count: (count * capped) / tubesOpened, low: count, high: null, from: 'sum' }
  }
  const sampled = list?.flatMap(counts => {
    const [size, part] = [counts.cells ?? null, lostOf(counts)]
    return size === null || part === null ? [] : [{ size, part }]
  })
  const isSampled = sampled !== undefined && sampled.length === tubesOpened
  const isAll = tubesOpened !== null && capped !== null && tubesOpened >= capped
  const whole = cells && lost !== null ? { share: lost / cells, tubes: tubesOpened ?? 0, cells } : null
  return {
    tubesOpened,
    cellsPerTube: cells !== null && tubesOpened ? cells / tubesOpened : null,
    femaleShare: females !== null && males !== null && females + males > 0 ? females / (females + males) : null,
    lossShare: isSampled
      ? sampledShare(sampled, capped)
      : whole && { ...whole, low: isAll ? whole.share : null, high: isAll ? whole.share : null },
    tubesToOpen: isAll
      ? 0
      : isSampled && capped !== null
        ? tubesToOpen(sampled, thresholds.sampleReach.value, capped)
        : null,
    losses: causesOf(opening, list),
    daughters: harvest(females, counts => counts.females ?? null),
    sons: harvest(males, counts => counts.males ?? null),
  }
}

/** null as soon as one is. */
function sumOf(values: readonly (number | null)[]): number | null {
  return values.reduce<number | null>((sum, value) => (sum === null || value === null ? null : sum + value), 0)
}

/** Cells lost, where losses were counted: causes left out of the list were not found. */
function lostOf({ losses }: NestCounts): number | null {
  return losses === undefined ? null : sumOf(Object.values(losses))
}

function causesOf(opening: NestCounts, list: readonly NestCounts[] | null): Readonly<Record<string, number>> | null {
  const sources = opening.losses ? [opening] : (list?.filter(({ losses }) => losses !== undefined) ?? [])
  if (sources.length === 0) return null
  const sums: Record<string, number> = {}
  for (const { losses } of sources) {
    for (const [cause, lost] of Object.entries(losses!)) if (lost !== null) sums[cause] = (sums[cause] ?? 0) + lost
  }
  return sums
}
