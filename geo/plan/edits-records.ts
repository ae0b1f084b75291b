import type { IsoDate } from '../time/day'
import { type Edit, type Patch, patched } from './edits'
import { changeSeason, withEntry } from './edits-seasons'
import { thingById } from './edits-wording'
import type { FruitSet, Lot, Opening, Plan, Season, ShareOut, StationRecord, Visit } from './plan'

/** One more visit to a station; visits stand in the order of their dates. */
export function addVisit(year: number, stationId: string, visit: Visit): Edit {
  return {
    label: plan => `Note visit to ${thingById(plan, stationId)}`,
    apply: plan =>
      changeRecord(plan, year, stationId, record => ({
        ...record,
        visits: inOrder([...(record.visits ?? []), visit]),
      })),
  }
}

/** Changes visit number `index` of a station; null takes it away. */
export function setVisit(
  year: number,
  stationId: string,
  index: number,
  patch: Patch<Visit> | null,
  gestureKey?: string,
): Edit {
  return {
    label: plan => `${patch ? 'Change' : 'Remove'} visit to ${thingById(plan, stationId)}`,
    key: gestureKey,
    apply: plan =>
      changeRecord(plan, year, stationId, record => {
        const before = record.visits?.[index]
        if (before === undefined) throw new RangeError(`no visit ${index} to ${stationId} in ${year}`)
        const after = patch && (patched(before, patch) as Visit)
        if (after === before) return record
        const visits = record.visits!.flatMap((visit, i) => (i === index ? (after ? [after] : []) : [visit]))
        return patched(record, { visits: visits.length > 0 ? inOrder(visits) : undefined })
      }),
  }
}

/** What was found when a station's nests were opened: a patch over what is there; null takes the opening away. */
export function setOpening(
  year: number,
  stationId: string,
  patch: (Patch<Opening> & { readonly date: IsoDate }) | null,
  gestureKey?: string,
): Edit {
  return {
    label: plan => `${patch ? 'Change' : 'Clear'} opening of ${thingById(plan, stationId)}`,
    key: gestureKey,
    apply: plan =>
      changeRecord(plan, year, stationId, record => {
        const opening = patch === null ? undefined : patched(record.opening ?? {}, patch)
        return patched(record, { opening })
      }),
  }
}

/** The day a station's nests were taken in; null = not written down. */
export function setTakenIn(year: number, stationId: string, date: IsoDate | null, gestureKey?: string): Edit {
  return {
    label: plan => `${date ? 'Note' : 'Clear'} taking in of ${thingById(plan, stationId)}`,
    key: gestureKey,
    apply: plan => changeRecord(plan, year, stationId, record => patched(record, { takenIn: date ?? undefined })),
  }
}

/** A lot of cocoons: a patch over the lot of that id, which comes into being with it; null takes it away. */
export function setLot(id: string, patch: Patch<Omit<Lot, 'id'>> | null, gestureKey?: string): Edit {
  const hasLot = (plan: Plan) => plan.lots?.some(lot => lot.id === id) ?? false
  return {
    label: plan => `${patch === null ? 'Remove' : hasLot(plan) ? 'Change' : 'Add'} lot ${id}`,
    key: gestureKey,
    apply(plan) {
      const lots = plan.lots ?? []
      if (!hasLot(plan)) return patch === null ? plan : { ...plan, lots: [...lots, patched({ id }, patch)] }
      const after = lots.flatMap(lot => (lot.id === id ? (patch === null ? [] : [patched(lot, patch)]) : [lot]))
      if (after.length === lots.length && after.every((lot, i) => lot === lots[i])) return plan
      return patched(plan, { lots: after.length > 0 ? after : undefined })
    },
  }
}

/** What a season's harvest was given away as; null = nothing written down. */
export function setShareOut(year: number, shareOut: ShareOut | null, gestureKey?: string): Edit {
  return {
    label: `${shareOut ? 'Change' : 'Clear'} share-out of ${year}`,
    key: gestureKey,
    apply: plan => changeSeason(plan, year, season => patched(season, { shareOut: shareOut ?? undefined })),
  }
}

/** Flowers and fruit counted on a planting; null = not counted. */
export function setFruitSet(year: number, plantingId: string, count: FruitSet | null, gestureKey?: string): Edit {
  return {
    label: plan => `${count ? 'Change' : 'Clear'} fruit count of ${thingById(plan, plantingId)}`,
    key: gestureKey,
    apply: plan => changeSeason(plan, year, season => withEntry(season, 'fruitSet', plantingId, count ?? undefined)),
  }
}

/** A station's record changed; one without anything in it goes. */
function changeRecord(
  plan: Plan,
  year: number,
  stationId: string,
  change: (record: StationRecord) => StationRecord,
): Plan {
  return changeSeason(plan, year, (season: Season) => {
    const before = season.records && Object.hasOwn(season.records, stationId) ? season.records[stationId] : undefined
    const after = change(before ?? {})
    if (after === before) return season
    return withEntry(season, 'records', stationId, Object.keys(after).length > 0 ? after : undefined)
  })
}

function inOrder(visits: readonly Visit[]): readonly Visit[] {
  return visits.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}
