import type { Outcome } from '../problem'
import { refused } from './import'
import { type Separator, separatorOf, tableRows } from './table-rows'
import { type Decimal, decimalOf } from './weather-cells'

/** What a column of a table of trees, rows or stations may hold, in plain words. */
export const tableFigures = {
  row: 'row',
  tree: 'tree',
  longitude: 'longitude',
  latitude: 'latitude',
  endLongitude: 'longitude of its end',
  endLatitude: 'latitude of its end',
  x: 'x',
  y: 'y',
  endX: 'x of its end',
  endY: 'y of its end',
  shape: 'geometry (WKT)',
  bearing: 'bearing',
  rowLength: 'length',
  spacing: 'spacing of its plants',
  rowSpacing: 'distance to the next row',
  count: 'number of plants',
  kind: 'kind of planting',
  name: 'name',
  crop: 'crop',
  cultivar: 'cultivar',
  spread: 'width of the crown',
  planted: 'year of planting',
  removed: 'year of removal',
  vigour: 'vigour',
  femalesPerPlant: 'females per plant',
  height: 'height',
  facing: 'facing',
  overhang: 'overhang',
  support: 'support',
  since: 'first year',
  until: 'last year',
} as const
export type TableFigure = keyof typeof tableFigures

/** What each line of a table stands for. */
export type TableOf = 'trees' | 'rows' | 'stations'

/** What a table says of where things stand. */
export type TablePlaces = 'degrees' | 'metres' | 'numbers' | 'shape'

/** How a table is to be read: which column (counted from 0) holds what; null where none does. */
export type TableColumns = {
  readonly figures: Readonly<Record<TableFigure, number | null>>
  readonly places: TablePlaces
  /** Of all lengths, x and y among them. */
  readonly length: 'm' | 'ft'
  readonly decimal: Decimal
  readonly separator: Separator
  /** Lines at the top that hold no tree. */
  readonly headLines: number
}

export type TableGuess = {
  readonly of: TableOf
  readonly columns: TableColumns
  /** Whether the first line was taken for the names of the columns. */
  readonly hasHead: boolean
  /** Names of the columns; "column 3" where the table has none. */
  readonly names: readonly string[]
  /** The first lines as they stand in the table. */
  readonly sample: readonly (readonly string[])[]
}

/** Where somebody knows better how a table is written. */
export type TableWritten = { readonly separator?: Separator; readonly hasHead?: boolean }

/** Rows that the columns are guessed from, and those shown of them. */
const lookedAt = 400
const shown = 6
/** Letters that the guess is made from; the lines of a list of trees are far shorter. */
const mostLetters = 1_000_000
/** More columns than a list of trees can have. */
const mostColumns = 100

/** Names of columns, the surest first; a column serves once. */
const words: readonly (readonly [TableFigure, RegExp])[] = [
  ['shape', /^(wkt|geom(etry)?|shape)\b/i],
  ['endLongitude', /^(end|to)[ _-]*(lon|lng|long|longitude)\b|^(lon|lng|long|longitude)[ _-]*2\b/i],
  ['endLatitude', /^(end|to)[ _-]*(lat|latitude)\b|^(lat|latitude)[ _-]*2\b/i],
  ['longitude', /^((start|from)[ _-]*)?(lon|lng|long|longitude)([ _-]*1)?\b/i],
  ['latitude', /^((start|from)[ _-]*)?(lat|latitude)([ _-]*1)?\b/i],
  ['longitude', /\b(lon|lng|longitude)\b|^längengrad/i],
  ['latitude', /\b(lat|latitude)\b|^breitengrad/i],
  ['endX', /^(end|to)[ _-]*(x|east(ing)?)\b|^(x|east(ing)?)[ _-]*2\b/i],
  ['endY', /^(end|to)[ _-]*(y|north(ing)?)\b|^(y|north(ing)?)[ _-]*2\b/i],
  ['x', /^((start|from)[ _-]*)?(x|east(ing)?)([ _-]*1)?\b/i],
  ['y', /^((start|from)[ _-]*)?(y|north(ing)?)([ _-]*1)?\b/i],
  ['cultivar', /cultivar|variet|sorte|clone/i],
  ['crop', /^(crop|fruit|species|kind of fruit)( name)?$/i],
  ['kind', /^kind$/i],
  ['rowSpacing', /row (spacing|distance)|(between|to the next) rows?|alley/i],
  ['spacing', /spacing|(between|distance of) (trees|plants)/i],
  ['rowLength', /\blength\b/i],
  ['bearing', /bearing|azimuth|direction of (the )?rows?/i],
  ['count', /^(count|number of (plants|trees))$/i],
  ['count', /^(plants|trees)$/i],
  ['row', /^row\b|^line\b|^reihe|^planting$/i],
  ['tree', /^(tree|plant|pos(ition)?|number|no\.?|nr\.?|#)\b|^(tree|plant) (number|no)|^baum/i],
  ['spread', /spread|crown|diameter|width/i],
  ['planted', /planted|year$|^year|planting (date|year)/i],
  ['removed', /^removed|grubbed/i],
  ['vigour', /^vigou?r/i],
  ['femalesPerPlant', /^females per (plant|tree)/i],
  ['height', /height/i],
  ['facing', /facing|aspect|direction/i],
  ['overhang', /overhang/i],
  ['support', /^support/i],
  ['since', /^(since|first year)$/i],
  ['until', /^(until|last year)$/i],
  ['name', /^(?!crop\b).*(name|label)/i],
  ['name', /^id$|^station$/i],
]

/** The figures that are lengths, and may be in feet. */
export const lengthFigures: readonly TableFigure[] = [
  'spread',
  'height',
  'spacing',
  'rowSpacing',
  'rowLength',
  'x',
  'y',
  'endX',
  'endY',
]

/** Looks at a table of text: which columns it seems to have. The first line is a head where none of its cells is a number. */
export function guessTable(whole: string, written: TableWritten = {}): Outcome<TableGuess> {
  const text = whole.slice(0, mostLetters)
  const separator = written.separator ?? separatorOf(text)
  const rows = tableRows(text, lookedAt, separator).map(row => row.slice(0, mostColumns))
  const filled = rows.findIndex(row => row.some(cell => cell !== ''))
  const first = rows[filled]
  if (first === undefined) return refused('import-table-empty', {})
  const hasHead = written.hasHead ?? first.every(cell => !/^[-+−]?\d+([.,]\d+)?$/.test(cell))
  const head = hasHead ? first : []
  const headLines = filled + (hasHead ? 1 : 0)
  const body = rows.slice(headLines).filter(row => row.some(cell => cell !== ''))
  const width = Math.max(first.length, ...body.map(row => row.length))
  const named = columnsByName(head)
  const decimal = decimalOf(body.flatMap(row => row.filter((_, at) => isFigure(named, at))))
  const figures = hasDegrees(named, body) ? inDegrees(named) : named
  const units = lengthFigures.map(figure => head[figures[figure] ?? -1] ?? '').join(' ')
  return {
    ok: true,
    problems: [],
    value: {
      of: lineOf(figures, head),
      columns: {
        figures,
        places: placesOf(figures),
        length: /\b(ft|feet|foot)\b|'/i.test(units) ? 'ft' : 'm',
        decimal,
        separator,
        headLines,
      },
      hasHead,
      names: Array.from({ length: width }, (_, at) => head[at] || `column ${at + 1}`),
      sample: body.slice(0, shown),
    },
  }
}

type Figures = Readonly<Record<TableFigure, number | null>>
const notFigures: ReadonlySet<string> = new Set(['name', 'crop', 'cultivar', 'kind', 'support', 'shape'])

function isFigure(figures: Figures, at: number): boolean {
  return Object.entries(figures).some(([name, column]) => column === at && !notFigures.has(name))
}

/** Without a head, a table of two columns or more is taken for row, tree and, behind them, cultivar. */
function columnsByName(head: readonly string[]): Figures {
  const figures = Object.fromEntries(Object.keys(tableFigures).map(name => [name, null])) as Record<
    TableFigure,
    number | null
  >
  if (head.length === 0) return { ...figures, row: 0, tree: 1, cultivar: 2 }
  const used = new Set<number>()
  for (const [figure, pattern] of words) {
    const at = head.findIndex((name, i) => !used.has(i) && pattern.test(name.slice(0, 100)))
    if (at < 0 || figures[figure] !== null) continue
    figures[figure] = at
    used.add(at)
  }
  return figures
}

/** Programs for maps call longitude and latitude x and y; nobody measures metres to a tenth of a millimetre. */
function hasDegrees({ longitude, latitude, x, y }: Figures, body: readonly (readonly string[])[]): boolean {
  if (longitude !== null || latitude !== null || x === null || y === null || body.length === 0) return false
  return body.every(row =>
    [row[x] ?? '', row[y] ?? ''].every((cell, i) => {
      if (cell === '') return true
      const value = Number(cell.replace(',', '.').replace('−', '-'))
      return /[.,]\d{4,}$/.test(cell) && Math.abs(value) <= (i === 0 ? 180 : 90)
    }),
  )
}

function inDegrees({ x, y, endX, endY, ...others }: Figures): Figures {
  return {
    ...others,
    longitude: x,
    latitude: y,
    endLongitude: endX,
    endLatitude: endY,
    x: null,
    y: null,
    endX: null,
    endY: null,
  }
}

function placesOf({ shape, longitude, latitude, x, y }: Figures): TablePlaces {
  if (shape !== null) return 'shape'
  if (longitude !== null && latitude !== null) return 'degrees'
  return x !== null && y !== null ? 'metres' : 'numbers'
}

function lineOf(figures: Figures, head: readonly string[]): TableOf {
  const has = (...names: readonly TableFigure[]) => names.some(name => figures[name] !== null)
  if (has('shape', 'endLongitude', 'endX', 'rowLength')) return 'rows'
  if (!has('tree') && has('count', 'spacing')) return 'rows'
  const isStations =
    has('height', 'overhang', 'support', 'facing') || head.some(name => /\b(station|tubes|nest)/i.test(name))
  return isStations && !has('tree', 'cultivar', 'crop') ? 'stations' : 'trees'
}
