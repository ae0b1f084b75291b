import { featureLimits, limitFault, limitText } from '../plan/limits'
import type { FeatureKind } from '../plan/plan'
import { propertyNames } from './format'
import { tidyName } from './spelling'

/** Where a station may hang; the only text of a plan that is not free. */
const supports = ['post', 'wall', 'fence', 'branch']

/** A number as data files write it; null where it is none. */
export function plainNumber(text: string): number | null {
  if (text.length > 40 || !/^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(text)) return null
  const value = Number(text)
  return Number.isFinite(value) ? value : null
}

/** The name of a thing that may have been written under its id for want of one. */
export function nameGiven(written: string, { id, name }: Readonly<Record<string, unknown>>): string {
  const isId = typeof id === 'string' && !name && (written === id || written.startsWith(`${id} `))
  return isId ? '' : written
}

/**
 * What a file gives of a kind's properties, name and crop aside: figures as numbers within their limits, texts on one
 * line. What cannot be meant is handed to `leave` and left out.
 */
export function givenProperties(
  kind: FeatureKind,
  given: Readonly<Record<string, unknown>>,
  leave: (property: string, found: string, allowed: string) => void = () => {},
): Readonly<Record<string, string | number>> {
  const properties: Record<string, string | number> = {}
  for (const name of propertyNames(kind)) {
    if (name === 'kind' || name === 'name' || name === 'crop' || !Object.hasOwn(given, name)) continue
    const value = given[name]
    if (typeof value !== 'string' && typeof value !== 'number') continue
    if (value === '') continue
    const limit = featureLimits[kind][name]
    if (limit === undefined) {
      const text = tidyName(String(value))
      if (text === '') continue
      if (name === 'support' && !supports.includes(text)) leave(name, text, supports.join(', '))
      else properties[name] = text
      continue
    }
    const figure = typeof value === 'number' ? value : plainNumber(value.trim())
    if (figure !== null && limitFault(figure, limit) === null) properties[name] = figure
    else leave(limit.label, String(value), limitText(limit))
  }
  return properties
}
