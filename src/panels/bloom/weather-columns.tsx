import { type WeatherColumns, type WeatherFigure, type WeatherGuess, weatherFigures } from '#geo/file/weather-columns'
import { ChoiceField } from '../../parts/choice-field'
import { Table } from '../../parts/table'

type Props = {
  readonly guess: WeatherGuess
  readonly columns: WeatherColumns
  readonly onChange: (columns: WeatherColumns) => void
}

/** A line of the table as it stands there. */
type Line = { readonly cells: readonly string[]; readonly at: number }

const labels: Readonly<Record<WeatherFigure, string>> = {
  minimum: 'Lowest temperature',
  maximum: 'Highest temperature',
  rain: 'Rain',
  wind: 'Wind',
}

const notThere = 'none'

/** Which column holds what and how it is written: guessed, and open to be put right. */
export function ColumnChoices({ guess, columns, onChange }: Props) {
  const { names, sample } = guess
  const set = (patch: Partial<WeatherColumns>) => onChange({ ...columns, ...patch })
  const choices = names.map((name, at) => ({ value: String(at), name }))
  const rows: readonly Line[] = sample.map((cells, at) => ({ cells, at }))
  const setFigure = (figure: WeatherFigure, value: string) =>
    set({ figures: { ...columns.figures, [figure]: value === notThere ? null : Number(value) } })
  return (
    <section className="stack" aria-labelledby="columns">
      <h3 id="columns">Which column is which</h3>
      <p className="aside-note">Guessed from the table. Put right what is wrong; below you see what comes of it.</p>
      <Table
        caption="The first days as they stand in the table"
        columns={names.map((name, at) => ({ key: String(at), head: name, cell: ({ cells }: Line) => cells[at] ?? '' }))}
        rows={rows}
        keyOf={({ at }) => String(at)}
      />
      <div className="columns">
        <ChoiceField
          label="Date"
          value={String(columns.date)}
          choices={choices}
          onCommit={value => set({ date: Number(value) })}
        />
        {weatherFigures.map(figure => (
          <ChoiceField
            key={figure}
            label={labels[figure]}
            value={columns.figures[figure] === null ? notThere : String(columns.figures[figure])}
            choices={[{ value: notThere, name: 'not in the table' }, ...choices]}
            onCommit={value => setFigure(figure, value)}
          />
        ))}
      </div>
      <h3>How it is written</h3>
      <div className="columns">
        <ChoiceField
          label="Temperatures in"
          value={columns.temperature}
          choices={[
            { value: 'degC', name: '°C' },
            { value: 'degF', name: '°F' },
          ]}
          onCommit={temperature => set({ temperature })}
        />
        <ChoiceField
          label="Rain in"
          value={columns.rain}
          choices={[
            { value: 'mm', name: 'mm' },
            { value: 'in', name: 'inches' },
          ]}
          onCommit={rain => set({ rain })}
        />
        <ChoiceField
          label="Wind in"
          value={columns.wind}
          choices={[
            { value: 'm/s', name: 'm/s' },
            { value: 'km/h', name: 'km/h' },
            { value: 'mph', name: 'miles an hour' },
          ]}
          onCommit={wind => set({ wind })}
        />
        <ChoiceField
          label="Dates such as 3/4"
          value={columns.order}
          choices={[
            { value: 'day-month', name: '3 April: day first' },
            { value: 'month-day', name: '4 March: month first' },
          ]}
          onCommit={order => set({ order })}
          {...(guess.isOrderSure ? {} : { note: 'The table does not say which: please choose.' })}
        />
        <ChoiceField
          label="Decimals"
          value={columns.decimal}
          choices={[
            { value: '.', name: 'point: 4.5' },
            { value: ',', name: 'comma: 4,5' },
          ]}
          onCommit={decimal => set({ decimal })}
        />
      </div>
    </section>
  )
}
