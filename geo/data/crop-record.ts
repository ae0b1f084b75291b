import type { Spread } from './figure'
import { figure, sourcesOf } from './figure'
import type { BloomRegion } from './own'
import type { Basis, Parameter } from './parameter'
import type { SourceKey } from './sources'

export type CropKind = 'tree' | 'bush' | 'cane' | 'herb' | 'mat'

/** The figures of a crop that a grower may set for a crop of their own; all five make a crop. */
export const ownCropFigureNames = ['stockingRate', 'blossomDensity', 'appeal', 'spacing', 'rowSpacing'] as const

/** The figures of a crop that the model takes; `crop.<name>` varies them. */
export const cropFigureNames = [...ownCropFigureNames, 'firstToFull', 'fullToEnd'] as const
export type CropFigureName = (typeof cropFigureNames)[number]

export type BloomOffsets = Readonly<Record<BloomRegion, Parameter>>

export type CropRecord = {
  readonly id: string
  readonly name: string
  readonly botanicalName: string
  readonly kind: CropKind
  /** The size of plant that flowers and spacing stand for. */
  readonly size: string
  readonly figures: Readonly<Record<CropFigureName, Parameter>>
  /** Flowers of a full-grown plant, of a metre of row or of a square metre: the unit says which. */
  readonly flowers: Parameter
  /** Days from apple full bloom to this crop's, negative = before. */
  readonly bloomOffset: BloomOffsets
  /** Days from first to last flower. */
  readonly bloomDays: Parameter
  /** Females per plant by a rule of thumb, where there is one. It need not agree with the rate per hectare. */
  readonly femalesPerPlant: Parameter | null
  readonly shareOfFlowersThatMustSet: Parameter
  readonly selfFertility: string
  /** needsAnother null = it depends on the cultivar. Metres to a pollinizer: good within, hardly any effect beyond. */
  readonly pollinizer: {
    readonly needsAnother: boolean | null
    readonly goodWithin: number | null
    readonly atMost: number | null
  }
  /** What mason bees do for it. */
  readonly note: string
  /** Sources of the words and pollinizer distances. */
  readonly sources: readonly SourceKey[]
}

/** A plant that is not grown for fruit but feeds the bees. */
export type ForageRecord = {
  readonly id: string
  readonly name: string
  readonly botanicalName: string
  readonly blossomDensity: Parameter
  readonly appeal: Parameter
  readonly bloomOffset: BloomOffsets
  readonly firstToFull: Parameter
  readonly fullToEnd: Parameter
  readonly bloomDays: Parameter
}

type Bloomed = 'firstToFull' | 'fullToEnd'

export type BloomLengths = Readonly<Record<Bloomed | 'bloomDays', Parameter>>

type CropDraft = Omit<CropRecord, 'figures' | 'bloomDays'> & {
  readonly figures: Readonly<Record<Exclude<CropFigureName, 'blossomDensity' | Bloomed>, Parameter>>
  readonly lengths: BloomLengths
}

/** A crop with its blossom density worked out from flowers and spacing. */
export function cropRecord({ lengths, figures, ...draft }: CropDraft): CropRecord {
  const { bloomDays, ...stages } = lengths
  const density = blossomDensity(draft.flowers, figures.spacing, figures.rowSpacing)
  return { ...draft, figures: { ...figures, ...stages, blossomDensity: density }, bloomDays }
}

/**
 * Flowers per square metre of planting. The range is that of the flowers at the middle spacing: plants set wider are
 * trained larger, so the ends of both ranges do not meet. What is worked out from assumptions alone stays one.
 */
function blossomDensity(flowers: Parameter, spacing: Parameter, rowSpacing: Parameter): Parameter {
  const [ground, how] = groundOf(flowers, spacing, rowSpacing)
  const isGuess = [flowers, spacing, rowSpacing].every(({ basis }) => basis === 'assumed')
  return figure(
    'flowers/m2',
    [flowers.low / ground, flowers.value / ground, flowers.high / ground],
    isGuess ? 'assumed' : 'derived',
    [...new Set([flowers, spacing, rowSpacing].flatMap(sourcesOf))],
    how,
  )
}

function groundOf(flowers: Parameter, spacing: Parameter, rowSpacing: Parameter): [number, string] {
  switch (flowers.unit) {
    case 'flowers/plant':
      return [
        spacing.value * rowSpacing.value,
        'Flowers of a plant over the ground it stands on, spacing times row spacing.',
      ]
    case 'flowers/m':
      return [rowSpacing.value, 'Flowers of a metre of row over the distance between rows.']
    case 'flowers/m2':
      return [1, 'Flowers counted by the square metre.']
    default:
      throw new RangeError(`not a count of flowers: ${flowers.unit}`)
  }
}

/** Bloom offsets of the three regions from one body of evidence. */
export function offsets(
  spreads: Readonly<Record<BloomRegion, Spread>>,
  basis: Basis,
  source: SourceKey | readonly SourceKey[],
  about: string,
): BloomOffsets {
  const of = (region: BloomRegion) => figure('d', spreads[region], basis, source, about)
  return {
    'maritime-northwest': of('maritime-northwest'),
    continental: of('continental'),
    'southern-england': of('southern-england'),
  }
}

/**
 * Bloom lengths in whole days: both stages with the range of the whole bloom, shared out in proportion, as a warm spring
 * shortens both.
 */
export function lengths(
  total: Spread,
  stages: Readonly<Record<Bloomed, number>>,
  basis: Basis,
  source: SourceKey | readonly SourceKey[],
  about: string,
): BloomLengths {
  const [low, value, high] = total
  const stage = (days: number) =>
    figure(
      'd',
      [Math.max(1, Math.round((days * low) / value)), days, Math.round((days * high) / value)],
      basis,
      source,
      about,
    )
  return {
    firstToFull: stage(stages.firstToFull),
    fullToEnd: stage(stages.fullToEnd),
    bloomDays: figure('d', total, basis, source, about),
  }
}
