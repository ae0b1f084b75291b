import { counted } from './limits'
import type { NestCounts, Opening, Season, StationRecord, Visit } from './plan'

/** A count that cannot be: which figures contradict each other. */
export type RecordFault =
  | { readonly code: 'capped-over-tubes'; readonly visit: number; readonly capped: number; readonly tubes: number }
  | { readonly code: 'capped-falls'; readonly visit: number; readonly capped: number; readonly before: number }
  | { readonly code: 'opened-over-tubes'; readonly opened: number; readonly tubes: number }
  /** `tube` = place in the list of tubes; null = the opening's own totals. */
  | { readonly code: 'cells-overfull'; readonly tube: number | null; readonly found: number; readonly cells: number }

/** Tubes that a season gives a station; undefined where it does not say, or says what cannot be. */
export function tubesOf(season: Season, stationId: string): number | undefined {
  const { stations } = season
  const tubes = stations && Object.hasOwn(stations, stationId) ? stations[stationId]!.tubes : undefined
  return tubes !== undefined && Number.isInteger(tubes) && tubes >= 0 ? tubes : undefined
}

/** Cells of a count that are accounted for: cocoons and losses; what was not counted adds nothing. */
export function accountedCells({ females, males, losses }: NestCounts): number {
  return Object.values(losses ?? {}).reduce<number>((sum, lost) => sum + (lost ?? 0), (females ?? 0) + (males ?? 0))
}

/**
 * What cannot be in a station's visits. Fewer capped tubes than before are believed where damage is noted: birds and
 * storms take tubes away.
 */
export function visitFaults(visits: readonly Visit[], tubes: number | undefined): readonly RecordFault[] {
  const faults: RecordFault[] = []
  let before: number | null = null
  const inTime = [...visits.entries()].sort(([, a], [, b]) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
  for (const [visit, { capped, damage }] of inTime) {
    if (damage) before = null
    if (capped === undefined || capped === null) continue
    if (tubes !== undefined && capped > tubes) faults.push({ code: 'capped-over-tubes', visit, capped, tubes })
    if (before !== null && capped < before) faults.push({ code: 'capped-falls', visit, capped, before })
    before = capped
  }
  return faults
}

/** What cannot be in the counts of an opening day. */
export function openingFaults(opening: Opening, tubes: number | undefined): readonly RecordFault[] {
  const faults: RecordFault[] = []
  const opened = opening.tubesOpened ?? opening.tubes?.length
  if (tubes !== undefined && opened !== undefined && opened > tubes) {
    faults.push({ code: 'opened-over-tubes', opened, tubes })
  }
  for (const [tube, counts] of [[null, opening] as const, ...(opening.tubes ?? []).entries()]) {
    const { cells } = counts
    if (cells === undefined || cells === null) continue
    const found = accountedCells(counts)
    if (found > cells) faults.push({ code: 'cells-overfull', tube, found, cells })
  }
  return faults
}

/**
 * A station's record without the counts that cannot be: the capped tubes go where those contradict themselves, the
 * opening where its figures do. The plan keeps them all; nothing is worked out from them.
 */
export function believable(record: StationRecord, tubes: number | undefined): StationRecord {
  const { visits, opening, ...rest } = record
  const areVisitsSound = visits === undefined || (visits.every(isCounted) && visitFaults(visits, tubes).length === 0)
  const isOpeningSound =
    opening === undefined ||
    ([opening, ...(opening.tubes ?? [])].every(isCounted) && openingFaults(opening, tubes).length === 0)
  return {
    ...rest,
    ...(visits && { visits: areVisitsSound ? visits : visits.map(({ capped: _, ...visit }) => visit) }),
    ...(opening && isOpeningSound && { opening }),
  }
}

const most = counted('').high

/** Whether every figure of a count is a number of things, or not counted. */
function isCounted(counts: Visit | NestCounts): boolean {
  const losses = 'losses' in counts ? Object.values(counts.losses ?? {}) : []
  return [...Object.values(counts), ...losses].every(
    value => typeof value !== 'number' || (Number.isInteger(value) && value >= 0 && value <= most),
  )
}
