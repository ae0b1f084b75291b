import type { Units } from '#geo/plan/plan'
import type { Report } from '#geo/report/report'
import { significant } from '#geo/wording/plain'
import { measureOf } from '../../text/units'

type Before = readonly { readonly id: string; readonly before: number | null }[]

/** Cost of covering a hectare or an acre: the sum to two figures, and what it is for. */
export type PerArea = { readonly cost: number; readonly per: string }

/** Square metres that more coverage comes to: ground of each planting times the share that it gains. */
export function areaGained(plantings: Before, report: Pick<Report, 'plantings'>): number {
  const before = new Map(plantings.map(planting => [planting.id, planting.before]))
  return report.plantings.reduce((sum, { id, area, coverage }) => {
    const now = before.get(id) ?? null
    return now === null || coverage === null ? sum : sum + area * (coverage - now)
  }, 0)
}

/** Square metres covered: ground of each planting times its coverage. */
export function areaCovered(report: Pick<Report, 'plantings'>): number {
  return report.plantings.reduce((sum, { area, coverage }) => sum + area * (coverage ?? 0), 0)
}

/** What `total` comes to for each hectare or acre; null where hardly any ground is covered. */
export function costPerArea(
  total: number,
  { area, isGain, units }: { readonly area: number; readonly isGain: boolean; readonly units: Units },
): PerArea | null {
  const shown = measureOf('area', units).toShown(area)
  if (shown < 1e-3 || total <= 0) return null
  const per = `for each ${units === 'us' ? 'acre' : 'hectare'} ${isGain ? 'more ' : ''}covered`
  return { cost: significant(total / shown, 2), per }
}
