import { assumed, figure } from './figure'
import type { BeeId } from './own'
import type { Parameter } from './parameter'

/** From which figures the days of the season's work follow. Coverage does not hang on them. */
export const seasonWork = {
  stationsUp: assumed(
    'd',
    [14, 63, 90],
    'From the work of putting stations up to the first cocoons set out. Nine weeks lead from bees set out in late March or ' +
      'early April back to January or early February, when keepers buy and install; two are the least before anything flies.',
  ),
  stationsUpDays: assumed('d', [1, 14, 28], 'Two weeks, and so two weekends, to put all stations up.'),
  mudBefore: assumed(
    'd',
    [2, 7, 14],
    'A week, for a dug patch to soak through. Females need mud for the first wall, on the day they start to nest.',
  ),
  roundEvery: assumed('d', [3, 7, 10], 'A round a week finds dry mud, damage and full houses while it still helps.'),
  flightOver: assumed(
    'share',
    [0.05, 0.15, 0.3],
    'Females at work, as a share of the busiest day, below which the flight counts as over: one in seven. A batch set out in early ' +
      'April then ends in the second half of May, some five weeks after its females began, as keepers see it.',
  ),
  takeInAfter: figure(
    'd',
    [14, 38, 50],
    'assumed',
    ['memory', 'assumed'],
    'From the last flight to taking the nests in. Young larvae fall off their food when shaken, so two weeks are the least; after some ' +
      'five they have eaten up and spun their cocoons. Later, wasps and summer nesters come in.',
  ),
  eggToAdult: figure(
    'd',
    [90, 105, 123],
    'derived',
    ['boschKemp2000', 'mader2010'],
    'From the last eggs, laid about the last day of flight, to grown bees in their cocoons: about 95 days outdoors for the blue orchard bee, ' +
      'over 120 at 18 degC, half of that at 29. Taken a little longer than outdoors, for a cool summer; the other bees are taken to be like it.',
  ),
  adultToCold: figure(
    'd',
    [14, 21, 28],
    'derived',
    'mader2010',
    'The handbook wants cocoons cooled two to four weeks after the bees in them are grown: sooner kills, later wears them out.',
  ),
  openAfterCold: assumed(
    'd',
    [7, 21, 60],
    'From the start of the cold to opening the nests. Cold bees sleep through it; October and November are the usual months.',
  ),
  shareOutAfter: assumed('d', [7, 14, 42], 'From opening day to the share-out: time to wash, sort, count and agree.'),
  orderBefore: assumed(
    'd',
    [42, 84, 150],
    'From an order for cocoons to the day they are set out. Stock raised nearby is spoken for early; most is bought in January.',
  ),
} as const satisfies Readonly<Record<string, Parameter>>

/** Days that cocoons of a species spend cold between autumn and their release. */
export const coldDays: Readonly<Record<BeeId, Parameter>> = {
  'osmia-lignaria': figure(
    'd',
    [100, 160, 210],
    'derived',
    ['mader2010', 'boschKemp2003'],
    'From 100 days by the handbook; 150 at up to 7 degC let males out within 5 days; 210 at up to 4 degC did no harm.',
  ),
  'osmia-bicornis': figure(
    'd',
    [120, 150, 180],
    'assumed',
    ['memory', 'assumed'],
    'Keepers store it for four to six months; no trial of its length was seen.',
  ),
  'osmia-cornuta': figure(
    'd',
    [90, 120, 150],
    'derived',
    ['boschKemp2004', 'boschBlas1994'],
    'Best from 90 to 150 days; under 30 few came out. Out closest together after 120 days at 3 degC.',
  ),
  'osmia-cornifrons': figure(
    'd',
    [100, 160, 200],
    'derived',
    'mader2010',
    'The handbook gives 100 to 200 days for this bee and the blue orchard bee together.',
  ),
}
