import type { TableOf } from '#geo/file/open-import'
import type { TableColumns, TableFigure, TableGuess } from '#geo/file/tree-columns'
import { ChoiceField } from '../../parts/choice-field'
import { Table } from '../../parts/table'

type Props = {
  readonly of: TableOf
  readonly guess: TableGuess
  readonly columns: TableColumns
  readonly onChange: (columns: TableColumns) => void
}

type Line = { readonly cells: readonly string[]; readonly at: number }

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

const notThere = 'none'

/** Which column holds what and how it is written: guessed, and open to be put right. */
export function ImportColumns({ of, guess, columns, onChange }: Props) {
  const { names, sample } = guess
  const choices = [
    { value: notThere, name: 'not in the table' },
    ...names.map((name, at) => ({ value: String(at), name })),
  ]
  const setFigure = (figure: TableFigure, value: string) =>
    onChange({ ...columns, figures: { ...columns.figures, [figure]: value === notThere ? null : Number(value) } })
  return (
    <section className="stack" aria-label="Which column is which">
      <h3>Which column is which</h3>
      <p className="aside-note">Guessed from the table. Put right what is wrong; below you see what comes of it.</p>
      <Table
        caption="The first lines as they stand in the table"
        columns={names.map((name, at) => ({ key: String(at), head: name, cell: ({ cells }: Line) => cells[at] ?? '' }))}
        rows={sample.map((cells, at) => ({ cells, at }))}
        keyOf={({ at }) => String(at)}
      />
      <div className="bring-columns">
        {figuresOf[of].map(figure => (
          <ChoiceField
            key={figure}
            label={labels[figure]}
            value={columns.figures[figure] === null ? notThere : String(columns.figures[figure])}
            choices={choices}
            onCommit={value => setFigure(figure, value)}
          />
        ))}
        <ChoiceField
          label={of === 'trees' ? 'Widths in' : 'Heights in'}
          value={columns.length}
          choices={[
            { value: 'm', name: 'metres' },
            { value: 'ft', name: 'feet' },
          ]}
          onCommit={length => onChange({ ...columns, length })}
        />
        <ChoiceField
          label="Decimals"
          value={columns.decimal}
          choices={[
            { value: '.', name: 'point: 4.5' },
            { value: ',', name: 'comma: 4,5' },
          ]}
          onCommit={decimal => onChange({ ...columns, decimal })}
        />
      </div>
    </section>
  )
}
