import { type Limit, limitFault, limitText } from '../plan/limits'
import { shortened } from '../plan/place'
import { problemList, type ReportProblem } from '../plan/report-problem'
import type { Outcome, Problem } from '../problem'
import { foot } from '../space/units'
import { withoutGuard } from './csv-text'
import { refused } from './import'
import { tableRows } from './table-rows'
import { lengthFigures, type TableColumns, type TableFigure, tableFigures } from './tree-columns'
import { isMissing, numberOf } from './weather-cells'

/** Lines of a table, and as many letters as they would take. */
const mostRows = 50_000
const mostCharacters = 20_000_000
/** Cells of all lines together: as many columns as a wide table has. */
const mostCells = 4_000_000

/** One line of a table, with what is needed to read it and to tell what is wrong with it. */
export type Line = {
  /** Of the table, from 1. */
  readonly row: number
  readonly cells: readonly string[]
  readonly columns: TableColumns
  readonly report: ReportProblem
}

/** Goes through the lines of a table that hold anything, and returns what was told of them. */
export function eachLine(
  text: string,
  columns: TableColumns,
  visit: (line: Line) => void,
): Outcome<readonly Problem[]> {
  if (text.length > mostCharacters)
    return refused('import-too-large', { megabytes: Math.ceil(text.length / 1e6), limit: mostCharacters / 1e6 })
  let cells = 1
  for (let at = text.indexOf(columns.separator); at >= 0; at = text.indexOf(columns.separator, at + 1)) cells += 1
  if (cells > mostCells) return refused('import-too-many', { what: 'cells', most: mostCells })
  const rows = tableRows(text, mostRows + columns.headLines + 1, columns.separator)
  if (rows.length > mostRows + columns.headLines) return refused('import-too-many', { what: 'lines', most: mostRows })
  const { report, finish } = problemList()
  for (const [i, cells] of rows.entries()) {
    if (i < columns.headLines || cells.every(cell => cell === '')) continue
    visit({ row: i + 1, cells: cells.map(withoutGuard), columns, report })
  }
  return { ok: true, value: finish(), problems: [] }
}

export function cellOf({ cells, columns }: Line, figure: TableFigure): string {
  const at = columns.figures[figure]
  return at === null ? '' : (cells[at] ?? '')
}

/** A number of a line, a length in metres; null where it is blank or none. What is needed and not there is told, and the line left out. */
export function numberIn(line: Line, figure: TableFigure, isNeeded: boolean): number | null {
  const cell = cellOf(line, figure)
  const { row, report, columns } = line
  const label = tableFigures[figure]
  if (isMissing(cell)) {
    if (isNeeded) report('warning', 'import-row-blank', '', { row, label })
    return null
  }
  const { text, unit } = withoutUnit(cell, columns.length)
  const read = numberOf(text, columns.decimal)
  if (read === null) {
    report('warning', 'import-row-number', '', { row, label, found: shortened(cell), isLeftOut: isNeeded })
    return null
  }
  return lengthFigures.includes(figure) && unit === 'ft' ? Number((read * foot).toFixed(4)) : read
}

/** A figure within its limit; one that cannot be meant is told and not known. */
export function figureIn(line: Line, figure: TableFigure, limit: Limit): number | null {
  const value = numberIn(line, figure, false)
  if (value === null || limitFault(value, limit) === null) return value
  const found = shortened(cellOf(line, figure))
  line.report('warning', 'import-row-figure', '', {
    row: line.row,
    label: tableFigures[figure],
    found,
    allowed: limitText(limit),
  })
  return null
}

/** Texts and figures of a line that are there, by name. */
export function givenOf(
  line: Line,
  texts: readonly TableFigure[],
  limits: Readonly<Partial<Record<TableFigure, Limit>>>,
): Readonly<Record<string, unknown>> {
  const given: Record<string, unknown> = {}
  for (const name of texts) if (!isMissing(cellOf(line, name))) given[name] = cellOf(line, name)
  for (const [name, limit] of Object.entries(limits) as [TableFigure, Limit][]) {
    const value = figureIn(line, name, limit)
    if (value !== null) given[name] = value
  }
  return given
}

/** A cell's own unit goes before that of its column. */
function withoutUnit(cell: string, usual: 'm' | 'ft'): { readonly text: string; readonly unit: 'm' | 'ft' } {
  const found = /^([^a-z']{1,30}?) ?(m|ft|feet|')$/i.exec(cell)
  if (found === null) return { text: cell, unit: usual }
  return { text: found[1]!, unit: found[2]!.toLowerCase() === 'm' ? 'm' : 'ft' }
}
