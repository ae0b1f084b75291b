import { type Feature, isForage, isPlanting, isPresent } from '#geo/plan/plan'
import type { ToolContext } from './tool'

/** What is on the map in the year shown: what was grubbed up or is not planted yet cannot be taken hold of. */
export function presentIn({ plan, year }: Pick<ToolContext, 'plan' | 'year'>): readonly Feature[] {
  return plan.features.filter(feature => !(isPlanting(feature) || isForage(feature)) || isPresent(feature, year))
}
