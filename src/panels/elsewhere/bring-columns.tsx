import type { TableOf } from '#geo/file/open-import'
import type { TableColumns, TableFigure, TableGuess } from '#geo/file/tree-columns'
import { ChoiceField } from '../../parts/choice-field'
import { ColumnMatch, DecimalField } from '../../parts/column-match'

type Props = {
  readonly of: TableOf
  readonly guess: TableGuess
  readonly columns: TableColumns
  readonly onChange: (columns: TableColumns) => void
}

const labels: Readonly<Record<TableFigure, string>> = {
  row: 'Row number',
  tree: 'Tree number in the row',
  longitude: 'Longitude',
  latitude: 'Latitude',
  name: 'Name',
  crop: 'Crop',
  cultivar: 'Cultivar',
  spread: 'Width of the crown',
  planted: 'Year of planting',
  height: 'Height of the station',
  facing: 'Facing',
}

const figuresOf: Readonly<Record<TableOf, readonly TableFigure[]>> = {
  trees: ['row', 'tree', 'longitude', 'latitude', 'name', 'crop', 'cultivar', 'spread', 'planted'],
  stations: ['longitude', 'latitude', 'name', 'height', 'facing'],
}

/** Which column holds what and how it is written: guessed, and open to be put right. */
export function ImportColumns({ of, guess, columns, onChange }: Props) {
  return (
    <ColumnMatch<TableFigure>
      names={guess.names}
      sample={guess.sample}
      caption="The first lines as they stand in the table"
      figures={figuresOf[of].map(figure => ({ figure, label: labels[figure] }))}
      columnOf={figure => columns.figures[figure]}
      onMatch={(figure, at) => onChange({ ...columns, figures: { ...columns.figures, [figure]: at } })}
    >
      <div className="columns">
        <ChoiceField
          label={of === 'trees' ? 'Widths in' : 'Heights in'}
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
