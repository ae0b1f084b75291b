import { type BloomRegion, beeIds } from '../data/own'
import { checkPlan } from '../plan/check'
import { foundText, isRecord, type Path, pathText, shortened } from '../plan/place'
import type { Feature, FeatureKind, Plan } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { centreOf } from '../space/plane'
import { currentVersion, featureShapes, geometryTypes, isFeatureKind, planMember, propertyNames } from './format'
import { migrate, type Stored } from './migrate'
import { parseJson } from './parse-json'
import { shapeProblems } from './shape'

const mostProblems = 50

/**
 * Text of a plan file to a plan: the only way in.
 *
 * What cannot be understood (no JSON, wrong types, missing members, a newer version) gives `ok: false` and nothing is
 * opened. What can be understood but makes no sense (a boundary that crosses itself, a spacing of -1) gives `ok: true`
 * with problems of severity error among its problems: the plan can be opened, seen and put right, so nothing is lost,
 * and `evaluate` refuses it until then.
 *
 * What this version does not know is kept: members where they were found; features of unknown kinds, and features
 * without a place, in `besides.features`, written back after the known ones.
 */
export function readPlan(text: string): Outcome<Plan> {
  const parsed = parseJson(text)
  if (!parsed.ok) return parsed
  const stored = upgraded(parsed.value)
  if (!stored.ok) return stored
  const { plan: member, features: entries } = stored.value
  const shapes = [
    ...shapeProblems(planMember, member, ['plan']),
    ...(Array.isArray(entries)
      ? []
      : [
          problem(entries === undefined ? 'member-missing' : 'wrong-type', ['features'], entries, {
            expected: 'a list',
          }),
        ]),
  ]
  const sorted = sortFeatures(Array.isArray(entries) ? entries : [])
  shapes.push(...sorted.problems.filter(({ severity }) => severity === 'error'))
  if (shapes.length > 0) return { ok: false, problems: capped(shapes) }
  const { plan, notes } = assemble(stored.value, sorted)
  const reserved = reservedNames(plan)
  if (reserved.length > 0) return { ok: false, problems: capped(reserved) }
  return { ok: true, value: plan, problems: [...capped(sorted.problems), ...notes, ...checkPlan(plan)] }
}

function problem(code: Problem['code'], path: Path, found: unknown, values: Problem['values'] = {}): Problem {
  const at = pathText(path)
  return { code, severity: 'error', at, values: { path: at || 'The file', found: foundText(found), ...values } }
}

/** The stored file in the current version. */
function upgraded(value: unknown): Outcome<Stored> {
  const fail = (one: Problem): Outcome<never> => ({ ok: false, problems: [one] })
  if (!isRecord(value) || value.type !== 'FeatureCollection') {
    const found = isRecord(value) && typeof value.type === 'string' ? value.type : value
    return fail(problem('not-a-feature-collection', isRecord(value) ? ['type'] : [], found))
  }
  if (value.plan === undefined) return fail(problem('no-plan', ['plan'], undefined))
  if (!isRecord(value.plan))
    return fail(problem('wrong-type', ['plan'], value.plan, { expected: 'a group of members' }))
  const { version } = value.plan
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return fail(problem('no-version', ['plan', 'version'], version, { known: currentVersion }))
  }
  if (version > currentVersion) {
    return fail(problem('newer-version', ['plan', 'version'], version, { version, known: currentVersion }))
  }
  return { ok: true, value: migrate(value, version, currentVersion), problems: [] }
}

type Sorted = { readonly features: Feature[]; readonly kept: unknown[]; readonly problems: Problem[] }

/** Features of known kinds with their shape checked; the others kept aside. */
function sortFeatures(entries: readonly unknown[]): Sorted {
  const features: Feature[] = []
  const kept: unknown[] = []
  const problems: Problem[] = []
  const unknownKinds = new Map<string, number>()
  entries.forEach((entry, index) => {
    const path = ['features', index]
    if (!isRecord(entry)) {
      problems.push(problem('wrong-type', path, entry, { expected: 'a group of members' }))
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
      problems.push({ ...problem('feature-unplaced', [...path, 'geometry'], null, { name }), severity: 'warning' })
      kept.push(entry)
      return
    }
    const wrong = featureProblems(entry, kind, path, name)
    problems.push(...wrong)
    if (wrong.length === 0) features.push(withoutNulls(entry, kind))
  })
  for (const [kind, count] of unknownKinds) {
    problems.push({ code: 'features-kept', severity: 'note', at: 'features', values: { kind, count } })
  }
  return { features, kept, problems }
}

function nameOf(entry: Stored, properties: Stored, index: number): string {
  for (const name of [properties.name, entry.id]) if (typeof name === 'string' && name !== '') return shortened(name)
  return `Feature ${index + 1}`
}

function featureProblems(entry: Stored, kind: FeatureKind, path: Path, name: string): Problem[] {
  const type = isRecord(entry.geometry) ? entry.geometry.type : undefined
  if (typeof type === 'string' && !geometryTypes[kind].includes(type)) {
    const expected = geometryTypes[kind].join(' or ')
    return [problem('wrong-geometry', [...path, 'geometry', 'type'], type, { name, kind, expected })]
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

function assemble(stored: Stored, { features, kept }: Sorted): { plan: Plan; notes: Problem[] } {
  const { type: _, plan: member, features: __, ...top } = stored
  const {
    version,
    name,
    notes: words,
    timeZone,
    units,
    bee,
    bloomRegion,
    parameters,
    crops,
    seasons,
    ...unknown
  } = member as Partial<Plan> & Stored
  const notes: Problem[] = []
  const used = <T extends string>(value: T | undefined, path: string, label: string, fallback: T): T => {
    if (value !== undefined) return value
    notes.push({ code: 'default-used', severity: 'note', at: path, values: { member: label, used: fallback } })
    return fallback
  }
  const plan: Plan = {
    version: currentVersion,
    name: name ?? '',
    notes: words ?? '',
    timeZone: timeZone ?? 'UTC',
    units: units ?? 'metric',
    bee: used(bee, 'plan.bee', 'bee', beeIds[0]),
    bloomRegion: used(bloomRegion, 'plan.bloomRegion', 'bloom region', likelyRegion(features)),
    parameters: parameters ?? {},
    crops: crops ?? {},
    seasons: seasons ?? [],
    features,
    besides: {
      ...top,
      ...(Object.keys(unknown).length > 0 ? { plan: unknown } : {}),
      ...(kept.length > 0 ? { features: kept } : {}),
    },
  }
  return { plan, notes }
}

/** The bloom region nearest to where the plan lies: the Americas, the British Isles, or else the continent. */
function likelyRegion(features: readonly Feature[]): BloomRegion {
  const [lng, lat] = centreOf(features) ?? [-120, 45]
  if (lng < -30) return 'maritime-northwest'
  return lng < 2 && lat > 49.9 ? 'southern-england' : 'continental'
}

/**
 * Ids and crop names serve as member names all through a plan, where a word that every object already carries
 * (`toString`) would be found without having been given.
 */
function reservedNames(plan: Plan): Problem[] {
  return plan.features.flatMap((feature, index) => {
    const names: [string, Path][] = [[feature.id, ['features', index, 'id']]]
    if ('crop' in feature.properties) names.push([feature.properties.crop, ['features', index, 'properties', 'crop']])
    return names
      .filter(([name]) => Object.hasOwn(Object.prototype, name))
      .map(([key, path]) => problem('forbidden-key', path, key, { key }))
  })
}

function capped(problems: readonly Problem[]): Problem[] {
  if (problems.length <= mostProblems) return [...problems]
  const count = problems.length - mostProblems
  const { severity } = problems[mostProblems]!
  return [...problems.slice(0, mostProblems), { code: 'more-problems', severity, at: '', values: { count } }]
}
