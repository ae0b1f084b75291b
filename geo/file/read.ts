import { type BloomRegion, beeIds } from '../data/own'
import { checkPlan } from '../plan/check'
import { isRecord, type Path } from '../plan/place'
import type { Feature, Plan } from '../plan/plan'
import type { Outcome, Problem } from '../problem'
import { centreOf } from '../space/plane'
import { currentVersion, planMember } from './format'
import { migrate, type Stored } from './migrate'
import { parseJson } from './parse-json'
import { capped, faultAt, shapeProblems } from './shape'
import { type SortedFeatures, sortFeatures } from './sort-features'

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
  const sorted = sortFeatures(entries)
  const shapes = [...shapeProblems(planMember, member, ['plan']), ...sorted.errors]
  if (shapes.length > 0) return { ok: false, problems: capped(shapes, mostProblems) }
  const { plan, notes } = assemble(stored.value, sorted)
  const reserved = reservedNames(plan)
  if (reserved.length > 0) return { ok: false, problems: capped(reserved, mostProblems) }
  return { ok: true, value: plan, problems: [...capped(sorted.problems, mostProblems), ...notes, ...checkPlan(plan)] }
}

/** The stored file in the current version. */
function upgraded(value: unknown): Outcome<Stored> {
  const fail = (one: Problem): Outcome<never> => ({ ok: false, problems: [one] })
  if (!isRecord(value) || value.type !== 'FeatureCollection') {
    const found = isRecord(value) && typeof value.type === 'string' ? value.type : value
    return fail(faultAt('not-a-feature-collection', isRecord(value) ? ['type'] : [], found))
  }
  if (value.plan === undefined) return fail(faultAt('no-plan', ['plan'], undefined))
  if (!isRecord(value.plan))
    return fail(faultAt('wrong-type', ['plan'], value.plan, { expected: 'a group of members' }))
  const { version } = value.plan
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return fail(faultAt('no-version', ['plan', 'version'], version, { known: currentVersion }))
  }
  if (version > currentVersion) {
    return fail(faultAt('newer-version', ['plan', 'version'], version, { version, known: currentVersion }))
  }
  return { ok: true, value: migrate(value, version, currentVersion), problems: [] }
}

function assemble(stored: Stored, { features, kept }: SortedFeatures): { plan: Plan; notes: Problem[] } {
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
    lots,
    pictures,
    tiles,
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
    ...(lots && { lots }),
    ...(pictures && { pictures }),
    ...(tiles && { tiles }),
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
      .map(([key, path]) => faultAt('forbidden-key', path, key, { key }))
  })
}
