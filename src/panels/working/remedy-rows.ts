import type { Limit, PlantingResult } from '#geo/report/report'
import { limitNames } from '../../text/names'
import { capitalised, points } from '../../text/words'
import { gainsOf } from '../coverage/remedies'

/** What each remedy gains, as lines of a working. */
export function remedyRows(result: PlantingResult): readonly { readonly label: string; readonly text: string }[] {
  return gainsOf(result).map(({ name, gain }) => ({ label: `With ${name}`, text: points(gain) }))
}

export function limitAnswer(limit: Limit | null): string {
  return limit === null ? 'being worked out' : capitalised(limitNames[limit])
}
