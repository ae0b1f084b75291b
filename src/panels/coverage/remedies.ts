import { remedies } from '#geo/coverage/limits'
import type { Limit, PlantingResult } from '#geo/report/report'
import { type Remedy, remedyNames } from '../../text/names'
import { verdictOf } from '../../text/verdict'

export type Gain = { readonly remedy: Remedy; readonly name: string; readonly gain: number }

/** What each remedy would add to a planting's coverage, largest first; empty while it is not worked out. */
export function gainsOf({ gains }: PlantingResult): readonly Gain[] {
  return remedies
    .flatMap(remedy => {
      const gain = gains[remedy]
      return gain === null ? [] : [{ remedy, name: remedyNames[remedy], gain }]
    })
    .sort((a, b) => b.gain - a.gain)
}

/** What a grower can do about what holds a planting back: first the date, where its bees fly outside its bloom. */
export function adviceOn({
  limit,
  timingMatch,
}: Pick<PlantingResult, 'timingMatch'> & { readonly limit: Limit }): string {
  if (limit === 'competition' && verdictOf(timingMatch) === 'no') return advice.timing
  return advice[limit]
}

const advice: Readonly<Record<Limit, string>> = {
  distance: 'Put a station nearer to it, or move one towards it before bees nest there.',
  timing: 'Set a batch out so that its flight meets this bloom: see Bloom and flight for the best day.',
  numbers: 'Set out more cocoons at the stations near it, with tubes for them.',
  competition:
    'Blossom beside the plantings takes the bees’ time, drawn forage or the wild flowers that are reckoned with everywhere. More bees help. So does mowing what flowers below the trees, but not while bees fly; and they need those flowers before and after the bloom.',
  unserved: 'No station with bees lies within flying range. Put one up, or set cocoons out at one nearby.',
  none: 'It takes far more bees, or several changes together.',
}
