import { assumed, valuesOf } from './figure'

/** By which shares and factors a result is judged in words. No figure of a result hangs on them. */
export const judgingFigures = {
  enough: assumed(
    'share',
    [0.8, 0.9, 0.95],
    'From nine tenths of what it wants a planting or plant counts as having enough: the last tenth takes bees without end, and is less than the figures may be off.',
  ),
  partlyEnough: assumed(
    'share',
    [0.4, 0.5, 0.7],
    'From half of what it wants a planting counts as having enough in part.',
  ),
  usualTarget: assumed(
    'share',
    [0.8, 0.9, 0.95],
    'What every planting is to get of what it wants where a question names no target: as much as counts as enough.',
  ),
  sureChance: assumed(
    'share',
    [0.8, 0.9, 0.95],
    'How sure one would like to be of the females counted on: nine times in ten, the usual meaning of a safe margin.',
  ),
  toldTimes: assumed(
    '1',
    [1.1, 1.25, 1.5],
    'Tubes for each female have to change by this factor from season to season to be told of: a quarter is more than a few tubes counted amiss.',
  ),
} as const

/** The same as plain numbers. */
export const judging = valuesOf(judgingFigures)
