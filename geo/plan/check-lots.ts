import { checkFigures } from './check-figures'
import { doubtShare } from './check-records'
import { counted, type Limit, seasonYear } from './limits'
import { shortened } from './place'
import { isStation, type Plan } from './plan'
import type { ReportProblem } from './report-problem'

const lotLimits = {
  count: counted('number of cocoons'),
  femaleShare: { label: 'share of females', unit: '', low: 0, high: 1, isMinor: true },
  season: { ...seasonYear, isMinor: true },
} as const satisfies Readonly<Record<string, Limit>>

/**
 * Lots of cocoons: their figures, whether their names are clear, and that no more is set out than a lot holds; with
 * `year`, set out in that season alone.
 */
export function checkLots(plan: Plan, year: number | undefined, report: ReportProblem): void {
  const setOut = cocoonsByLot(plan, year)
  const stations = new Set(plan.features.filter(isStation).map(({ id }) => id))
  const seen = new Set<string>()
  for (const [index, lot] of (plan.lots ?? []).entries()) {
    const path = `plan.lots[${index}]`
    const name = `Lot ${shortened(lot.id)}`
    const at = path
    checkFigures(lot, lotLimits, { name, at, path }, report)
    if (seen.has(lot.id)) report('warning', 'lot-repeated', at, { name })
    seen.add(lot.id)
    if (lot.station !== undefined && !stations.has(lot.station)) {
      report('note', 'lot-station-unknown', at, { name, station: shortened(lot.station) })
    }
    const { count, femaleShare } = lot
    const out = setOut.get(lot.id) ?? 0
    if (typeof count === 'number' && out > count) report('warning', 'lot-overdrawn', at, { name, out, count })
    if (typeof femaleShare === 'number' && femaleShare >= 0 && femaleShare <= 1) {
      doubtShare(femaleShare, { name, at, year: lot.season ?? null }, report)
    }
  }
}

/** Cocoons set out from each lot; males that were not counted add nothing. A repeated season is never used. */
function cocoonsByLot({ seasons }: Plan, year: number | undefined): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  const used = new Map(seasons.toReversed().map(season => [season.year, season]))
  for (const season of used.values()) {
    if (year !== undefined && season.year !== year) continue
    for (const { releases } of Object.values(season.stations ?? {})) {
      for (const { lot, females, males = 0 } of releases ?? []) {
        if (lot !== undefined) sums.set(lot, (sums.get(lot) ?? 0) + females + males)
      }
    }
  }
  return sums
}
