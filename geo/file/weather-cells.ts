import { type IsoDate, isIsoDate } from '../time/day'

/** In which order day, month and year stand in dates that do not begin with the year. */
export type DateOrder = 'day-month' | 'month-day'

const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)/
const compact = /^(\d{4})(\d{2})(\d{2})$/
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?!\d)/

/** A calendar date as tables write it, a time behind it left aside; null where it is none or no such day exists. */
export function dateOf(cell: string, order: DateOrder): IsoDate | null {
  const first = yearFirst.exec(cell) ?? compact.exec(cell)
  if (first !== null) return isoDate(first[1]!, first[2]!, first[3]!)
  const last = yearLast.exec(cell)
  if (last === null) return null
  const [, one, two, year] = last
  const whole = year!.length === 2 ? `20${year}` : year!
  return order === 'day-month' ? isoDate(whole, two!, one!) : isoDate(whole, one!, two!)
}

function isoDate(year: string, month: string, day: string): IsoDate | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  return isIsoDate(date) ? date : null
}

/** What the dates of a column say of their order; null where every one of them can be read both ways. */
export function dateOrderOf(cells: readonly string[]): DateOrder | null {
  const parts = cells.map(cell => yearLast.exec(cell)).filter(found => found !== null)
  if (parts.length === 0) return 'day-month'
  if (parts.some(([, first]) => Number(first) > 12)) return 'day-month'
  if (parts.some(([, , second]) => Number(second) > 12)) return 'month-day'
  // Points between day, month and year are written where the day comes first.
  return parts.every(([whole]) => whole.includes('.')) ? 'day-month' : null
}

export type Decimal = '.' | ','

/** Texts and figures that stand for a value that was not measured. */
const missing = new Set([
  '',
  '-',
  '--',
  '---',
  'na',
  'n/a',
  'nan',
  'null',
  'none',
  'm',
  '*',
  '-999',
  '-9999',
  '-99.9',
  '-999.9',
])

/** A cell that holds no value. */
export function isMissing(cell: string): boolean {
  return missing.has(cell.toLowerCase())
}

/** Rain too little to measure. */
export function isTrace(cell: string): boolean {
  return /^(t|tr|trace)$/i.test(cell)
}

/** The number of a cell, a unit behind it left aside; null where it is none. */
export function numberOf(cell: string, decimal: Decimal): number | null {
  if (cell.length > 40) return null
  const bare = cell.replace(/\s*(°\s*[CF]?|[CF]|mm|in|"|m\/s|km\/h|mph)$/i, '').replace(/^−/, '-')
  const form = decimal === ',' ? /^[-+]?\d+(,\d+)?$/ : /^[-+]?(\d+(\.\d*)?|\.\d+)$/
  if (!form.test(bare) || bare.length > 20) return null
  return Number(bare.replace(',', '.'))
}

/** Whether the figures of a table are written with a decimal comma. */
export function decimalOf(cells: readonly string[]): Decimal {
  const commas = cells.filter(cell => /^[-+−]?\d+,\d+\D*$/.test(cell)).length
  const points = cells.filter(cell => /^[-+−]?\d*\.\d+\D*$/.test(cell)).length
  return commas > points ? ',' : '.'
}
