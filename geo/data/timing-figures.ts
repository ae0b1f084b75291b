import type { BeeId } from './own'
import { type Threshold, threshold } from './thresholds'

/** What advice on release dates goes by. */
export const adviceFigures = {
  forageReach: threshold(
    'm',
    [90, 150, 250],
    'derived',
    'hofmann2020',
    'Mean trips of mason bees measured 73 to 121 m, and flowers within 150 m of the nest is the rule drawn from them: blossom farther off does not hold the first females.',
  ),
  starterCocoons: threshold(
    'cocoons',
    [20, 60, 100],
    'assumed',
    'assumed',
    'Fewer female cocoons than this are a starter stock, about one shelter: split up, each batch would be too few to find mates and be seen to work.',
  ),
  batchWorth: threshold(
    'share',
    [0.002, 0.005, 0.02],
    'assumed',
    'assumed',
    'Another morning of setting out is advised for half a point of coverage, not for less.',
  ),
} as const satisfies Readonly<Record<string, Threshold>>

/** What the field checks of dates go by. */
export const timingFigures = {
  bareNote: threshold(
    'd',
    [2, 3, 4],
    'assumed',
    'assumed',
    'A few days between setting out and the first blossom pass in the cocoon box.',
  ),
  bareWarning: threshold(
    'd',
    [5, 7, 9],
    'derived',
    'mader2010',
    'The handbook sets cocoons out at the start of bloom, as females that find no flowers leave; a week is our reading of that.',
  ),
  bareFar: threshold(
    'd',
    [10, 14, 21],
    'assumed',
    'assumed',
    'Two weeks without blossom are longer than early females wait.',
  ),
  longBloom: threshold(
    'd',
    [28, 35, 42],
    'assumed',
    'memory',
    'Bees of one batch work four to six weeks, from memory: a longer spell of bloom outlives them.',
  ),
  bloomLong: threshold(
    'd',
    [30, 45, 60],
    'assumed',
    'assumed',
    'From first bloom to petal fall one crop takes two to four weeks; dates farther apart than six are more likely a slip of the month.',
  ),
  bareTail: threshold(
    'd',
    [5, 10, 15],
    'assumed',
    ['mader2010', 'assumed'],
    'The handbook wants flowers for the whole of nesting; after ten days without, few cells are added and fewer of them daughters.',
  ),
  settling: threshold(
    'd',
    [10, 14, 28],
    'assumed',
    ['memory', 'assumed'],
    'Eggs and young larvae come loose from their food when a nest is moved; two weeks after the last cap they hold, four are safer.',
  ),
  takenInBy: threshold(
    'd',
    [182, 196, 213],
    'assumed',
    ['memory', 'assumed'],
    'Day of the year, 15 July: keepers take nests in between mid-June and early August, before wasps and summer nesters find them. Half a year later south of the equator.',
  ),
} as const satisfies Readonly<Record<string, Threshold>>

/** How cold a bee is to be kept before it is set out; how long, the days of the season's work say. */
export const mostColdDegrees: Readonly<Record<BeeId, Threshold>> = {
  'osmia-lignaria': threshold(
    'degC',
    [4, 7, 10],
    'measured',
    'boschKemp2003',
    'At 7 degC they kept for 150 days and suffered beyond; 10 degC or more was unsuitable even for a short time.',
  ),
  'osmia-bicornis': threshold(
    'degC',
    [4, 4.5, 8],
    'measured',
    'bicornisWinter2025',
    'At 8 degC a third more died over winter than at 0 to 4.5; offspring were fewer by a quarter at 4.5 and by a third at 8 than at 0.',
  ),
  'osmia-cornuta': threshold(
    'degC',
    [4, 7, 10],
    'assumed',
    ['boschKemp2003', 'assumed'],
    'Taken as for the blue orchard bee; 3 degC did well.',
  ),
  'osmia-cornifrons': threshold(
    'degC',
    [5, 6, 7],
    'derived',
    ['sekita', 'memory'],
    'Japanese growers hold nests at 0 to 5 degC; 4 to 6 is also told, from memory.',
  ),
}

/** Where a bee that is kept for long has to be kept colder: more than so many days want so few degrees. */
export const longCold: Readonly<Partial<Record<BeeId, { readonly days: Threshold; readonly degrees: Threshold }>>> = {
  'osmia-lignaria': {
    days: threshold(
      'd',
      [150, 150, 210],
      'measured',
      'boschKemp2003',
      'At 7 degC they kept for 150 days and suffered beyond.',
    ),
    degrees: threshold(
      'degC',
      [4, 4, 7],
      'measured',
      'boschKemp2003',
      'At 0 to 4 degC even 210 days and more did no harm.',
    ),
  },
}
