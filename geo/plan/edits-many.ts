import type { Edit } from './edits'
import { patched } from './edits'
import { memberWords, things } from './edits-wording'
import { featureLimits } from './limits'
import { type Feature, isPlanting, isStation, type Plan, type Station } from './plan'
import { wholeRows } from './whole-rows'

/** Properties that many things can be given at once; `null` takes one away. */
export type SharedPatch = {
  readonly crop?: string
  readonly cultivar?: string | null
  readonly spacing?: number | null
  readonly rowSpacing?: number | null
  readonly vigour?: number | null
  readonly planted?: number | null
  readonly removed?: number | null
  /** Of stations. */
  readonly height?: number | null
  readonly facing?: number | null
  readonly overhang?: number | null
  readonly support?: NonNullable<Station['properties']['support']> | null
}

export type SharedName = keyof SharedPatch

/** Whether things of this kind have such a property at all. */
export function canHave(feature: Feature, name: SharedName): boolean {
  if (name === 'crop' || name === 'cultivar') return isPlanting(feature)
  if (name === 'support') return isStation(feature)
  return Object.hasOwn(featureLimits[feature.properties.kind], name)
}

/** The same values for many things, each as far as its kind has them; one step of undo. */
export function setManyProperties(ids: readonly string[], patch: SharedPatch): Edit {
  const wanted = new Set(ids)
  const names = Object.keys(patch) as SharedName[]
  const concerned = (feature: Feature) => wanted.has(feature.id) && names.some(name => canHave(feature, name))
  return {
    label: plan => `Change ${memberWords(names)} of ${things(plan.features.filter(concerned))}`,
    apply(plan: Plan) {
      const changed = new Set<Feature>()
      const features = plan.features.map(feature => {
        if (!concerned(feature)) return feature
        const values = names.filter(name => canHave(feature, name)).map(name => [name, patch[name] ?? undefined])
        const properties = patched(feature.properties, Object.fromEntries(values))
        if (properties === feature.properties) return feature
        const after = { ...feature, properties } as Feature
        changed.add(after)
        return after
      })
      if (changed.size === 0) return plan
      const whole = wholeRows(plan, [...changed])
      const byOld = new Map([...changed].map((feature, i) => [feature, whole[i]!]))
      return { ...plan, features: features.map(feature => byOld.get(feature) ?? feature) }
    },
  }
}
