import type { Advice, Evidence, StationStory } from '#geo/seasons/station-story'
import { percent } from '../../text/words'

const adviceNames: Readonly<Record<Advice, string>> = {
  keep: 'Keep it as it is',
  move: 'Move or turn it',
  clean: 'Clean it, with new tubes',
  rest: 'Rest the place for a season',
}

/** What the counts speak for, in a few words. */
export function adviceWords({ advice }: StationStory): string {
  return advice === null ? 'Nothing can be said: it was not counted' : adviceNames[advice]
}

export function evidenceWords({ code, year, share, against }: Evidence): string {
  switch (code) {
    case 'losses-high':
      return `${percent(share)} of its cells were lost in ${year}; over ${percent(against)} is taken for many.`
    case 'losses-risen':
      return `The share lost rose from ${percent(against)} to ${percent(share)} in ${year}.`
    case 'few-capped':
      return `For as many females set out, it filled ${percent(share)} of the tubes that all stations filled in ${year}; under ${percent(against)} two seasons running is taken for a poor place.`
    default:
      return code satisfies never
  }
}
