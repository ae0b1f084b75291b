import type { Basis, Parameter, Unit } from './parameter'
import type { SourceKey } from './sources'

/** Low, value, high. */
export type Spread = readonly [low: number, value: number, high: number]

/** One figure of a table, written on a line or two. */
export function figure(
  unit: Unit,
  [low, value, high]: Spread,
  basis: Basis,
  source: SourceKey | readonly SourceKey[],
  about: string,
): Parameter {
  return { unit, value, low, high, basis, source, about }
}

/** A figure of our own; `about` gives the reason. */
export function assumed(unit: Unit, spread: Spread, about: string): Parameter {
  return figure(unit, spread, 'assumed', 'assumed', about)
}

/** The sources of a figure as a list. */
export function sourcesOf(parameter: Parameter): readonly SourceKey[] {
  return typeof parameter.source === 'string' ? [parameter.source] : parameter.source
}

/** The values of a table alone, as plain numbers. */
export function valuesOf<Name extends string>(
  figures: Readonly<Record<Name, Pick<Parameter, 'value'>>>,
): Readonly<Record<Name, number>> {
  const entries = Object.entries<Pick<Parameter, 'value'>>(figures).map(([name, { value }]) => [name, value])
  return Object.fromEntries(entries) as Record<Name, number>
}
