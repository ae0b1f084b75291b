import { isIsoDate } from '../time/day'
import { limitFault, limitText, weatherLimits } from './limits'
import { foundText } from './place'
import type { WeatherDay } from './plan'
import type { ReportProblem } from './report-problem'

/** One problem for all days with the same fault: a column read wrongly is wrong on every line. */
export function checkWeather(
  days: readonly WeatherDay[],
  { path, year }: { readonly path: string; readonly year: number },
  report: ReportProblem,
): void {
  const seen = new Set<string>()
  const faults = new Map<string, { readonly days: number[]; readonly tell: (first: number, count: number) => void }>()
  const note = (fault: string, index: number, tell: (first: number, count: number) => void): void => {
    const known = faults.get(fault)
    if (known === undefined) faults.set(fault, { days: [index], tell })
    else known.days.push(index)
  }
  for (const [index, [date, ...figures]] of days.entries()) {
    const at = `${path}[${index}]`
    if (!isIsoDate(date)) {
      note('date', index, (_, count) =>
        report('error', 'weather-date', at, { found: foundText(date), path: at, count, year }),
      )
    } else if (seen.has(date)) {
      note('repeated', index, (_, count) => report('warning', 'weather-repeated', at, { date, count, year }))
    }
    seen.add(date)
    for (const [column, limit] of weatherLimits.entries()) {
      const found = figures[column]
      if (found == null || limitFault(found, limit) === null) continue
      const values = { label: limit.label, date, found: Number.isFinite(found) ? found : 'no number', year }
      note(limit.label, index, (_, count) =>
        report('error', 'weather-out-of-range', at, { ...values, allowed: limitText(limit), path: at, count }),
      )
    }
    const [low, high] = figures
    if (low != null && high != null && low > high) {
      note('order', index, (_, count) => report('warning', 'weather-order', at, { date, low, high, count, year }))
    }
  }
  for (const { days: wrong, tell } of faults.values()) tell(wrong[0]!, wrong.length)
}
