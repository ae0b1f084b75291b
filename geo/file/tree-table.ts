import { featureLimits } from '../plan/limits'
import type { Outcome } from '../problem'
import type { LngLat } from '../space/plane'
import { type Found, type Import, type ImportOptions, importCollector, refused } from './import'
import { cellOf, eachLine, givenOf, type Line } from './table-line'
import { degreesOf, metresOn, numbersOn, type TableGround } from './table-places'
import type { TableColumns } from './tree-columns'
import { isMissing, numberOf } from './weather-cells'
import { readWkt } from './wkt'

export type TableOptions = ImportOptions & {
  /** Needed where the table has no coordinates. */
  readonly ground?: TableGround
}

/** Reads a list of trees, each a plant: by coordinates, x and y, or row and tree number. What a cell leaves blank is not known. */
export function readTreeTable(text: string, columns: TableColumns, options: TableOptions = {}): Outcome<Import> {
  return readTable('plant', text, columns, options)
}

/** Reads a list of stations by their coordinates, or by x and y. */
export function readStationTable(text: string, columns: TableColumns, options: TableOptions = {}): Outcome<Import> {
  return readTable('station', text, columns, options)
}

const { spread, planted, removed, vigour, femalesPerPlant } = featureLimits.plant as Limits
const { height, facing, overhang, since, until } = featureLimits.station as Limits
type Limits = Readonly<Record<string, NonNullable<(typeof featureLimits)['plant'][string]>>>

const limitsOf = {
  plant: { spread: spread!, planted: planted!, removed: removed!, vigour: vigour!, femalesPerPlant: femalesPerPlant! },
  station: { height: height!, facing: facing!, overhang: overhang!, since: since!, until: until! },
}
const textsOf = { plant: ['crop', 'cultivar'], station: ['support'] } as const

function readTable(
  kind: 'plant' | 'station',
  text: string,
  columns: TableColumns,
  { ground, ...options }: TableOptions,
): Outcome<Import> {
  const placed = placer(kind, columns, ground)
  if (placed === null) {
    const wanted =
      kind === 'plant' ? 'longitude and latitude, x and y, or row and tree' : 'longitude and latitude, or x and y'
    return refused('import-table-no-places', { what: kind === 'plant' ? 'trees' : 'stations', wanted })
  }
  const isOnGrid = columns.places === 'numbers'
  const collector = importCollector(options)
  const told = eachLine(text, columns, line => {
    const shape = placed(line)
    if (shape === null) return
    const given = { kind, ...givenOf(line, textsOf[kind], limitsOf[kind]) }
    const inRow = kind === 'plant' ? rowPlace(line) : null
    collector.add({
      number: line.row,
      name: nameOf(line, isOnGrid),
      label: '',
      given,
      ...shape,
      ...(inRow ? { inRow } : {}),
    })
  })
  if (!told.ok) return told
  const outcome = collector.finish({ format: 'table', version: '', holds: {} })
  const problems = [...told.value, ...outcome.problems]
  if (!outcome.ok || !isOnGrid || ground?.rowSpacing === undefined) return { ...outcome, problems }
  return { ok: true, value: { ...outcome.value, rowSpacing: ground.rowSpacing }, problems }
}

type Placed = Pick<Found, 'shape' | 'parts'>

function placer(
  kind: 'plant' | 'station',
  { places, figures }: TableColumns,
  ground: TableGround | undefined,
): ((line: Line) => Placed | null) | null {
  const asPoint = (placed: (line: Line) => LngLat | null) => (line: Line) => {
    const at = placed(line)
    return at === null ? null : { shape: 'point' as const, parts: [[at]] }
  }
  switch (places) {
    case 'degrees':
      return figures.longitude === null || figures.latitude === null ? null : asPoint(line => degreesOf(line))
    case 'metres': {
      if (ground === undefined || figures.x === null || figures.y === null) return null
      const metres = metresOn(ground)
      return asPoint(line => metres(line))
    }
    case 'numbers':
      if (kind === 'station' || ground === undefined || figures.row === null || figures.tree === null) return null
      return asPoint(numbersOn(ground))
    case 'shape':
      return figures.shape === null ? null : shapeOf(kind)
    default:
      return places satisfies never
  }
}

function shapeOf(kind: 'plant' | 'station') {
  return (line: Line): Placed | null => {
    const [shape, ...others] = readWkt(cellOf(line, 'shape')) ?? []
    if (
      shape !== undefined &&
      others.length === 0 &&
      (shape.shape === 'point' || (kind === 'plant' && shape.shape === 'points'))
    )
      return shape
    line.report('warning', 'import-row-shape', '', { row: line.row })
    return null
  }
}

/** The row and the number in it that a tree is given, if any. */
function rowPlace(line: Line): { readonly row: string; readonly tree: number } | null {
  const row = cellOf(line, 'row')
  const tree = numberOf(cellOf(line, 'tree'), line.columns.decimal)
  return isMissing(row) || tree === null || !Number.isInteger(tree) ? null : { row, tree }
}

function nameOf(line: Line, isOnGrid: boolean): string {
  const name = cellOf(line, 'name')
  return name === '' && isOnGrid ? `Row ${cellOf(line, 'row')}, tree ${cellOf(line, 'tree')}` : name
}
