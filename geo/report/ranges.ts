import type { Plan } from '../plan/plan'
import { modelOf } from './model'
import type { Influence, Range, Report, ReportRanges } from './report'

/** The figures that coverage hangs on, in the words of `settingsFor`: each is taken to both ends of its range in turn. */
const varied = [
  'crop.stockingRate',
  'crop.blossomDensity',
  'bee.typicalForagingRadius',
  'bee.effectiveness',
  'bee.emergence',
  'bee.establishment',
  'bee.lag',
  'bee.spreadDays',
  'bee.nestingLife',
  'site.backgroundBlossom',
  'site.referenceCropShare',
] as const

/**
 * Ranges of a report's figures: one parameter at a time goes to the low and the high end of its range. The factors by
 * which a figure moves are combined by the root of their logarithms' squares, as for figures that err independently:
 * factors, because most parameters multiply, and a small figure's range then stays above zero. null where the plan has
 * no report.
 */
export function reportRanges(plan: Plan, year: number): ReportRanges | null {
  const report = quickReport(plan, year)
  if (report === null) return null
  const ends = varied.map(parameter => ({
    parameter,
    low: quickReport(plan, year, { [parameter]: 'low' }) ?? report,
    high: quickReport(plan, year, { [parameter]: 'high' }) ?? report,
  }))
  const reports = ends.flatMap(({ low, high }) => [[low, high]] as const)
  const rangeOf = (figure: (report: Report) => number | null, most = Number.POSITIVE_INFINITY): Range | null => {
    const value = figure(report)
    if (value === null) return null
    if (!(value > 0)) return { low: value, high: value }
    let below = 0
    let above = 0
    for (const pair of reports) {
      const moves = pair.map(each => logRatio(figure(each) ?? value, value))
      below += Math.min(0, ...moves) ** 2
      above += Math.max(0, ...moves) ** 2
    }
    return { low: value * Math.exp(-Math.sqrt(below)), high: Math.min(most, value * Math.exp(Math.sqrt(above))) }
  }
  const plantings = report.plantings.map(({ id }, i) => [
    id,
    {
      coverage: rangeOf(each => each.plantings[i]!.coverage, 1),
      wanted: rangeOf(each => each.plantings[i]!.wanted)!,
      supplied: rangeOf(each => each.plantings[i]!.supplied),
    },
  ])
  const stations = report.stations.map(({ id }, i) => [id, { females: rangeOf(each => each.stations[i]!.females)! }])
  return {
    orchard: {
      coverage: rangeOf(each => each.orchard.coverage, 1),
      wanted: rangeOf(each => each.orchard.wanted)!,
      supplied: rangeOf(each => each.orchard.supplied)!,
    },
    plantings: Object.fromEntries(plantings),
    stations: Object.fromEntries(stations),
    influences: influencesOf(report, ends),
  }
}

function influencesOf(
  report: Report,
  ends: readonly { parameter: string; low: Report; high: Report }[],
): readonly Influence[] {
  const { coverage } = report.orchard
  if (coverage === null) return []
  const all = ends.map(({ parameter, low, high }) => ({
    parameter,
    low: low.orchard.coverage ?? coverage,
    high: high.orchard.coverage ?? coverage,
  }))
  const width = ({ low, high }: Influence) => Math.max(Math.abs(low - coverage), Math.abs(high - coverage))
  return all.sort((a, b) => width(b) - width(a))
}

function quickReport(plan: Plan, year: number, vary: Readonly<Record<string, 'low' | 'high'>> = {}): Report | null {
  const model = modelOf(plan, year, vary)
  return model.ok ? model.value.report({ withLimits: false }) : null
}

/** ln(a / b), held to a factor of a thousand either way, so that a figure that falls to nothing stays a number. */
function logRatio(a: number, b: number): number {
  return Math.log(Math.min(1000, Math.max(0.001, a / b)))
}
