import type { Outcome } from '../problem'
import { tableRows } from './table-rows'
import {
  type DateOrder,
  type Decimal,
  dateOf,
  dateOrderOf,
  decimalOf,
  isMissing,
  isTrace,
  numberOf,
} from './weather-cells'

/** The columns that a table of daily weather may have; all but the date may be missing. */
export const weatherFigures = ['minimum', 'maximum', 'rain', 'wind'] as const
export type WeatherFigure = (typeof weatherFigures)[number]

/** How a table is to be read: which column (counted from 0) holds what, and how it is written. */
export type WeatherColumns = {
  readonly date: number
  readonly figures: Readonly<Record<WeatherFigure, number | null>>
  readonly temperature: 'degC' | 'degF'
  readonly rain: 'mm' | 'in'
  readonly wind: 'm/s' | 'km/h' | 'mph'
  readonly order: DateOrder
  readonly decimal: Decimal
  /** Lines at the top that are not days. */
  readonly headLines: number
}

/** What can be said of a table before it is read. */
export type WeatherGuess = {
  readonly columns: WeatherColumns
  /** Names of the columns; "column 3" where the table has none. */
  readonly names: readonly string[]
  /** The first days as they stand in the table. */
  readonly sample: readonly (readonly string[])[]
  /** False where day and month could be either way round: then the grower must be asked. */
  readonly isOrderSure: boolean
}

/** Rows that the columns are guessed from, and those shown of them. */
const lookedAt = 400
const shown = 6
/** More columns than a table of weather can have. */
const mostColumns = 100

/** Looks at a table of text: which columns it seems to have. Not ok where no column holds dates. */
export function guessColumns(text: string): Outcome<WeatherGuess> {
  const rows = tableRows(text, lookedAt).map(row => row.slice(0, mostColumns))
  const isDate = (cell: string | undefined) =>
    cell !== undefined && (dateOf(cell, 'day-month') ?? dateOf(cell, 'month-day')) !== null
  const headLines = rows.findIndex(row => row.some(isDate))
  if (headLines < 0) {
    return { ok: false, problems: [{ code: 'weather-table-no-dates', severity: 'error', at: '', values: {} }] }
  }
  const days = rows.slice(headLines).filter(row => row.some(cell => cell !== ''))
  const width = Math.max(...days.map(row => row.length))
  const head = rows.slice(0, headLines).findLast(row => row.filter(cell => cell !== '').length > 1) ?? []
  const columnOf = (at: number) => days.map(row => row[at] ?? '')
  const all = Array.from({ length: width }, (_, at) => at)
  const dated = all.map(at => columnOf(at).filter(isDate).length)
  const date = dated.indexOf(Math.max(...dated))
  const order = dateOrderOf(columnOf(date))
  const decimal = decimalOf(all.filter(at => at !== date).flatMap(columnOf))
  const figuresOf = (at: number) =>
    columnOf(at).flatMap(cell => (isMissing(cell) || isTrace(cell) ? [] : [numberOf(cell, decimal)]))
  const numeric = all.filter(at => {
    const figures = figuresOf(at)
    return at !== date && figures.length > 0 && figures.filter(figure => figure !== null).length >= figures.length / 2
  })
  const named = namedColumns(head, numeric)
  const figures = named.minimum === null && named.maximum === null ? { ...named, ...pairOf(numeric, figuresOf) } : named
  const headOf = (figure: WeatherFigure) => head[figures[figure] ?? -1] ?? ''
  const temperatures = [figures.minimum, figures.maximum].flatMap(at => (at === null ? [] : figuresOf(at)))
  return {
    ok: true,
    problems: [],
    value: {
      columns: {
        date,
        figures,
        temperature: isFahrenheit(`${headOf('minimum')} ${headOf('maximum')}`, temperatures) ? 'degF' : 'degC',
        rain: /\binch|\bin\b|_in\b|"/i.test(headOf('rain')) ? 'in' : 'mm',
        wind: windUnit(headOf('wind')),
        order: order ?? 'day-month',
        decimal,
        headLines,
      },
      names: all.map(at => head[at] || `column ${at + 1}`),
      sample: days.slice(0, shown),
      isOrderSure: order !== null,
    },
  }
}

const words: Readonly<Record<WeatherFigure, RegExp>> = {
  minimum: /min|low|\btn\b|_tn|^tn/i,
  maximum: /max|high|\btx\b|_tx|^tx/i,
  rain: /rain|prec|prcp|pluv|regen|niederschlag|\brr\b|^rr/i,
  wind: /wind|wspd|awnd/i,
}
/** Columns of other things that have a lowest and a highest too. */
const other = /wind|gust|rain|prec|hum|pres|dew|soil|radia|time/i

function namedColumns(head: readonly string[], numeric: readonly number[]): Record<WeatherFigure, number | null> {
  const find = (figure: WeatherFigure, isRight: (name: string) => boolean) =>
    numeric.find(at => words[figure].test(head[at] ?? '') && isRight(head[at] ?? '')) ?? null
  return {
    minimum: find('minimum', name => !other.test(name)),
    maximum: find('maximum', name => !other.test(name)),
    rain: find('rain', name => !/wind/i.test(name)),
    wind: find('wind', name => !/gust|dir|max/i.test(name)),
  }
}

/** Without names: the first two columns of figures of which one is never above the other are lowest and highest. */
function pairOf(
  numeric: readonly number[],
  figuresOf: (at: number) => readonly (number | null)[],
): Pick<Record<WeatherFigure, number | null>, 'minimum' | 'maximum'> {
  const [one, two] = numeric
  if (one === undefined || two === undefined) return { minimum: null, maximum: null }
  const mean = (at: number) => {
    const known = figuresOf(at).filter(figure => figure !== null)
    return known.reduce((sum, figure) => sum + figure, 0) / known.length
  }
  return mean(one) <= mean(two) ? { minimum: one, maximum: two } : { minimum: two, maximum: one }
}

/** Hotter than this in degC is next to nowhere, in degF it is a spring day; a few such figures may be slips. */
const hottest = 45
const fewSlips = 0.2

function isFahrenheit(head: string, figures: readonly (number | null)[]): boolean {
  if (/°\s*F|\bF\b|_f\b|fahrenheit|degf/i.test(head)) return true
  if (/°\s*C|\bC\b|_c\b|celsius|degc/i.test(head)) return false
  return figures.filter(figure => figure !== null && figure > hottest).length > fewSlips * figures.length
}

function windUnit(head: string): WeatherColumns['wind'] {
  if (/km\s*\/?\s*h|kph|kmph/i.test(head)) return 'km/h'
  return /mph|mi\s*\/\s*h/i.test(head) ? 'mph' : 'm/s'
}
