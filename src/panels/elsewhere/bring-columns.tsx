import {
  type TableColumns,
  type TableFigure,
  type TableGuess,
  type TableOf,
  type TablePlaces,
  tableFigures,
} from '#geo/file/tree-columns'
import { listed } from '#geo/wording/plain'
import { ChoiceField } from '../../parts/choice-field'
import { ColumnMatch, DecimalField } from '../../parts/column-match'
import { capitalised } from '../../text/words'

type Props = {
  readonly of: TableOf
  readonly guess: TableGuess
  readonly columns: TableColumns
  readonly onChange: (columns: TableColumns) => void
}

const labels: Readonly<Partial<Record<TableFigure, string>>> = {
  row: 'Row number or name',
  tree: 'Tree number in the row',
  height: 'Height of the station',
  kind: 'Kind: row, block, plant or bed',
}

const placeNames: Readonly<Record<TablePlaces, string>> = {
  degrees: 'longitude and latitude',
  metres: 'x and y, metres or feet from one place',
  numbers: 'row and tree numbers alone',
  shape: 'a geometry (WKT)',
}

const placesOf: Readonly<Record<TableOf, readonly TablePlaces[]>> = {
  trees: ['degrees', 'metres', 'numbers', 'shape'],
  rows: ['degrees', 'metres', 'numbers', 'shape'],
  stations: ['degrees', 'metres', 'shape'],
}

/** Figures that say where a thing is, by what each line is and how the table says it. */
const placeFigures: Readonly<Record<TableOf, Readonly<Record<TablePlaces, readonly TableFigure[]>>>> = {
  trees: {
    degrees: ['longitude', 'latitude', 'row', 'tree'],
    metres: ['x', 'y', 'row', 'tree'],
    numbers: ['row', 'tree'],
    shape: ['shape', 'row', 'tree'],
  },
  rows: {
    degrees: ['longitude', 'latitude', 'endLongitude', 'endLatitude', 'bearing', 'rowLength', 'row'],
    metres: ['x', 'y', 'endX', 'endY', 'bearing', 'rowLength', 'row'],
    numbers: ['row', 'rowLength'],
    shape: ['shape', 'kind', 'rowLength', 'bearing'],
  },
  stations: { degrees: ['longitude', 'latitude'], metres: ['x', 'y'], numbers: [], shape: ['shape'] },
}

const otherFigures: Readonly<Record<TableOf, readonly TableFigure[]>> = {
  trees: ['name', 'crop', 'cultivar', 'spread', 'planted', 'removed', 'vigour', 'femalesPerPlant'],
  rows: [
    ...(['name', 'spacing', 'rowSpacing', 'count', 'crop', 'cultivar'] as const),
    ...(['planted', 'removed', 'vigour', 'femalesPerPlant', 'spread'] as const),
  ],
  stations: ['name', 'height', 'facing', 'overhang', 'support', 'since', 'until'],
}

/** Which column holds what and how it is written: guessed, and open to be put right. */
export function ImportColumns({ of, guess, columns, onChange }: Props) {
  const figures = [...placeFigures[of][columns.places], ...otherFigures[of]]
  const used = new Set(figures.map(figure => columns.figures[figure]))
  const unused = guess.names.filter((_, at) => !used.has(at))
  // Seldom wanted: asked only where the table has such a column, or other columns are left over for it.
  const isShown = (figure: TableFigure) => columns.figures[figure] !== null || !seldom.has(figure) || unused.length > 0
  return (
    <ColumnMatch<TableFigure>
      names={guess.names}
      sample={guess.sample}
      caption="The first lines as they stand in the table"
      figures={figures
        .filter(isShown)
        .map(figure => ({ figure, label: labels[figure] ?? capitalised(tableFigures[figure]) }))}
      columnOf={figure => columns.figures[figure]}
      onMatch={(figure, at) => onChange({ ...columns, figures: { ...columns.figures, [figure]: at } })}
    >
      {unused.length === 0 ? null : <p className="aside-note">Not used: {listed(unused)}.</p>}
      <div className="columns">
        <ChoiceField
          label="Places are given by"
          value={columns.places}
          choices={placesOf[of].map(value => ({ value, name: placeNames[value] }))}
          onCommit={places => onChange({ ...columns, places })}
        />
        <ChoiceField
          label="Lengths in"
          value={columns.length}
          choices={[
            { value: 'm', name: 'metres' },
            { value: 'ft', name: 'feet' },
          ]}
          onCommit={length => onChange({ ...columns, length })}
        />
        <DecimalField value={columns.decimal} onCommit={decimal => onChange({ ...columns, decimal })} />
      </div>
    </ColumnMatch>
  )
}

const seldom: ReadonlySet<TableFigure> = new Set([
  ...(['removed', 'vigour', 'femalesPerPlant', 'overhang', 'support', 'since', 'until'] as const),
])
