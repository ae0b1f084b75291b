import { assumed, figure } from './figure'
import type { Parameter } from './parameter'
import type { SourceKey } from './sources'

/** Stages of a crop that frost is told of, in their order. */
export const frostStages = ['cluster', 'colour', 'first', 'full', 'after'] as const
export type FrostStage = (typeof frostStages)[number]

/** Air temperatures that half an hour of which kills a tenth, and nine tenths, of the buds or flowers. */
export type Kill = { readonly name: string; readonly tenth: Parameter; readonly most: Parameter }

function kill(name: string, tenth: number, most: number, source: SourceKey): Kill {
  const row = (degrees: number, share: string) =>
    figure(
      'degC',
      [degrees - 0.6, degrees, degrees + 0.6],
      'measured',
      source,
      `Half an hour at it kills ${share} of the flowers in this stage. Cultivars differ by one or two degrees Fahrenheit.`,
    )
  return { name, tenth: row(tenth, '10 %'), most: row(most, '90 %') }
}

type Stages = Readonly<Partial<Record<FrostStage, Kill>>>

/** By crop of the tables; a stage that is not listed has no figure in the source. */
export const frostKill: Readonly<Record<string, Stages>> = {
  apple: {
    cluster: kill('tight cluster', -2.8, -6.1, 'longstroth'),
    colour: kill('pink', -2.2, -4.4, 'longstroth'),
    first: kill('first bloom', -2.2, -3.9, 'longstroth'),
    full: kill('full bloom', -2.2, -3.9, 'longstroth'),
    after: kill('petals fallen', -2.2, -3.9, 'longstroth'),
  },
  'pear-european': {
    cluster: kill('tight cluster', -4.4, -9.4, 'longstroth'),
    colour: kill('first white', -3.9, -7.2, 'longstroth'),
    first: kill('first bloom', -2.8, -5, 'longstroth'),
    full: kill('full bloom', -2.2, -4.4, 'longstroth'),
    after: kill('petals fallen', -2.2, -4.4, 'longstroth'),
  },
  'cherry-sweet': {
    cluster: kill('tight cluster', -3.3, -8.3, 'longstroth'),
    colour: kill('first white', -2.8, -4.4, 'longstroth'),
    first: kill('first bloom', -2.2, -3.9, 'longstroth'),
    full: kill('full bloom', -2.2, -3.9, 'longstroth'),
    after: kill('petals fallen', -2.2, -3.9, 'longstroth'),
  },
  'cherry-sour': {
    cluster: kill('tight cluster', -3.3, -4.4, 'intermountain'),
    colour: kill('first white', -2.2, -4.4, 'intermountain'),
    first: kill('first bloom', -2.2, -4.4, 'intermountain'),
    full: kill('full bloom', -2.2, -3.9, 'intermountain'),
    after: kill('petals fallen', -2.2, -3.9, 'intermountain'),
  },
  apricot: {
    colour: kill('first white', -4.4, -10, 'longstroth'),
    first: kill('first bloom', -3.9, -7.2, 'longstroth'),
    full: kill('full bloom', -2.8, -5.6, 'longstroth'),
    after: kill('in the shuck', -2.8, -4.4, 'longstroth'),
  },
  peach: {
    colour: kill('first pink', -3.9, -9.4, 'longstroth'),
    first: kill('first bloom', -3.3, -6.1, 'longstroth'),
    full: kill('full bloom', -2.8, -4.4, 'longstroth'),
    after: kill('petals fallen', -2.2, -3.9, 'longstroth'),
  },
  'plum-european': {
    cluster: kill('tight cluster', -4.4, -8.9, 'longstroth'),
    colour: kill('first white', -3.3, -5.6, 'longstroth'),
    first: kill('first bloom', -2.8, -5, 'longstroth'),
    full: kill('full bloom', -2.2, -5, 'longstroth'),
    after: kill('petals fallen', -2.2, -5, 'longstroth'),
  },
}

/** Where the stages without a date of their own begin and end, days from first bloom back and from its end on. */
export const frostDays = {
  cluster: assumed(
    'd',
    [8, 12, 20],
    'Days before first bloom in which buds stand in tight cluster; fewer in a warm spring.',
  ),
  colour: assumed('d', [3, 5, 8], 'Days before first bloom in which petals show; fewer in a warm spring.'),
  after: assumed('d', [7, 14, 21], 'Days after petal fall in which young fruit is as tender as the flower.'),
} as const satisfies Readonly<Record<string, Parameter>>
