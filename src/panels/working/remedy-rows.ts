import { limitNames } from '#geo/report/limit-names'
import type { PlantingResult } from '#geo/report/report'
import { limitWords } from '../../text/names'
import { capitalised, points } from '../../text/words'
import { gainsOf } from '../coverage/remedies'

/** What each remedy gains, as lines of a working. */
export function remedyRows(result: PlantingResult): readonly { readonly label: string; readonly text: string }[] {
  return gainsOf(result).map(({ name, gain }) => ({ label: `With ${name}`, text: points(gain) }))
}

export function limitAnswer(result: PlantingResult): string {
  const { limit } = result
  if (limit === null) return 'being worked out'
  const words = capitalised(limitWords(result) ?? limitNames[limit])
  return limit === 'none' && limitWords(result) !== null
    ? `${words}: far more bees, or several changes together`
    : words
}
