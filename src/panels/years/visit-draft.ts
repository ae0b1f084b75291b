import type { Visit } from '#geo/plan/plan'
import { type RecordFault, visitFaults } from '#geo/plan/record-faults'
import { dateText } from '#geo/time/date-text'
import type { IsoDate } from '#geo/time/day'
import { counted } from '../../text/words'

/** A visit as it is being written down; `index` = the saved visit that it changes. */
export type VisitDraft = {
  readonly date: IsoDate
  readonly capped: number | null
  readonly mudWet: boolean | null
  readonly damage: string
  readonly note: string
  readonly index: number | null
}

/** The draft for a day: what was saved for it already, or nothing. */
export function draftFor(visits: readonly Visit[], date: IsoDate): VisitDraft {
  const index = visits.findIndex(visit => visit.date === date)
  return index < 0 ? { date, capped: null, mudWet: null, damage: '', note: '', index: null } : draftOf(visits, index)
}

export function draftOf(visits: readonly Visit[], index: number): VisitDraft {
  const { date, capped = null, mudWet = null, damage = '', note = '' } = visits[index]!
  return { date, capped, mudWet, damage, note, index }
}

/** The visit to keep: what was not looked at is left out. */
export function visitOf({ date, capped, mudWet, damage, note }: VisitDraft): Visit {
  return {
    date,
    ...(capped !== null && { capped }),
    ...(mudWet !== null && { mudWet }),
    ...(damage.trim() && { damage: damage.trim() }),
    ...(note.trim() && { note: note.trim() }),
  }
}

export function isEmptyDraft({ capped, mudWet, damage, note }: VisitDraft): boolean {
  return capped === null && mudWet === null && damage.trim() === '' && note.trim() === ''
}

/** What cannot be with this draft and could without it. */
export function draftFaults(
  visits: readonly Visit[],
  draft: VisitDraft,
  tubes: number | undefined,
): readonly RecordFault[] {
  const others = visits.filter((_, i) => i !== draft.index)
  const known = new Set(visitFaults(others, tubes).map(keyOf))
  return visitFaults([...others, visitOf(draft)], tubes).filter(fault => !known.has(keyOf(fault)))
}

/** Without the visit's place in the list, which the draft may move. */
function keyOf(fault: RecordFault): string {
  return JSON.stringify({ ...fault, visit: 0 })
}

/** Why a count cannot be kept as it is, and what to do. */
export function faultText(fault: RecordFault, name: string): string {
  switch (fault.code) {
    case 'capped-over-tubes':
      return `${name} has ${counted(fault.tubes, 'tube')}, so ${fault.capped} cannot be capped. Count again, or put the number of its tubes right.`
    case 'capped-falls':
      return `${fault.capped} capped, after ${fault.before} on an earlier day. Caps do not open again before winter. Count again, or write down the damage that took tubes away.`
    case 'opened-over-tubes':
      return `${name} has ${counted(fault.tubes, 'tube')}, so ${fault.opened} cannot have been opened. Count again, or put the number of its tubes right.`
    case 'cells-overfull':
      return `Cocoons and losses come to ${fault.found}, more than the ${counted(fault.cells, 'cell')}. Each cell holds one bee or one loss: count again.`
    default:
      return fault satisfies never
  }
}

/** "31 capped; mud wet; damage: birds; note: …" of a saved visit. */
export function visitText({ capped, mudWet, damage, note }: Visit): string {
  const parts = [
    typeof capped === 'number' ? `${capped} capped` : 'tubes not counted',
    mudWet === true ? 'mud wet' : mudWet === false ? 'mud dry' : '',
    damage ? `damage: ${damage}` : '',
    note ?? '',
  ]
  return parts.filter(Boolean).join('; ')
}

/** What is doubtful about a draft's day; null where nothing is. */
export function dayDoubt(date: IsoDate, today: IsoDate): string | null {
  return date > today ? `${dateText(date)} is still to come by this device’s clock.` : null
}
