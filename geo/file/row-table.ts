import { featureLimits, type Limit } from '../plan/limits'
import type { FeatureKind } from '../plan/plan'
import type { Outcome } from '../problem'
import type { LngLat } from '../space/plane'
import { plantsInRow } from '../space/sample'
import { isFeatureKind } from './format'
import { type Found, type Import, importCollector, refused } from './import'
import { cellOf, eachLine, figureIn, givenOf, type Line, numberIn } from './table-line'
import { degreesOf, metresOn, placeAlong, type TableGround } from './table-places'
import type { TableColumns, TableFigure } from './tree-columns'
import type { TableOptions } from './tree-table'
import { readWkt } from './wkt'

const plantings: ReadonlySet<FeatureKind> = new Set(['row', 'block', 'plant', 'bed'])

/**
 * Reads a list of plantings: rows from their start to their end, or from their start along a bearing for their length,
 * or side by side on a ground that is given; and any planting by its geometry.
 */
export function readRowTable(
  text: string,
  columns: TableColumns,
  { ground, ...options }: TableOptions = {},
): Outcome<Import> {
  if (!hasPlaces(columns, ground)) {
    const wanted = 'start and end, or start, bearing and length, or row and length'
    return refused('import-table-no-places', { what: 'rows', wanted })
  }
  const collector = importCollector(options)
  const start = startOf(columns, ground)
  let order = 0
  const told = eachLine(text, columns, line => {
    order += 1
    const shapes = columns.places === 'shape' ? shapesOf(line) : lineOf(line, start(line, order), ground)
    const written = cellOf(line, 'kind').toLowerCase()
    const kind = isFeatureKind(written) && plantings.has(written) ? written : 'row'
    for (const shape of shapes)
      collector.add({
        number: line.row,
        name: nameOf(line),
        label: '',
        ...shape,
        given: propertiesOf(line, kind, shape),
      })
  })
  if (!told.ok) return told
  const outcome = collector.finish({ format: 'table', version: '', holds: {} })
  return { ...outcome, problems: [...told.value, ...outcome.problems] }
}

function hasPlaces({ places, figures }: TableColumns, ground: TableGround | undefined): boolean {
  const has = (...names: readonly TableFigure[]) => names.every(name => figures[name] !== null)
  const hasLength = has('rowLength') || has('count', 'spacing')
  switch (places) {
    case 'shape':
      return has('shape')
    case 'degrees':
      return has('longitude', 'latitude') && (has('endLongitude', 'endLatitude') || (has('bearing') && hasLength))
    case 'metres':
      return ground !== undefined && has('x', 'y') && (has('endX', 'endY') || hasLength)
    case 'numbers':
      return ground !== undefined && hasLength
    default:
      return places satisfies never
  }
}

type Shape = Pick<Found, 'shape' | 'parts'>

function shapesOf(line: Line): readonly Shape[] {
  const shapes = readWkt(cellOf(line, 'shape'))
  if (shapes === null) line.report('warning', 'import-row-shape', '', { row: line.row })
  return shapes ?? []
}

/** Where a row begins, and where it ends if the table says so in places. */
type Ends = { readonly from: LngLat; readonly to: LngLat | null }

function startOf(
  { places, figures }: TableColumns,
  ground: TableGround | undefined,
): (line: Line, order: number) => Ends | null {
  const metres = ground && metresOn(ground)
  const isEndGiven = places === 'degrees' ? figures.endLongitude !== null : figures.endX !== null
  return (line, order) => {
    if (places === 'numbers') {
      const { origin, bearing, rowSpacing = 1 } = ground!
      // By its number where it has one; else as the rows follow each other in the table.
      const number = Number(cellOf(line, 'row') || Number.NaN)
      const place = Number.isInteger(number) && number > 0 && number <= 10_000 ? number : order
      return { from: placeAlong(origin, bearing + 90, (place - 1) * rowSpacing), to: null }
    }
    const placed = places === 'degrees' ? degreesOf : metres!
    const from = placed(line, 'start')
    if (from === null || !isEndGiven) return from && { from, to: null }
    const to = placed(line, 'end')
    return to && { from, to }
  }
}

const anyDirection: Limit = { label: 'bearing', unit: 'degrees', low: -360, high: 360 }
const anyLength: Limit = { label: 'length', unit: 'm', low: 0, high: 10_000, isAbove: true }
const { spacing: anySpacing, count: anyCount } = featureLimits.row

function lineOf(line: Line, ends: Ends | null, ground: TableGround | undefined): readonly Shape[] {
  if (ends === null) return []
  const to = ends.to ?? endOf(line, ends.from, ground)
  return to === null ? [] : [{ shape: 'line', parts: [[ends.from, to]] }]
}

function endOf(line: Line, from: LngLat, ground: TableGround | undefined): LngLat | null {
  const { places, figures } = line.columns
  const turned = places === 'degrees' ? 0 : ground!.bearing
  if (places === 'degrees' && numberIn(line, 'bearing', true) === null) return null
  const own = places === 'numbers' || figures.bearing === null ? 0 : figureIn(line, 'bearing', anyDirection)
  if (own === null) return null
  const length = figures.rowLength === null ? null : figureIn(line, 'rowLength', anyLength)
  if (length !== null) return placeAlong(from, turned + own, length)
  const [count, spacing] = [figureIn(line, 'count', anyCount!), figureIn(line, 'spacing', anySpacing!)]
  if (count !== null && count > 1 && spacing !== null)
    return placeAlong(from, turned + own, (count - 1) * spacing + room)
  line.report('warning', 'import-row-blank', '', {
    row: line.row,
    label: 'length, or its number of plants and their spacing',
  })
  return null
}

/** A row's last plant keeps its place however positions are rounded, m. */
const room = 0.01

const texts: readonly TableFigure[] = ['crop', 'cultivar']

function propertiesOf(line: Line, kind: FeatureKind, { shape }: Shape): Readonly<Record<string, unknown>> {
  const limits = Object.entries(featureLimits[kind]).filter(([name]) => name !== 'count')
  const given = givenOf(line, texts, Object.fromEntries(limits))
  const count = shape === 'line' || shape === 'ring' ? figureIn(line, 'count', anyCount!) : null
  return { kind, ...given, ...(count === null || isBySpacing(line, given.spacing, count) ? {} : { count }) }
}

/** A number of plants that follows from length and spacing says nothing of its own. */
function isBySpacing(line: Line, spacing: unknown, count: number): boolean {
  if (typeof spacing !== 'number' || line.columns.places === 'shape') return false
  const length = figureIn(line, 'rowLength', anyLength)
  return length === null ? !hasEnd(line) : plantsInRow(length, spacing) === count
}

function hasEnd({ columns: { figures } }: Line): boolean {
  return figures.endX !== null || figures.endLongitude !== null
}

function nameOf(line: Line): string {
  const [name, row] = [cellOf(line, 'name'), cellOf(line, 'row')]
  return name === '' && /^\d+$/.test(row) ? `Row ${row}` : name || row
}
