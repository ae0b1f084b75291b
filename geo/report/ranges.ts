import type { Plan } from '../plan/plan'
import { modelOf } from './model'
import type { Influence, Range, Report, ReportRanges } from './report'

/** The figures that coverage hangs on, in the words of `settingsFor`: each is taken to both ends of its range in turn. */
const varied = [
  'crop.stockingRate',
  'crop.blossomDensity',
  'crop.appeal',
  'bee.typicalForagingRadius',
  'bee.maxForagingRange',
  'bee.effectiveness',
  'bee.emergence',
  'bee.establishment',
  'bee.lag',
  'bee.spreadDays',
  'bee.nestingLife',
  'bee.tubesPerFemale',
  'site.backgroundBlossom',
  'site.referenceCropShare',
  'site.spareTubes',
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
    if (!(value > 0))
      return { low: value, high: Math.min(most, Math.max(value, ...reports.flat().map(each => figure(each) ?? value))) }
    let below = 0
    let above = 0
    for (const pair of reports) {
      const moves = pair.map(each => logRatio(figure(each) ?? value, value))
      below += Math.min(0, ...moves) ** 2
      above += Math.max(0, ...moves) ** 2
    }
    return { low: value * Math.exp(-Math.sqrt(below)), high: Math.min(most, value * Math.exp(Math.sqrt(above))) }
  }
  const lineRanges = (line: (report: Report) => Report['orchard'] | Report['plantings'][number]) => ({
    wanted: rangeOf(each => line(each).wanted)!,
    supplied: rangeOf(each => line(each).supplied),
    coverage: rangeOf(each => line(each).coverage, 1),
    reach: rangeOf(each => line(each).reach, 1),
    shortBy: rangeOf(each => line(each).shortBy),
  })
  const plantings = report.plantings.map(({ id }, i) => [
    id,
    { ...lineRanges(each => each.plantings[i]!), timingMatch: rangeOf(each => each.plantings[i]!.timingMatch) },
  ])
  const stations = report.stations.map(({ id }, i) => [
    id,
    {
      females: rangeOf(each => each.stations[i]!.females)!,
      tubesWanted: rangeOf(each => each.stations[i]!.tubesWanted)!,
    },
  ])
  return {
    orchard: lineRanges(each => each.orchard),
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
