import { describe, expect, it } from 'vitest'
import { guessColumns, type WeatherGuess } from '#geo/file/weather-columns'
import { readWeatherTable } from '#geo/file/weather-table'
import { mergedWeather, setWeather } from '#geo/plan/edits-seasons'
import { seasonOf, type WeatherDay } from '#geo/plan/plan'
import { problemText } from '#geo/problem'
import { frozen, smallPlan } from '../../support/builders'
import { rowsOf } from '../../support/city-weather'

function guess(text: string): WeatherGuess {
  const outcome = guessColumns(text)
  if (!outcome.ok) throw new Error(outcome.problems.map(problemText).join())
  return outcome.value
}

function read(text: string, change: Partial<WeatherGuess['columns']> = {}) {
  const outcome = readWeatherTable(text, { ...guess(text).columns, ...change })
  return { ...outcome, days: outcome.ok ? outcome.value.days : [], texts: outcome.problems.map(problemText) }
}

const codes = ({ problems }: { problems: readonly { code: string }[] }) => problems.map(({ code }) => code)

describe('a table of weather', () => {
  it('in plan units is read as it stands', () => {
    const text = 'date,min,max,rain,wind\n2026-03-01,4.1,12.3,0.0,3.2\n2026-03-02,,11,1.5,\n'
    expect(read(text)).toMatchObject({
      problems: [],
      days: [
        ['2026-03-01', 4.1, 12.3, 0, 3.2],
        ['2026-03-02', null, 11, 1.5, null],
      ],
    })
  })

  it('with decimal commas, points between day and month, and semicolons', () => {
    const text =
      'Datum;Temp. max (°C);Temp. min (°C);Niederschlag (mm);Wind (km/h)\n1.3.2026;12,3;−4,1;0,0;36,0\n13.3.2026;9;1,5;2,4;18\n'
    expect(guess(text)).toMatchObject({
      isOrderSure: true,
      columns: { decimal: ',', wind: 'km/h', temperature: 'degC' },
    })
    expect(read(text).days).toEqual([
      ['2026-03-01', -4.1, 12.3, 0, 10],
      ['2026-03-13', 1.5, 9, 2.4, 5],
    ])
  })

  it('in Fahrenheit, inches and miles an hour, month before day', () => {
    const text =
      '"DATE","TMAX","TMIN","PRCP (in)","AWND (mph)"\n"3/1/2026","50","32","1.00","10"\n"3/25/2026","88","50","T","0"\n'
    expect(guess(text).columns).toMatchObject({ temperature: 'degF', rain: 'in', wind: 'mph', order: 'month-day' })
    expect(read(text).days).toEqual([
      ['2026-03-01', 0, 10, 25.4, 4.47],
      ['2026-03-25', 10, 31.11, 0, 0],
    ])
  })

  it('asks for the order of day and month where every date can be read both ways', () => {
    const text = 'date,min,max\n3/4/2026,1,10\n5/4/2026,2,11\n'
    expect(guess(text).isOrderSure).toBe(false)
    expect(read(text, { order: 'day-month' }).days.map(([date]) => date)).toEqual(['2026-04-03', '2026-04-05'])
    expect(read(text, { order: 'month-day' }).days.map(([date]) => date)).toEqual(['2026-03-04', '2026-05-04'])
  })

  it('without names takes the cooler column for the lowest', () => {
    const { columns, names } = guess('20260301\t12\t3\n20260302\t14\t5\n')
    expect(columns).toMatchObject({
      date: 0,
      figures: { minimum: 2, maximum: 1, rain: null, wind: null },
      headLines: 0,
    })
    expect(names).toEqual(['column 1', 'column 2', 'column 3'])
  })

  it('with lines of words above, a time behind the date and columns of other things', () => {
    const text = 'Station: Hill farm\n\ntime,humidity min,T min,T max,gust max\n2026-03-01T00:00Z,40,4,12,9\n'
    expect(guess(text).columns).toMatchObject({ figures: { minimum: 2, maximum: 3, wind: null }, headLines: 3 })
    expect(read(text).days).toEqual([['2026-03-01', 4, 12, null, null]])
  })

  it('tells row by row what could not be read, and keeps the rest', () => {
    const text = [
      'date,min,max,rain',
      '2026-03-01,4,12,0',
      '2026-02-30,4,12,0',
      '2026-03-02,cold,12,0',
      '2026-03-02,5,13,0',
      '2026-03-05,4,120,0',
      '2026-03-06,14,4,NA',
    ].join('\n')
    const { days, texts, ...outcome } = read(text)
    expect(days).toEqual([
      ['2026-03-01', 4, 12, 0, null],
      ['2026-03-02', null, 12, 0, null],
      ['2026-03-05', 4, null, 0, null],
      ['2026-03-06', 14, 4, null, null],
    ])
    expect(codes(outcome)).toEqual([
      'weather-row-date',
      'weather-row-number',
      'weather-row-repeated',
      'weather-row-range',
      'weather-row-order',
      'weather-table-missing',
    ])
    expect(texts[0]).toBe('Row 3: “2026-02-30” is no date that can be read. The row is left out.')
    expect(texts[1]).toContain('Row 4, 2026-03-02: the lowest temperature “cold” is no number')
    expect(texts.at(-1)).toContain('2 days are missing between 2026-03-01 and 2026-03-06')
  })

  it('of real weather is read whole: Seattle and New York side by side give each day twice', () => {
    const rows = rowsOf('weather.csv').filter(({ location }) => location === 'Seattle')
    const names = ['date', 'precipitation', 'temp_max', 'temp_min', 'wind', 'weather']
    const text = [names, ...rows.map(row => names.map(name => row[name]!))].map(row => row.join(',')).join('\r\n')
    const outcome = read(text)
    expect(guess(text).columns.figures).toEqual({ minimum: 3, maximum: 2, rain: 1, wind: 4 })
    expect(outcome.days).toHaveLength(1461)
    expect(outcome.problems).toEqual([])
  })
})

describe('what is no table of weather', () => {
  it('is refused in plain words', () => {
    for (const text of ['', 'hello', '{"type":"FeatureCollection"}', '\0\0\0', 'a,b\n1,2\n3,4']) {
      const outcome = guessColumns(text)
      expect(outcome.ok, text).toBe(false)
      expect(codes(outcome)).toEqual(['weather-table-no-dates'])
    }
  })

  it('is refused when nothing in the date column is a date, with the first rows that are not', () => {
    const text = 'date,min\n2026-03-01,4\n'
    const outcome = read(text, { date: 1 })
    expect(outcome.ok).toBe(false)
    expect(codes(outcome)).toEqual(['weather-table-empty', 'weather-row-date'])
  })

  it('is bounded: a million rows, a million columns, a million faults', () => {
    const day = '2026-03-01,4,12\n'
    expect(codes(read(`date,min,max\n${day.repeat(50_000)}`))).toEqual(['weather-table-large'])
    expect(codes(readWeatherTable('x'.repeat(20_000_001), guess(day).columns))).toEqual(['weather-table-large'])
    expect(read(`date,min,max\n2026-03-01,4,12${',9'.repeat(100_000)}\n`).days).toHaveLength(1)
    const faults = read(`date,min,max\n${day}${'soon,1,2\n'.repeat(5000)}`)
    expect(faults.problems).toHaveLength(101)
    expect(faults.texts.at(-1)).toContain('4900 more problems')
    const long = read(`date,min,max\n${day}2026-03-02,${'7'.repeat(10_000)},9\n`)
    expect(long.texts[0]!.length).toBeLessThan(200)
  })
})

describe('weather in a plan', () => {
  const plan = frozen(smallPlan())
  const days: readonly WeatherDay[] = [['2026-03-02', 1, 9, 0, null]]

  it('is set and taken away', () => {
    const after = setWeather(2026, days).apply(plan)
    expect(seasonOf(after, 2026)!.weather).toEqual({ days })
    expect(setWeather(2026, null).apply(after)).toEqual(plan)
    expect(setWeather(2026, []).apply(plan)).toBe(plan)
  })

  it('is merged day by day: new figures go before old ones, unknown ones before none', () => {
    const newer: readonly WeatherDay[] = [
      ['2026-03-02', null, 10, null, 2],
      ['2026-03-01', 0, 8, 0, 0],
    ]
    expect(mergedWeather(days, newer)).toEqual([
      ['2026-03-01', 0, 8, 0, 0],
      ['2026-03-02', 1, 10, 0, 2],
    ])
  })
})
