import type { Units } from '#geo/plan/plan'
import type { Report } from '#geo/report/report'
import type { Suggestion } from '#geo/siting/suggestion'
import { measureOf } from '../../text/units'
import { significant } from '../../text/words'
import { money } from './ask-words'

/** Square metres that more coverage comes to: ground of each planting times the share that it gains. */
export function areaGained({ plantings }: Pick<Suggestion, 'plantings'>, report: Pick<Report, 'plantings'>): number {
  const then = new Map(report.plantings.map(planting => [planting.id, planting]))
  return plantings.reduce((sum, { id, before }) => {
    const planting = then.get(id)
    if (before === null || planting === undefined || planting.coverage === null) return sum
    return sum + planting.area * (planting.coverage - before)
  }, 0)
}

/** "410 for each ha"; null where hardly any ground is gained. */
export function coveredCost(
  total: number,
  suggestion: Pick<Suggestion, 'plantings'>,
  report: Pick<Report, 'plantings'>,
  units: Units,
): string | null {
  const { toShown } = measureOf('area', units)
  const area = toShown(areaGained(suggestion, report))
  if (area < 1e-3) return null
  return `${money(significant(total / area, 2))} for each ${units === 'us' ? 'acre' : 'hectare'}`
}
