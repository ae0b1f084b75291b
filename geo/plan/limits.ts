import type { BeeParameterName } from '../data/bees'
import { type BoundedName, parameterBounds } from '../data/bounds'
import type { SiteParameterName } from '../data/parameters'
import type { FeatureKind } from './plan'

/**
 * What a figure may be. Not what is usual: values outside cannot be meant (a spacing of -1), or would make the engine
 * divide by nothing.
 */
export type Limit = {
  /** The figure in plain words. */
  readonly label: string
  readonly unit: string
  readonly low: number
  readonly high: number
  /** `low` itself is not allowed, nor what is nearer to it than `least`. */
  readonly isAbove?: true
  /** 0 is allowed, but nothing between 0 and `least`. */
  readonly isNoneOrSome?: true
  readonly isWhole?: true
  /** Coverage does not hang on it, so that a result can still be given. */
  readonly isMinor?: true
}

/** Figures smaller than this but not 0 cannot be meant, and dividing by them leaves all bounds. */
const least = 1e-6

type Limits = Readonly<Record<string, Limit>>

/** What the pull of blossom, or the bees wanted, is made of. */
const noneOrSome: ReadonlySet<BoundedName> = new Set(['blossomDensity', 'appeal', 'backgroundBlossom', 'stockingRate'])

/** The hard bounds of a parameter, narrowed to `low` and `high` where those leave room for what cannot be meant. */
function bounded(name: BoundedName, label: string, unit: string, within: { low?: number; high?: number } = {}): Limit {
  const bounds = parameterBounds[name]
  const low = within.low ?? bounds.low
  const high = within.high ?? bounds.high
  const isNoneOrSome = noneOrSome.has(name)
  const isAbove = bounds.isOpen && low === bounds.low
  return { label, unit, low, high, ...(isAbove ? { isAbove } : {}), ...(isNoneOrSome ? { isNoneOrSome } : {}) }
}

const year: Limit = { label: 'year', unit: '', low: 1800, high: 2300, isWhole: true }
const planted = { planted: { ...year, label: 'year of planting' }, removed: { ...year, label: 'year of removal' } }
const vigour: Limit = { label: 'vigour', unit: '', low: 0, high: 1, isAbove: true }
const spacing = bounded('spacing', 'spacing', 'm', { high: 200 })
const rowSpacing = bounded('rowSpacing', 'row spacing', 'm', { high: 200 })
const femalesPerPlant: Limit = {
  label: 'number of females per plant',
  unit: '',
  low: 0,
  high: 10_000,
  isNoneOrSome: true,
}
const blossomDensity = bounded('blossomDensity', 'blossom density', 'flowers per m²', { high: 1_000_000 })
const appeal = bounded('appeal', 'appeal', '', { high: 1000 })
const direction: Limit = { label: 'direction', unit: 'degrees', low: -360, high: 360 }
const count: Limit = { label: 'number of plants', unit: '', low: 0, high: 2_000_000, isWhole: true }
const inRows = { spacing, rowSpacing, count, femalesPerPlant }

/** Properties of drawn things. */
export const featureLimits: Readonly<Record<FeatureKind, Limits>> = {
  row: { ...inRows, vigour, ...planted },
  block: { ...inRows, vigour, ...planted, bearing: { ...direction, label: 'bearing of the rows' } },
  plant: {
    spread: { label: 'spread', unit: 'm', low: 0, high: 200, isAbove: true },
    femalesPerPlant,
    vigour,
    ...planted,
  },
  bed: { vigour, ...planted },
  station: {
    height: { label: 'height', unit: 'm', low: 0, high: 100, isMinor: true },
    facing: { ...direction, label: 'facing', isMinor: true },
    overhang: { label: 'overhang', unit: 'mm', low: 0, high: 10_000, isMinor: true },
    since: { ...year, label: 'first year', isMinor: true },
    until: { ...year, label: 'last year', isMinor: true },
  },
  candidate: {},
  forage: { blossomDensity, appeal, ...planted },
  mud: {},
  keepout: {},
  boundary: {},
  windbreak: {},
}

/** Figures of an own crop; these five make a crop complete. */
export const cropLimits = {
  stockingRate: bounded('stockingRate', 'stocking rate', 'females per hectare', { high: 1_000_000 }),
  blossomDensity,
  appeal,
  spacing,
  rowSpacing,
} as const satisfies Limits

export const seasonYear: Limit = { label: 'year of the season', unit: '', low: 1800, high: 2300, isWhole: true }

/** How a station is used in a season. */
export const stationLimits = {
  tubes: { label: 'number of tubes', unit: '', low: 0, high: 10_000_000, isWhole: true },
  bore: { label: 'bore of the tubes', unit: 'mm', low: 0, high: 100, isAbove: true, isMinor: true },
  depth: { label: 'depth of the tubes', unit: 'mm', low: 0, high: 10_000, isAbove: true, isMinor: true },
} as const satisfies Limits

export const releaseLimits = {
  females: { label: 'number of female cocoons', unit: '', low: 0, high: 10_000_000, isWhole: true },
  males: { label: 'number of male cocoons', unit: '', low: 0, high: 10_000_000, isWhole: true },
} as const satisfies Limits

/** Where cocoons spend the winter. */
export const coldStoreLimits = {
  temperature: { label: 'temperature of the cold store', unit: '°C', low: -30, high: 40, isMinor: true },
} as const satisfies Limits

/** Order of a weather day's figures. */
export const weatherLimits: readonly Limit[] = [
  { label: 'lowest temperature', unit: '°C', low: -80, high: 60 },
  { label: 'highest temperature', unit: '°C', low: -80, high: 60 },
  { label: 'rain', unit: 'mm', low: 0, high: 2000 },
  { label: 'wind', unit: 'm/s', low: 0, high: 120 },
]

/** A number of things that was counted. */
export function counted(label: string): Limit {
  return { label, unit: '', low: 0, high: 10_000_000, isWhole: true, isMinor: true }
}

/** Own values of the site. */
export const siteLimits: Readonly<Record<SiteParameterName, Limit>> = {
  backgroundBlossom: bounded('backgroundBlossom', 'background blossom', 'flowers per m²', { high: 1_000_000 }),
  referenceCropShare: bounded('referenceCropShare', 'reference crop share', ''),
  spareTubes: bounded('spareTubes', 'share of spare tubes', '', { high: 100 }),
  typicalFlyingHours: bounded('typicalFlyingHours', 'typical flying hours', 'h'),
}

/** Own values of a bee species. */
export const beeLimits: Readonly<Record<BeeParameterName, Limit>> = {
  typicalForagingRadius: bounded('typicalForagingRadius', 'typical foraging radius', 'm', { low: 1, high: 10_000 }),
  maxForagingRange: bounded('maxForagingRange', 'maximum foraging range', 'm', { low: 1, high: 20_000 }),
  effectiveness: bounded('effectiveness', 'effectiveness', '', { low: 0.001, high: 100 }),
  emergence: bounded('emergence', 'emergence', '', { low: 0.001 }),
  establishment: bounded('establishment', 'establishment', '', { low: 0.001 }),
  malesPerFemale: bounded('malesPerFemale', 'number of males per female', '', { high: 100 }),
  lag: bounded('lag', 'days from release to nesting', 'days', { high: 100 }),
  spreadDays: bounded('spreadDays', 'spread of the nesting start', 'days', { low: 0.01, high: 100 }),
  nestingLife: bounded('nestingLife', 'nesting life', 'days', { low: 0.1, high: 365 }),
  tubesPerFemale: bounded('tubesPerFemale', 'number of tubes per female', '', { high: 1000 }),
  tubesUsedPerFemale: bounded('tubesUsedPerFemale', 'number of tubes used per female', '', { high: 1000 }),
  cellsPerTube: bounded('cellsPerTube', 'number of cells per tube', '', { high: 1000 }),
  femaleShare: bounded('femaleShare', 'share of females', ''),
  keepingOutside: bounded('keepingOutside', 'share alive after a winter outside', ''),
  keepingTakenIn: bounded('keepingTakenIn', 'share alive after a winter taken in', ''),
  flightFrom: bounded('flightFrom', 'temperature at which flight begins', '°C'),
  flightFull: bounded('flightFull', 'temperature of full flight', '°C'),
  boreMin: bounded('boreMin', 'smallest bore', 'mm', { high: 100 }),
  boreMax: bounded('boreMax', 'largest bore', 'mm', { high: 100 }),
  depthMin: bounded('depthMin', 'least depth', 'mm', { high: 10_000 }),
}

/** How a value breaks its limit; null when it keeps it. */
export function limitFault(value: number, limit: Limit): 'range' | 'whole' | null {
  const isHigh = value > limit.high
  const isLow = value < limit.low || (limit.isAbove === true && value < limit.low + least)
  const isInGap = limit.isNoneOrSome === true && value > 0 && value < least
  if (!Number.isFinite(value) || isHigh || isLow || isInGap) return 'range'
  return limit.isWhole && !Number.isInteger(value) ? 'whole' : null
}

/** What the limit allows, in words: "more than 0 and at most 200 m". */
export function limitText({ low, high, isAbove, isNoneOrSome, unit }: Limit): string {
  const amount = unit === '' ? `${high}` : `${high} ${unit}`
  if (isNoneOrSome) return `0, or from ${least.toFixed(6)} to ${amount}`
  return isAbove ? `more than ${low} and at most ${amount}` : `from ${low} to ${amount}`
}
