import { samplePlanting } from '../coverage/demand'
import { settingsFor } from '../data/settings'
import { isPlanting, isPresent, nameOf, type Plan } from '../plan/plan'
import { planeOf } from '../space/plane'

/** Two rules of thumb for one planting: females by its area, and by its plants where such a rule exists. */
export type RulesOfThumb = {
  readonly id: string
  readonly name: string
  readonly crop: string
  /** Blue orchard bee females that nest: area x stocking rate x vigour. */
  readonly byArea: number
  /** Females per plant x plants x vigour; null for beds and for crops that have no such rule. */
  readonly byPlant: { readonly low: number; readonly value: number; readonly high: number } | null
  /** Which of them the planting follows: `plant` where it sets its own females per plant. */
  readonly inUse: 'area' | 'plant'
}

/**
 * What each planting would want by the two rules in use among growers. They clash: a rate per hectare grew up in dense
 * orchards, a number per tree among large garden trees. Both are shown; neither is hidden in the other.
 */
export function rulesOfThumb(plan: Plan, year: number): readonly RulesOfThumb[] {
  const settings = settingsFor(plan)
  const plane = planeOf(plan.features)
  return plan.features
    .filter(isPlanting)
    .filter(feature => isPresent(feature, year))
    .flatMap(feature => {
      const { properties } = feature
      const crop = settings.crops[properties.crop]
      if (crop === undefined) return []
      const { points, area } = samplePlanting(feature, crop, plane)
      const vigour = properties.vigour ?? 1
      const plants = (points.length / 2) * vigour
      const rule = properties.kind === 'bed' ? null : crop.femalesPerPlant
      return [
        {
          id: feature.id,
          name: nameOf(feature),
          crop: properties.crop,
          byArea: (plants * area * crop.stockingRate) / 10000,
          byPlant: rule && { low: rule.low * plants, value: rule.value * plants, high: rule.high * plants },
          inUse: properties.kind !== 'bed' && properties.femalesPerPlant !== undefined ? 'plant' : 'area',
        },
      ]
    })
}
