import { assumed, figure, valuesOf } from './figure'
import type { Parameter } from './parameter'

export const sitingFigureNames = [
  'stationPrice',
  'femaleCocoonPrice',
  'maleCocoonPrice',
  'tubePrice',
  'usualFemales',
  'mostTubes',
  'stationSpacing',
  'shareOfReach',
] as const
export type SitingFigureName = (typeof sitingFigureNames)[number]

/** Figures behind questions of siting and stocking. Each question has its own prices, tubes and spacing; these stand in for what it leaves open. */
export const sitingFigures: Readonly<Record<SitingFigureName, Parameter>> = {
  stationPrice: assumed(
    'money',
    [10, 30, 100],
    'A box on a post, in any currency: only its proportion to what goes into it steers an answer. From home-made to bought.',
  ),
  femaleCocoonPrice: assumed('money', [0.3, 1, 2], 'One female cocoon; cocoons are what most of the money goes into.'),
  maleCocoonPrice: assumed(
    'money',
    [0.1, 0.5, 1],
    'One male cocoon, where sexes are priced apart; half of a female, for males come in plenty.',
  ),
  tubePrice: assumed('money', [0.05, 0.25, 0.6], 'One nest tube with its liner.'),
  usualFemales: figure(
    'females',
    [30, 50, 70],
    'assumed',
    'memory',
    'Nesting females at a station unless a question says otherwise. Common practice speaks of some dozens a shelter.',
  ),
  mostTubes: figure(
    'tubes',
    [100, 200, 300],
    'derived',
    'koh',
    'Tubes over which more at one place bring less than a second place does. A model of an almond orchard was best at about 200 a place; boxes in use hold 100 to 132.',
  ),
  stationSpacing: assumed(
    'm',
    [10, 20, 50],
    'Least distance between stations that are suggested: nearer ones share the same blossom and are one place to mend and guard.',
  ),
  shareOfReach: assumed(
    'share',
    [0.9, 0.97, 0.99],
    'Where a target is out of reach of a planting, so much of the most that can be reached there is asked for: the last of it takes bees without end.',
  ),
}

/** The same as plain numbers. */
export const sitingDefaults = valuesOf(sitingFigures)
