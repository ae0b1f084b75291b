import { type WeatherColumns, type WeatherFigure, type WeatherGuess, weatherFigures } from '#geo/file/weather-columns'
import { ChoiceField } from '../../parts/choice-field'
import { ColumnMatch, DecimalField } from '../../parts/column-match'

type Props = {
  readonly guess: WeatherGuess
  readonly columns: WeatherColumns
  readonly onChange: (columns: WeatherColumns) => void
}

const labels: Readonly<Record<WeatherFigure, string>> = {
  minimum: 'Lowest temperature',
  maximum: 'Highest temperature',
  rain: 'Rain',
  wind: 'Wind',
}

/** Which column holds what and how it is written: guessed, and open to be put right. */
export function ColumnChoices({ guess, columns, onChange }: Props) {
  const set = (patch: Partial<WeatherColumns>) => onChange({ ...columns, ...patch })
  return (
    <ColumnMatch<WeatherFigure | 'date'>
      names={guess.names}
      sample={guess.sample}
      caption="The first days as they stand in the table"
      figures={[
        { figure: 'date', label: 'Date', isNeeded: true },
        ...weatherFigures.map(figure => ({ figure, label: labels[figure] })),
      ]}
      columnOf={figure => (figure === 'date' ? columns.date : columns.figures[figure])}
      onMatch={(figure, at) =>
        figure === 'date' ? set({ date: at ?? 0 }) : set({ figures: { ...columns.figures, [figure]: at } })
      }
    >
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
        <DecimalField value={columns.decimal} onCommit={decimal => set({ decimal })} />
      </div>
    </ColumnMatch>
  )
}
