import { cropName } from '#geo/data/settings'
import { type Feature, isPlanting, type Plan } from '#geo/plan/plan'
import { kindNames } from '../text/names'
import { areaText } from '../text/units'
import { counted } from '../text/words'
import { measured } from './measures'

/** The name that was given, or else the kind: ids are for files. */
export function titleOf(feature: Feature): string {
  return feature.properties.name || `Unnamed ${kindNames[feature.properties.kind].one}`
}

/** A crop by name: the grower's own or the table's. */
export function cropTitle(plan: Plan, id: string): string {
  return cropName(id, plan.crops)
}

/**
 * What a list says behind a thing's name: "Apple; 37 plants; 0.042 ha planted". Plants stand for the ground of their
 * spacings, which is not quite that of an outline drawn round them.
 */
export function detailsOf(plan: Plan, feature: Feature): string {
  const { plants, area } = measured(plan, feature)
  const parts = [
    isPlanting(feature) ? cropTitle(plan, feature.properties.crop) : '',
    plants === null ? '' : counted(plants, 'plant'),
    area === null ? '' : areaText(area, plan.units) + (plants === null ? '' : ' planted'),
  ]
  return parts.filter(Boolean).join('; ')
}
