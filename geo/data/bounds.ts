import type { BeeParameterName } from './bees'
import type { ownCropFigureNames } from './crop-record'
import type { SiteParameterName } from './parameters'

/** Hard bounds of a figure: outside them it means nothing. `isOpen`: the lower bound itself is outside. */
export type Bounds = { readonly low: number; readonly high: number; readonly isOpen: boolean }

const share: Bounds = { low: 0, high: 1, isOpen: false }
const shareAboveNone: Bounds = { low: 0, high: 1, isOpen: true }
const positive: Bounds = { low: 0, high: Number.POSITIVE_INFINITY, isOpen: true }
const notNegative: Bounds = { low: 0, high: Number.POSITIVE_INFINITY, isOpen: false }
const temperature: Bounds = { low: -10, high: 50, isOpen: false }
const hours: Bounds = { low: 0, high: 24, isOpen: true }

export type BoundedName = SiteParameterName | BeeParameterName | (typeof ownCropFigureNames)[number]

/** Bounds of every figure that a plan may set. Those that the model divides by are open at 0. */
export const parameterBounds: Readonly<Record<BoundedName, Bounds>> = {
  backgroundBlossom: notNegative,
  referenceCropShare: shareAboveNone,
  spareTubes: notNegative,
  typicalFlyingHours: hours,
  typicalForagingRadius: positive,
  maxForagingRange: positive,
  effectiveness: positive,
  emergence: shareAboveNone,
  establishment: shareAboveNone,
  malesPerFemale: notNegative,
  lag: notNegative,
  spreadDays: positive,
  nestingLife: positive,
  tubesPerFemale: positive,
  tubesUsedPerFemale: positive,
  cellsPerTube: positive,
  femaleShare: share,
  keepingOutside: share,
  keepingTakenIn: share,
  flightFrom: temperature,
  flightFull: temperature,
  boreMin: positive,
  boreMax: positive,
  depthMin: positive,
  stockingRate: notNegative,
  blossomDensity: notNegative,
  appeal: notNegative,
  spacing: positive,
  rowSpacing: positive,
}
