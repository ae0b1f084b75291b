import type { ForageRecord } from './crop-record'
import { lengths, offsets } from './crop-record'
import type { Spread } from './figure'
import { assumed, figure } from './figure'
import type { SourceKey } from './sources'

/** What differs from one forage plant to the next; the rest holds for all. */
type ForageDraft = {
  readonly id: string
  readonly name: string
  readonly botanicalName: string
  /** Flowers per square metre of ground that the plant covers, in full bloom. */
  readonly density: Spread
  readonly densityNote: string
  readonly appeal: Spread
  readonly appealNote: string
  /** Days from apple full bloom in maritime places. */
  readonly offset: Spread
  readonly days: readonly [low: number, high: number]
  readonly sources: readonly SourceKey[]
}

/**
 * A forage plant. Days are from memory, where `sources` is not empty beside an order and month seen in a maritime place;
 * inland spring blooms follow one another faster, so there the days before or after apple are taken at six tenths.
 */
function forage(draft: ForageDraft): ForageRecord {
  const { id, name, botanicalName, offset, sources } = draft
  const [low, high] = draft.days
  const days = Math.round((low + high) / 2)
  const firstToFull = Math.round(days / 3)
  const {
    firstToFull: rise,
    fullToEnd,
    bloomDays,
  } = lengths(
    [low, days, high],
    { firstToFull, fullToEnd: days - firstToFull },
    'assumed',
    'memory',
    'Length from memory; full after a third of it, as in fruit trees.',
  )
  const inland: Spread = [Math.round(offset[0] * 0.6), Math.round(offset[1] * 0.6), Math.round(offset[2] * 0.6)]
  return {
    id,
    name,
    botanicalName,
    blossomDensity: assumed('flowers/m2', draft.density, `No count: ${draft.densityNote}`),
    appeal: assumed('1', draft.appeal, draft.appealNote),
    bloomOffset: {
      ...offsets(
        { 'maritime-northwest': offset, continental: inland, 'southern-england': offset },
        'assumed',
        [...sources, 'memory'],
        sources.length > 0
          ? 'Order and month were seen in western Oregon or in Kent; the days are from memory.'
          : 'From memory.',
      ),
      continental: figure(
        'd',
        inland,
        'assumed',
        ['okanagan', 'assumed'],
        'Six tenths of the days on the coast, about the ratio that apricot and peach show between the Okanagan and the coast.',
      ),
    },
    firstToFull: rise,
    fullToEnd,
    bloomDays,
  }
}

const even = 'Average until someone measures it.'

/** Plants that feed mason bees beside the crops, by id. */
export const foragePlants: Readonly<Record<string, ForageRecord>> = {
  osoberry: forage({
    id: 'osoberry',
    name: 'Osoberry, Indian plum',
    botanicalName: 'Oemleria cerasiformis',
    density: [50, 250, 1000],
    densityNote: 'short hanging clusters on an open shrub.',
    appeal: [0.4, 0.8, 1.3],
    appealNote: 'Small flowers, but almost alone at their time.',
    offset: [-65, -50, -35],
    days: [14, 28],
    sources: ['oregonWildflowers2016'],
  }),
  'red-flowering-currant': forage({
    id: 'red-flowering-currant',
    name: 'Red-flowering currant',
    botanicalName: 'Ribes sanguineum',
    density: [100, 500, 2000],
    densityNote: 'twenty clusters a square metre of some twenty-five flowers.',
    appeal: [0.4, 0.8, 1.3],
    appealNote: 'Nectar sits deep; long-tongued bees reach it.',
    offset: [-50, -35, -18],
    days: [21, 35],
    sources: ['oregonWildflowers2016'],
  }),
  'oregon-grape': forage({
    id: 'oregon-grape',
    name: 'Tall Oregon grape',
    botanicalName: 'Berberis aquifolium',
    density: [150, 600, 2500],
    densityNote: 'ten crowded heads a square metre of some sixty flowers.',
    appeal: [0.5, 1, 1.5],
    appealNote: even,
    offset: [-55, -35, -12],
    days: [21, 42],
    sources: ['oregonWildflowers2016'],
  }),
  willow: forage({
    id: 'willow',
    name: 'Willow (goat, Scouler and others)',
    botanicalName: 'Salix spp.',
    density: [50, 300, 1500],
    densityNote: 'catkins, each counted as one flower; only male trees give pollen.',
    appeal: [0.7, 1.5, 3],
    appealNote:
      'O. lignaria flew 300 to 600 m to it (Rust 1990) and left haskap for it (Frier and others 2016): well over average.',
    offset: [-65, -45, -25],
    days: [10, 24],
    sources: ['oregonWildflowers2016'],
  }),
  'bigleaf-maple': forage({
    id: 'bigleaf-maple',
    name: 'Bigleaf maple',
    botanicalName: 'Acer macrophyllum',
    density: [100, 500, 2000],
    densityNote: 'ten hanging clusters under a square metre of crown, of some fifty flowers.',
    appeal: [0.5, 1, 1.5],
    appealNote: even,
    offset: [-32, -20, -8],
    days: [10, 21],
    sources: [],
  }),
  'cherry-plum': forage({
    id: 'cherry-plum',
    name: 'Cherry plum, myrobalan',
    botanicalName: 'Prunus cerasifera',
    density: [200, 700, 2500],
    densityNote: 'as densely set as Japanese plum, 600 a square metre, or a little more in an unpruned hedge.',
    appeal: [0.7, 1, 1.3],
    appealNote: 'As plum, its close kin.',
    offset: [-48, -32, -24],
    days: [10, 18],
    sources: ['brogdale2009'],
  }),
  blackthorn: forage({
    id: 'blackthorn',
    name: 'Blackthorn',
    botanicalName: 'Prunus spinosa',
    density: [100, 400, 2000],
    densityNote: 'a hedge white with bloom, about the density of plum.',
    appeal: [0.5, 0.8, 1.2],
    appealNote: 'As plum, with smaller flowers.',
    offset: [-35, -22, -10],
    days: [10, 21],
    sources: [],
  }),
  dandelion: forage({
    id: 'dandelion',
    name: 'Dandelion',
    botanicalName: 'Taraxacum officinale',
    density: [1, 10, 60],
    densityNote: 'open heads, each counted as one flower: a few in mown grass, dozens in a yellow meadow.',
    appeal: [0.3, 0.8, 1.5],
    appealNote:
      'A head holds more than a single flower, but its pollen alone feeds mason bee brood poorly, from memory.',
    offset: [-35, -8, 15],
    days: [28, 60],
    sources: [],
  }),
  'crab-apple': forage({
    id: 'crab-apple',
    name: 'Crab apple',
    botanicalName: 'Malus spp.',
    density: [100, 400, 1500],
    densityNote: 'an unpruned tree carries several times the flowers of a dwarf apple on the same ground.',
    appeal: [0.7, 1, 1.3],
    appealNote: 'As apple, its close kin.',
    offset: [-8, -1, 8],
    days: [8, 15],
    sources: [],
  }),
  hawthorn: forage({
    id: 'hawthorn',
    name: 'Hawthorn',
    botanicalName: 'Crataegus monogyna',
    density: [150, 800, 3000],
    densityNote: 'a hedge white with bloom, some fifty clusters a square metre of a dozen or more flowers.',
    appeal: [0.4, 0.8, 1.2],
    appealNote: 'Small flowers with little nectar, much pollen.',
    offset: [8, 16, 25],
    days: [10, 18],
    sources: [],
  }),
}
