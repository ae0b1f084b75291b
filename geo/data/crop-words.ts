import type { Basis } from './parameter'
import type { SourceKey } from './sources'

/** A word that people write for a crop, and the crop that it most likely means. */
export type CropWord = {
  readonly crop: string
  readonly basis: Basis
  readonly source: SourceKey
  readonly about: string
}

/** Words for crops beside their names, folded. They are guesses, shown as such; a word that could as well mean another crop is none of them. */
export const cropWords: Readonly<Record<string, CropWord>> = {
  pear: usual('pear-european', 'Asian pears are mostly called so, or nashi.'),
  nashi: usual('pear-asian', 'The Japanese word for it.'),
  plum: usual(
    'plum-european',
    'The plum of gardens and allotments in Europe; in warm valleys it may be the Japanese one.',
  ),
  prune: usual('plum-european', 'Plums for drying are of this species.'),
  gage: usual('plum-european', 'A group of its cultivars.'),
  greengage: usual('plum-european', 'A group of its cultivars.'),
  damson: usual('plum-european', 'Counted among the European plums here.'),
  mirabelle: usual('plum-european', 'Counted among the European plums here.'),
  morello: usual('cherry-sour', 'A group of its cultivars.'),
  nectarine: usual('peach', 'A peach without down.'),
  redcurrant: usual('currant-red', 'Its name in one word.'),
  whitecurrant: usual('currant-red', 'A pale form of the red currant.'),
  haskap: usual('honeyberry', 'Another name for it.'),
  saskatoon: usual('serviceberry', 'Another name for it.'),
  juneberry: usual('serviceberry', 'Another name for it.'),
}

function usual(crop: string, about: string): CropWord {
  return { crop, basis: 'assumed', source: 'memory', about: `Common practice. ${about}` }
}
