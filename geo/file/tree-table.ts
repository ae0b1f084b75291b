import { isPosition } from '../plan/check-ground'
import { featureLimits, limitFault, limitText } from '../plan/limits'
import { shortened } from '../plan/place'
import { problemList, type ReportProblem } from '../plan/report-problem'
import type { Outcome } from '../problem'
import { type LngLat, planeAt } from '../space/plane'
import { offset } from '../space/shape'
import { withoutGuard } from './csv-text'
import { type Import, type ImportOptions, importCollector, refused } from './import'
import { tableRows } from './table-rows'
import type { TableColumns, TableFigure } from './tree-columns'
import { isMissing, numberOf } from './weather-cells'

/** Where trees stand that a table has by row and tree number alone. */
export type TreeGrid = {
  /** Row 1, tree 1. */
  readonly origin: LngLat
  /** Along the rows, degrees clockwise from true north; the next row lies to the right. */
  readonly bearing: number
  /** Metres from tree to tree and from row to row. */
  readonly spacing: number
  readonly rowSpacing: number
}

export type TableOptions = ImportOptions & {
  /** Needed where the table has no coordinates. */
  readonly grid?: TreeGrid
}

/** Lines of a table, and as many letters as they would take. */
const mostRows = 50_000
const mostCharacters = 20_000_000
/** Exact. */
const metresInFoot = 0.3048
/** Row and tree numbers beyond are slips: they would lie in another county. */
const largestNumber = 10_000

/** Reads a list of trees, each a plant: by coordinates, or by row and tree number on a grid. What a cell leaves blank is not known. */
export function readTreeTable(text: string, columns: TableColumns, options: TableOptions = {}): Outcome<Import> {
  return readTable('plant', text, columns, options)
}

/** Reads a list of stations by their coordinates. */
export function readStationTable(text: string, columns: TableColumns, options: ImportOptions = {}): Outcome<Import> {
  return readTable('station', text, columns, options)
}

type Line = {
  readonly row: number
  readonly cells: readonly string[]
  readonly columns: TableColumns
  readonly report: ReportProblem
}

function readTable(
  kind: 'plant' | 'station',
  text: string,
  columns: TableColumns,
  { grid, ...options }: TableOptions,
): Outcome<Import> {
  if (text.length > mostCharacters)
    return refused('import-too-large', { megabytes: Math.ceil(text.length / 1e6), limit: mostCharacters / 1e6 })
  const rows = tableRows(text, mostRows + columns.headLines + 1)
  if (rows.length > mostRows + columns.headLines) return refused('import-too-many', { what: 'lines', most: mostRows })
  const { figures } = columns
  const hasPlaces = figures.longitude !== null && figures.latitude !== null
  const isOnGrid = !hasPlaces && grid !== undefined && figures.row !== null && figures.tree !== null
  if (!hasPlaces && !isOnGrid) {
    const wanted = kind === 'plant' ? 'longitude and latitude, or row and tree' : 'longitude and latitude'
    return refused('import-table-no-places', { what: kind === 'plant' ? 'trees' : 'stations', wanted })
  }
  const { report, finish } = problemList()
  const placed = isOnGrid ? onGrid(grid) : placeOf
  const collector = importCollector(options)
  for (const [i, cells] of rows.entries()) {
    if (i < columns.headLines || cells.every(cell => cell === '')) continue
    const line: Line = { row: i + 1, cells: cells.map(withoutGuard), columns, report }
    const at = placed(line)
    if (at === null) continue
    const given = { kind, ...givenOf(kind, line) }
    collector.add({ number: line.row, name: nameOf(line, isOnGrid), label: '', shape: 'point', parts: [[at]], given })
  }
  const outcome = collector.finish({ format: 'table', version: '', holds: {} })
  return { ...outcome, problems: [...finish(), ...outcome.problems] }
}

function cellOf({ cells, columns }: Line, figure: TableFigure): string {
  const at = columns.figures[figure]
  return at === null ? '' : (cells[at] ?? '')
}

function nameOf(line: Line, isOnGrid: boolean): string {
  const name = cellOf(line, 'name')
  return name === '' && isOnGrid ? `Row ${cellOf(line, 'row')}, tree ${cellOf(line, 'tree')}` : name
}

/** A number of a line; null where it is blank or none, which is told. */
function needed(line: Line, figure: TableFigure): number | null {
  const cell = cellOf(line, figure)
  const { row, report, columns } = line
  if (isMissing(cell)) {
    report('warning', 'import-row-blank', '', { row, label: figure })
    return null
  }
  const value = numberOf(cell, columns.decimal)
  if (value === null)
    report('warning', 'import-row-number', '', { row, label: figure, found: shortened(cell), isLeftOut: true })
  return value
}

function placeOf(line: Line): LngLat | null {
  const lng = needed(line, 'longitude')
  const lat = lng === null ? null : needed(line, 'latitude')
  if (lng === null || lat === null) return null
  if (isPosition([lng, lat])) return [lng, lat]
  const found = `longitude ${lng}, latitude ${lat}`
  line.report('warning', 'import-row-position', '', { row: line.row, found, isSwapped: isPosition([lat, lng]) })
  return null
}

/** Places on a grid; of a place given twice the first line holds. */
function onGrid({ origin, bearing, spacing, rowSpacing }: TreeGrid): (line: Line) => LngLat | null {
  const plane = planeAt(origin)
  const taken = new Set<string>()
  return line => {
    const row = needed(line, 'row')
    const tree = row === null ? null : needed(line, 'tree')
    if (row === null || tree === null) return null
    for (const [label, value] of [
      ['row', row],
      ['tree', tree],
    ] as const) {
      if (Number.isInteger(value) && value >= 0 && value <= largestNumber) continue
      const allowed = `a whole number from 0 to ${largestNumber}`
      line.report('warning', 'import-row-figure', '', { row: line.row, label, found: String(value), allowed })
      return null
    }
    const key = `${row} ${tree}`
    if (taken.has(key)) {
      line.report('warning', 'import-row-repeated', '', { row: line.row, line: row, tree })
      return null
    }
    taken.add(key)
    const along = offset({ x: 0, y: 0 }, bearing, (tree - 1) * spacing)
    const at = plane.toLngLat(offset(along, bearing + 90, (row - 1) * rowSpacing))
    return [Number(at[0].toFixed(9)), Number(at[1].toFixed(9))]
  }
}

const lengths: ReadonlySet<TableFigure> = new Set(['spread', 'height'])

/** What a line says of its tree or station beside the place, in metres; a figure that cannot be meant is told and not known. */
function givenOf(kind: 'plant' | 'station', line: Line): Readonly<Record<string, unknown>> {
  const wanted = kind === 'plant' ? (['spread', 'planted'] as const) : (['height', 'facing'] as const)
  const texts = kind === 'plant' ? (['crop', 'cultivar'] as const) : []
  const { row, report, columns } = line
  const given: Record<string, unknown> = {}
  for (const name of texts) if (!isMissing(cellOf(line, name))) given[name] = cellOf(line, name)
  for (const label of wanted) {
    const cell = cellOf(line, label)
    if (isMissing(cell)) continue
    const { text, unit } = withoutUnit(cell, columns.length)
    const read = numberOf(text, columns.decimal)
    const value = read !== null && lengths.has(label) && unit === 'ft' ? Number((read * metresInFoot).toFixed(4)) : read
    const limit = featureLimits[kind][label]!
    if (value === null)
      report('warning', 'import-row-number', '', { row, label, found: shortened(cell), isLeftOut: false })
    else if (limitFault(value, limit) !== null)
      report('warning', 'import-row-figure', '', { row, label, found: shortened(cell), allowed: limitText(limit) })
    else given[label] = value
  }
  return given
}

/** A cell's own unit goes before that of its column. */
function withoutUnit(cell: string, usual: 'm' | 'ft'): { readonly text: string; readonly unit: 'm' | 'ft' } {
  const found = /^([^a-z']{1,30}?) ?(m|ft|feet|')$/i.exec(cell)
  if (found === null) return { text: cell, unit: usual }
  return { text: found[1]!, unit: found[2]!.toLowerCase() === 'm' ? 'm' : 'ft' }
}
