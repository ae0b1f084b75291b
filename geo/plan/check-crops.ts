import { crops as tableCrops } from '../data/crops'
import { cropName, settingsFor } from '../data/settings'
import { checkFigures } from './check-figures'
import { cropLimits } from './limits'
import { pathText, shortened } from './place'
import { isPlanting, nameOf, type Plan } from './plan'
import type { ReportProblem } from './report-problem'

const figures = Object.keys(cropLimits) as (keyof typeof cropLimits)[]

/** Own crops, and whether every planting's crop is known. */
export function checkCrops(plan: Plan, report: ReportProblem): void {
  const { crops } = settingsFor({ parameters: {}, crops: plan.crops })
  const used = new Set(plan.features.filter(isPlanting).map(({ properties }) => properties.crop))
  for (const [id, crop] of Object.entries(plan.crops)) {
    const at = pathText(['plan', 'crops', id])
    const name = shortened(cropName(id, plan.crops))
    checkFigures(crop, cropLimits, { name: `The crop ${name}`, at, path: at }, report)
    const isComplete = Object.hasOwn(crops, id)
    // A crop that nothing is planted with spoils no result.
    const severity = used.has(id) && !isComplete ? 'error' : 'warning'
    const broken = brokenBase(plan, id)
    if (broken !== null) report(severity, broken.code, at, { name, base: shortened(broken.base), isComplete })
    else if (!isComplete) report(severity, 'crop-incomplete', at, { name, missing: missingFigures(plan, id) })
  }
  for (const feature of plan.features) {
    if (!isPlanting(feature)) continue
    const { crop } = feature.properties
    if (Object.hasOwn(plan.crops, crop) || Object.hasOwn(tableCrops, crop)) continue
    report('error', 'crop-unknown', feature.id, { name: shortened(nameOf(feature)), crop: shortened(crop) })
  }
}

/** Follows `basedOn` from crop to crop; null where it ends at a crop that there is. */
function brokenBase(plan: Plan, id: string): { code: 'crop-loop' | 'crop-base-unknown'; base: string } | null {
  const seen = new Set<string>()
  for (let at = id; ; ) {
    const isInTable = Object.hasOwn(tableCrops, at)
    const own = Object.hasOwn(plan.crops, at) ? plan.crops[at] : undefined
    if (own === undefined) return isInTable ? null : { code: 'crop-base-unknown', base: at }
    // An own apple that is based on apple means the built-in one.
    if (seen.has(at)) return isInTable ? null : { code: 'crop-loop', base: at }
    seen.add(at)
    if (own.basedOn === undefined) return null
    at = own.basedOn
  }
}

function missingFigures(plan: Plan, id: string): string {
  const missing = new Set(figures)
  for (let at: string | undefined = id; at !== undefined; ) {
    const own: Plan['crops'][string] | undefined = Object.hasOwn(plan.crops, at) ? plan.crops[at] : undefined
    for (const figure of figures) if (own?.[figure] !== undefined) missing.delete(figure)
    at = own?.basedOn
  }
  return [...missing].map(figure => cropLimits[figure].label).join(', ')
}
