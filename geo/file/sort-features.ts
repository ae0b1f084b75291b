import { isRecord, type Path, shortened } from '../plan/place'
import type { Feature, FeatureKind } from '../plan/plan'
import type { Problem } from '../problem'
import { featureShapes, geometryTypes, isFeatureKind, propertyNames } from './format'
import type { Stored } from './migrate'
import { faultAt, shapeProblems } from './shape'

export type SortedFeatures = {
  readonly features: readonly Feature[]
  /** Of other kinds, or without a place: not part of the plan, but written back. */
  readonly kept: readonly unknown[]
  readonly problems: readonly Problem[]
  /** What keeps the file from being opened. */
  readonly errors: readonly Problem[]
}

/** Features of known kinds with their shape checked; the others kept aside. */
export function sortFeatures(entries: unknown): SortedFeatures {
  const features: Feature[] = []
  const kept: unknown[] = []
  const problems: Problem[] = []
  const errors: Problem[] = []
  const unknownKinds = new Map<string, number>()
  if (!Array.isArray(entries)) {
    const code = entries === undefined ? 'member-missing' : 'wrong-type'
    return { features, kept, problems, errors: [faultAt(code, ['features'], entries, { expected: 'a list' })] }
  }
  entries.forEach((entry: unknown, index) => {
    const path = ['features', index]
    if (!isRecord(entry)) {
      errors.push(faultAt('wrong-type', path, entry, { expected: 'a group of members' }))
      return
    }
    const properties = isRecord(entry.properties) ? entry.properties : {}
    const { kind } = properties
    if (!isFeatureKind(kind)) {
      const words = typeof kind === 'string' ? `“${shortened(kind)}”` : 'no kind given'
      unknownKinds.set(words, (unknownKinds.get(words) ?? 0) + 1)
      kept.push(entry)
      return
    }
    const name = nameOf(entry, properties, index)
    if (entry.geometry === null || entry.geometry === undefined) {
      problems.push({ ...faultAt('feature-unplaced', [...path, 'geometry'], null, { name }), severity: 'warning' })
      kept.push(entry)
      return
    }
    const wrong = featureProblems(entry, kind, path, name)
    for (const each of wrong) errors.push(each)
    if (wrong.length === 0) features.push(withoutNulls(entry, kind))
  })
  for (const [kind, count] of unknownKinds) {
    problems.push({ code: 'features-kept', severity: 'note', at: 'features', values: { kind, count } })
  }
  return { features, kept, problems, errors }
}

function nameOf(entry: Stored, properties: Stored, index: number): string {
  for (const name of [properties.name, entry.id]) if (typeof name === 'string' && name !== '') return shortened(name)
  return `Feature ${index + 1}`
}

function featureProblems(entry: Stored, kind: FeatureKind, path: Path, name: string): Problem[] {
  const type = isRecord(entry.geometry) ? entry.geometry.type : undefined
  if (typeof type === 'string' && !geometryTypes[kind].includes(type)) {
    const expected = geometryTypes[kind].join(' or ')
    return [faultAt('wrong-geometry', [...path, 'geometry', 'type'], type, { name, kind, expected })]
  }
  return shapeProblems(featureShapes[kind], entry, path)
}

/** A property that is null was not given: programs that keep features as table rows write null for an empty cell. */
function withoutNulls(entry: Stored, kind: FeatureKind): Feature {
  const known = propertyNames(kind)
  const properties = entry.properties as Stored
  const isEmpty = ([name, value]: [string, unknown]): boolean => value === null && known.includes(name)
  const members = Object.entries(properties)
  // The shape was checked, so that the file's own objects are features as they stand.
  if (!members.some(isEmpty)) return entry as unknown as Feature
  return { ...entry, properties: Object.fromEntries(members.filter(member => !isEmpty(member))) } as unknown as Feature
}
