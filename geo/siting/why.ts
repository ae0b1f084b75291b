import type { PlaceSource } from './places'
import type { SuggestedStation } from './suggestion'

const where: Readonly<Record<PlaceSource, string>> = {
  own: 'A place of your own',
  station: 'Where a station stands now',
  'row-end': 'At the end of a row',
  windbreak: 'Beside shelter',
  boundary: 'On the inner side of the boundary',
  'in-row': 'Between two plants of a row',
  open: 'On open ground',
}

/** Why a station should stand where it is suggested: where that is, whom it serves, what it is near. */
export function whyText({ source, notes, gains }: Pick<SuggestedStation, 'source' | 'notes' | 'gains'>): string {
  const served = gains.slice(0, 3).map(({ name, females }) => `${name} (${rounded(females)})`)
  const more = gains.length > 3 ? ` and ${gains.length - 3} more` : ''
  const serves = served.length === 0 ? 'adds nothing' : `adds females to ${served.join(', ')}${more}`
  const mud = notes.mud === null ? '' : ` Mud at ${Math.round(notes.mud)} m.`
  const shelter =
    notes.shelter === null
      ? ''
      : ` ${notes.shelter.side === 'morning' ? 'Morning' : 'Evening'} side of ${notes.shelter.name}.`
  const lane = notes.isInLane ? ' In a lane between rows.' : ''
  return `${where[source]}: ${serves}.${shelter}${mud}${lane}`
}

function rounded(females: number): string {
  return females < 10 ? females.toFixed(1) : females.toFixed(0)
}
