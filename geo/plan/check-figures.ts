import { featureLimits, type Limit, limitFault, limitText } from './limits'
import { shortened } from './place'
import { isForage, isPlanting, isPresent, nameOf, type Plan } from './plan'
import type { ReportProblem } from './report-problem'

/** Whose figures are looked at: how sentences begin, where a click leads, and the path in the file. */
export type Owner = { readonly name: string; readonly at: string; readonly path: string }

/** Figures against their limits; what is not given or has no limit is passed over. */
export function checkFigures(
  values: object,
  limits: Readonly<Record<string, Limit>>,
  owner: Owner,
  report: ReportProblem,
): void {
  for (const [key, limit] of Object.entries(limits)) {
    const value = (values as Readonly<Record<string, unknown>>)[key]
    if (typeof value === 'number') checkFigure(value, limit, { ...owner, path: `${owner.path}.${key}` }, report)
  }
}

export function checkFigure(value: number, limit: Limit, owner: Owner, report: ReportProblem): void {
  const fault = limitFault(value, limit)
  if (fault === null) return
  const severity = limit.isMinor ? 'warning' : 'error'
  const found = Number.isFinite(value) ? value : 'no number'
  const figure = { name: owner.name, label: limit.label, found, path: owner.path }
  if (fault === 'whole') report(severity, 'not-whole', owner.at, figure)
  else report(severity, 'out-of-range', owner.at, { ...figure, allowed: limitText(limit) })
}

/** Figures given to drawn things. */
export function checkProperties(plan: Plan, report: ReportProblem): void {
  for (const [index, feature] of plan.features.entries()) {
    const { id, properties } = feature
    const name = shortened(nameOf(feature))
    const path = `features[${index}].properties`
    checkFigures(properties, featureLimits[properties.kind], { name, at: id, path }, report)
    if (!isPlanting(feature) && !isForage(feature)) continue
    const { planted, removed } = feature.properties
    if (planted === undefined || removed === undefined || removed > planted) continue
    report('warning', 'never-planted', id, { name, planted, removed })
  }
}

/** Forage areas that carry no blossom; with `year`, of those that are there then. */
export function checkForage(plan: Plan, year: number | undefined, report: ReportProblem): void {
  for (const feature of plan.features) {
    if (!isForage(feature) || (year !== undefined && !isPresent(feature, year))) continue
    const { blossomDensity } = feature.properties
    if (blossomDensity !== undefined && blossomDensity !== 0) continue
    const name = shortened(nameOf(feature))
    report('note', 'forage-no-blossom', feature.id, { name, isGiven: blossomDensity !== undefined })
  }
}
