import { readFileSync } from 'node:fs'
import type { WeatherDay } from '#geo/plan/plan'

/** Rows of a table of the development dependency `vega-datasets` (US government data), by column. */
export function rowsOf(name: string): readonly Readonly<Record<string, string>>[] {
  const file = new URL(`../../node_modules/vega-datasets/data/${name}`, import.meta.url)
  const [head = '', ...lines] = readFileSync(file, 'utf8').trim().split(/\r?\n/)
  const columns = head.split(',')
  return lines.map(line => Object.fromEntries(line.split(',').map((cell, i) => [columns[i]!, cell])))
}

/** Real daily weather of a city between two dates, both counted in; its wind has no sure unit and is left out. */
export function cityWeather(city: 'Seattle' | 'New York', from: string, to: string): readonly WeatherDay[] {
  return rowsOf('weather.csv')
    .filter(({ location, date }) => location === city && date! >= from && date! <= to)
    .map(({ date, temp_min, temp_max, precipitation }) => [
      date!,
      Number(temp_min),
      Number(temp_max),
      Number(precipitation),
      null,
    ])
}
