import type { Outcome } from '../problem'
import { refused } from './import'
import { tableRows } from './table-rows'
import { type Decimal, decimalOf } from './weather-cells'

/** What a column of a table of trees or stations may hold. */
export const tableFigures = [
  'row',
  'tree',
  'longitude',
  'latitude',
  'name',
  'crop',
  'cultivar',
  'spread',
  'planted',
  'height',
  'facing',
] as const
export type TableFigure = (typeof tableFigures)[number]

/** How a table is to be read: which column (counted from 0) holds what; null where none does. */
export type TableColumns = {
  readonly figures: Readonly<Record<TableFigure, number | null>>
  /** Of spreads and heights. */
  readonly length: 'm' | 'ft'
  readonly decimal: Decimal
  /** Lines at the top that hold no tree. */
  readonly headLines: number
}

export type TableGuess = {
  readonly columns: TableColumns
  /** Names of the columns; "column 3" where the table has none. */
  readonly names: readonly string[]
  /** The first lines as they stand in the table. */
  readonly sample: readonly (readonly string[])[]
}

/** Rows that the columns are guessed from, and those shown of them. */
const lookedAt = 400
const shown = 6
/** More columns than a list of trees can have. */
const mostColumns = 100

/** Names of columns, the surest first; a column serves once. */
const words: readonly (readonly [TableFigure, RegExp])[] = [
  ['longitude', /^(lon|lng|long|longitude|x|east(ing)?)\b/i],
  ['latitude', /^(lat|latitude|y|north(ing)?)\b/i],
  ['cultivar', /cultivar|variet|sorte|clone/i],
  ['crop', /^(crop|fruit|species|kind of fruit)( name)?$/i],
  ['row', /^row\b(?! spacing)|^line\b|^reihe/i],
  ['tree', /^(tree|plant|pos(ition)?|number|no\.?|nr\.?|#)\b|^(tree|plant) (number|no)/i],
  ['spread', /spread|crown|diameter|width/i],
  ['planted', /plant(ed|ing)|year/i],
  ['height', /height/i],
  ['facing', /facing|aspect|direction/i],
  ['name', /^(?!crop\b).*(name|label)/i],
  ['name', /^id$|^(station|planting)$/i],
]

/** Looks at a table of text: which columns it seems to have. The first line is a head where none of its cells is a number. */
export function guessTable(text: string): Outcome<TableGuess> {
  const rows = tableRows(text, lookedAt).map(row => row.slice(0, mostColumns))
  const filled = rows.findIndex(row => row.some(cell => cell !== ''))
  const first = rows[filled]
  if (first === undefined) return refused('import-table-empty', {})
  const isHead = first.every(cell => !/^[-+−]?\d+([.,]\d+)?$/.test(cell))
  const head = isHead ? first : []
  const headLines = filled + (isHead ? 1 : 0)
  const body = rows.slice(headLines).filter(row => row.some(cell => cell !== ''))
  const width = Math.max(first.length, ...body.map(row => row.length))
  const figures = columnsByName(head)
  const figureColumns = new Set(
    Object.entries(figures).flatMap(([name, at]) => (name === 'name' || at === null ? [] : [at])),
  )
  const lengths = [figures.spread, figures.height].map(at => head[at ?? -1] ?? '').join(' ')
  return {
    ok: true,
    problems: [],
    value: {
      columns: {
        figures,
        length: /\b(ft|feet|foot)\b|'/i.test(lengths) ? 'ft' : 'm',
        decimal: decimalOf(body.flatMap(row => row.filter((_, at) => figureColumns.has(at)))),
        headLines,
      },
      names: Array.from({ length: width }, (_, at) => head[at] || `column ${at + 1}`),
      sample: body.slice(0, shown),
    },
  }
}

/** Without a head, a table of two columns or more is taken for row, tree and, behind them, cultivar. */
function columnsByName(head: readonly string[]): Record<TableFigure, number | null> {
  const figures = Object.fromEntries(tableFigures.map(name => [name, null])) as Record<TableFigure, number | null>
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
