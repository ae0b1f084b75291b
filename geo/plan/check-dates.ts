import { sourceText } from '../data/thresholds'
import { timingFigures } from '../data/timing-figures'
import type { Severity } from '../problem'
import { dayOfSeason, isIsoDate } from '../time/day'
import { foundText, shortened } from './place'
import { type Bloom, type BloomStage, bloomStages } from './plan'
import type { ReportProblem } from './report-problem'

/** Days from the season's year that a date may lie away before it is doubted, and before it cannot be meant. */
const doubtful = 200
const impossible = 1000
/** Days from first to end of bloom that no dates of one season can span; forage areas may flower in turn all year. */
const longestBloom = 366

export type Dated = {
  /** Whose date it is: "Row 3". */
  readonly name: string
  /** Which date: "release". */
  readonly label: string
  readonly at: string
  readonly path: string
  /** Year of the season the date stands in; null where that year makes no sense itself. */
  readonly year: number | null
  /** What a day that does not exist does to the result. */
  readonly severity: Severity
}

/** The day of season of a date; null, and a problem, where there is no such day or it cannot belong to the season. */
export function checkDate(date: string, dated: Dated, report: ReportProblem): number | null {
  const { name, label, at, path, year, severity } = dated
  if (!isIsoDate(date)) {
    report(severity, 'date-impossible', at, { name, label, path, found: foundText(date) })
    return null
  }
  if (year === null) return null
  const day = dayOfSeason(date, year)
  const away = Math.max(1 - day, day - 366, 0)
  if (away > doubtful) {
    report(away > impossible ? severity : 'warning', 'date-far', at, { name, label, path, date, year })
  }
  return away > impossible ? null : day
}

const labels: Readonly<Record<BloomStage, string>> = {
  first: 'first bloom',
  full: 'full bloom',
  end: 'end of bloom',
}

/** Whether a bloom's dates exist, are in order, and lie no more than a few weeks apart. */
export function checkBloom(
  bloom: Bloom,
  dated: Omit<Dated, 'label'> & { readonly isForage: boolean },
  report: ReportProblem,
): void {
  const { name, at, path, severity, year, isForage } = dated
  const [first, full, end] = bloomStages.map(stage =>
    checkDate(bloom[stage], { ...dated, label: labels[stage], path: `${path}.${stage}` }, report),
  )
  const unknown = bloom.observed?.find(stage => !(bloomStages as readonly string[]).includes(stage))
  if (unknown !== undefined) {
    report('warning', 'stage-unknown', at, { name, stage: shortened(unknown), path: `${path}.observed` })
  }
  if (first == null || full == null || end == null) return
  const values = { name, path, year, first: bloom.first, full: bloom.full, end: bloom.end }
  if (!(first < full && full < end)) {
    report(severity, 'bloom-order', at, values)
  } else if (end - first > (isForage ? longestBloom : timingFigures.bloomLong.value)) {
    const isTooLong = end - first > longestBloom
    const { value, source } = timingFigures.bloomLong
    const told = isTooLong ? { limit: longestBloom } : { limit: value, source: sourceText({ source }) }
    report(isTooLong ? severity : 'warning', 'bloom-long', at, { ...values, days: end - first, ...told })
  }
}
