import type { SourceKey } from './sources'

/**
 * How a figure is known: `measured` was read in its source, `derived` was worked out from one (`about` says how),
 * `assumed` is our own choice (`about` says why).
 */
export type Basis = 'measured' | 'derived' | 'assumed'

export type Unit =
  | 'm'
  | 'mm'
  | 'd'
  | 'h'
  | 's'
  | 'degC'
  | 'degC d'
  | 'm/s'
  | '1'
  | 'share'
  | 'females/ha'
  | 'females/plant'
  | 'flowers/m2'
  | 'flowers/plant'
  | 'flowers/m'
  | 'cells'
  | 'tubes'
  | 'portions'
  | 'females'
  /** In whatever currency the grower counts. */
  | 'money'

/** A figure of the world, with its range and where it comes from. `low <= value <= high`. */
export type Parameter = {
  readonly unit: Unit
  readonly value: number
  readonly low: number
  readonly high: number
  readonly basis: Basis
  readonly source: SourceKey | readonly SourceKey[]
  readonly about: string
}
