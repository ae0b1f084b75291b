import type { BeeId } from './own'
import { type Threshold, threshold } from './thresholds'

/** How cocoons spent the winter: in a cold store until they were set out, or in the open, where warmth starts them. */
export const winterings = ['cold', 'outdoors'] as const
export type Wintering = (typeof winterings)[number]

/** From coming out to nesting; a bee's lag from release to nesting less this is when half of its females are out. */
export const searchDays = threshold(
  'd',
  [1, 2, 4],
  'assumed',
  'memory',
  'Females pair and look for a hole for two or three days, from memory; at 20 degC half of them are out that long before the mean first day of nesting.',
)

/**
 * What that search adds to the deviation: a bee's spread of first nesting days less this is the deviation, among one sex of
 * one batch, of the day of coming out from a cold store.
 */
export const searchSpread = threshold(
  'd',
  [0, 1, 2],
  'assumed',
  'memory',
  'A day: European orchard bees from a fridge were all out in under a week, a deviation of 1.5 to 2 days, and first nesting days are taken a day wider.',
)

/** The same deviation for bees that wintered outdoors. */
export const outdoorSpread = threshold(
  'd',
  [4, 6, 8],
  'assumed',
  ['boschBlas1994', 'assumed'],
  'Bees that wintered in a shed took longer than the bloom lasted: taken as three times the deviation of those kept cold.',
)

const likeLignaria = 'Taken as for the blue orchard bee.'

/** Days by which half of the males are out before half of the females. */
export const malesBefore: Readonly<Record<BeeId, Readonly<Record<Wintering, Threshold>>>> = {
  'osmia-lignaria': {
    cold: threshold(
      'd',
      [1, 3, 5],
      'derived',
      ['mader2010', 'boschKemp2003'],
      'Set out warm, males came in 1 to 7 days and females began half-way through them, by the handbook; after 150 cold days males took 5 days at most on average.',
    ),
    outdoors: threshold(
      'd',
      [5, 7, 9],
      'measured',
      'kraemerFavi2010',
      'Females were most two days after redbud began to flower, males about a week before them; two days either way are our own allowance.',
    ),
  },
  'osmia-bicornis': {
    cold: threshold('d', [2, 4, 6], 'assumed', 'memory', 'A little more than in the blue orchard bee, from memory.'),
    outdoors: threshold('d', [5, 8, 14], 'assumed', 'memory', 'A week or more, from memory.'),
  },
  'osmia-cornuta': {
    cold: threshold('d', [2, 4, 6], 'assumed', 'memory', 'A little more than in the blue orchard bee, from memory.'),
    outdoors: threshold('d', [5, 7, 10], 'assumed', ['kraemerFavi2010', 'assumed'], likeLignaria),
  },
  'osmia-cornifrons': {
    cold: threshold(
      'd',
      [1, 3, 5],
      'derived',
      'mader2010',
      'The handbook speaks of this bee and the blue orchard bee together.',
    ),
    outdoors: threshold('d', [5, 7, 9], 'assumed', ['kraemerFavi2010', 'assumed'], likeLignaria),
  },
}
