import { limitFault, limitText, weatherLimits } from '../plan/limits'
import { shortened } from '../plan/place'
import type { WeatherDay } from '../plan/plan'
import { problemList, type ReportProblem } from '../plan/report-problem'
import type { Outcome, Problem } from '../problem'
import { daysBetween, type IsoDate } from '../time/day'
import { tableRows } from './table-rows'
import { dateOf, isMissing, isTrace, numberOf } from './weather-cells'
import { type WeatherColumns, type WeatherFigure, weatherFigures } from './weather-columns'

/** Days in order of date, in the units of a plan, and how many days between first and last are not there. */
export type WeatherTable = {
  readonly days: readonly WeatherDay[]
  readonly first: IsoDate
  readonly last: IsoDate
  readonly missing: number
}

/** A hundred years of days, and as many letters as they would take in the widest of tables. */
const mostRows = 40_000
const mostCharacters = 20_000_000

/**
 * Reads a table of daily weather. What cannot be read is left out (a day without a date) or unknown (a figure), and told
 * with the number of its row; of a day given twice the first holds. Not ok where no day can be read.
 */
export function readWeatherTable(text: string, columns: WeatherColumns): Outcome<WeatherTable> {
  if (text.length > mostCharacters) return refused('weather-table-large', { most: mostRows })
  const rows = tableRows(text, mostRows + columns.headLines + 1)
  if (rows.length > mostRows + columns.headLines) return refused('weather-table-large', { most: mostRows })
  const { report, finish } = problemList()
  const days = new Map<IsoDate, WeatherDay>()
  for (const [index, row] of rows.entries()) {
    if (index < columns.headLines || row.every(cell => cell === '')) continue
    const line = index + 1
    const cell = row[columns.date] ?? ''
    const date = dateOf(cell, columns.order)
    if (date === null) report('warning', 'weather-row-date', '', { line, found: shortened(cell) })
    else if (days.has(date)) report('warning', 'weather-row-repeated', '', { line, date })
    else days.set(date, dayOf(date, row, { columns, line, report }))
  }
  const inOrder = [...days.values()].sort(([a], [b]) => (a < b ? -1 : 1))
  const first = inOrder[0]?.[0]
  const last = inOrder.at(-1)?.[0]
  if (first === undefined || last === undefined) return refused('weather-table-empty', {}, finish())
  const missing = daysBetween(first, last) + 1 - inOrder.length
  if (missing > 0) report('note', 'weather-table-missing', '', { days: missing, first, last })
  return { ok: true, value: { days: inOrder, first, last, missing }, problems: finish() }
}

function refused(code: Problem['code'], values: Problem['values'], others: readonly Problem[] = []): Outcome<never> {
  return { ok: false, problems: [{ code, severity: 'error', at: '', values }, ...others] }
}

type Reading = { readonly columns: WeatherColumns; readonly line: number; readonly report: ReportProblem }

function dayOf(date: IsoDate, row: readonly string[], { columns, line, report }: Reading): WeatherDay {
  const figures = weatherFigures.map((figure, at) => {
    const column = columns.figures[figure]
    const cell = column === null ? '' : (row[column] ?? '')
    if (isMissing(cell)) return null
    const { label } = weatherLimits[at]!
    const read = figure === 'rain' && isTrace(cell) ? 0 : numberOf(cell, columns.decimal)
    if (read === null) {
      report('warning', 'weather-row-number', '', { line, date, label, found: shortened(cell) })
      return null
    }
    const value = inPlanUnits(read, figure, columns)
    if (limitFault(value, weatherLimits[at]!) === null) return value
    const allowed = limitText(weatherLimits[at]!)
    report('warning', 'weather-row-range', '', { line, date, label, found: shortened(cell), allowed })
    return null
  })
  const [minimum = null, maximum = null, rain = null, wind = null] = figures
  if (minimum !== null && maximum !== null && minimum > maximum) {
    report('warning', 'weather-row-order', '', { line, date, low: minimum, high: maximum })
  }
  return [date, minimum, maximum, rain, wind]
}

/** Exact: millimetres in an inch, metres per second in a mile and a kilometre an hour. */
const millimetres = { mm: 1, in: 25.4 }
const metresPerSecond = { 'm/s': 1, 'km/h': 1 / 3.6, mph: 0.44704 }

function inPlanUnits(value: number, figure: WeatherFigure, columns: WeatherColumns): number {
  if (figure === 'rain') return rounded(value * millimetres[columns.rain])
  if (figure === 'wind') return rounded(value * metresPerSecond[columns.wind])
  return columns.temperature === 'degC' ? value : rounded((value - 32) / 1.8)
}

/** Converted figures to two decimals, finer than any of them is measured. */
function rounded(value: number): number {
  return Number(value.toFixed(2))
}
