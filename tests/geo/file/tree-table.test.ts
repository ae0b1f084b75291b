import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planTable } from '#geo/file/csv-tables'
import { csvText, withoutGuard } from '#geo/file/csv-text'
import type { Import } from '#geo/file/import'
import { tidyName } from '#geo/file/spelling'
import { tableRows } from '#geo/file/table-rows'
import { guessTable, type TableGuess } from '#geo/file/tree-columns'
import { readStationTable, readTreeTable, type TableOptions } from '#geo/file/tree-table'
import type { Outcome } from '#geo/problem'
import { localFrame } from '#geo/space/ring'
import { plantFeature, smallPlan, stationFeature } from '../../support/builders'

const seed = 20261125

function guess(text: string): TableGuess {
  const outcome = guessTable(text)
  if (!outcome.ok) throw new Error('no guess')
  return outcome.value
}

const shown = (outcome: Outcome<Import>) => ({
  items: outcome.ok ? outcome.value.items : [],
  groups: outcome.ok ? outcome.value.groups : [],
  spellings: outcome.ok ? outcome.value.spellings : [],
  told: outcome.problems.map(({ code, values }) => [code, values.row ?? values.found ?? values.used]),
})
const trees = (text: string, options?: TableOptions) => shown(readTreeTable(text, guess(text).columns, options))
const grid = { origin: [-1.7, 52.2] as const, bearing: 90, spacing: 2.5, rowSpacing: 4 }

describe('a table of trees', () => {
  it('by coordinates, with semicolons, decimal commas and feet', () => {
    const text =
      'Latitude;Longitude;Fruit;Variety;Spread (ft);Planted\n52,2;-1,7;Apples;Cox;10;2015\n52,2001;−1,7;apple;;3 m;\n'
    const { items, groups, told } = trees(text)
    expect(told).toEqual([])
    expect(items.map(({ geometry, properties }) => [geometry.coordinates, properties])).toEqual([
      [[-1.7, 52.2], { cultivar: 'Cox', spread: 3.048, planted: 2015 }],
      [[-1.7, 52.2001], { spread: 3 }],
    ])
    expect(groups).toMatchObject([{ kind: 'plant', crop: 'apple', count: 2 }])
  })

  it('by row and tree number on a grid: trees along the bearing, rows to the right of it', () => {
    const text = 'Row,Tree,Cultivar\n1,1,Cox\n1,3,Cox\n2,1,\n'
    const at = trees(text, { ground: grid }).items.map(({ geometry }) =>
      localFrame(grid.origin)(geometry.coordinates as never),
    )
    const wanted = [
      [0, 0],
      [5, 0],
      [0, -4],
    ]
    // The frame of this test is a sphere's, good to 0.4 %.
    for (const [i, [x, y]] of wanted.entries()) {
      expect(Math.abs(at[i]!.x - x!)).toBeLessThan(0.02)
      expect(Math.abs(at[i]!.y - y!)).toBeLessThan(0.02)
    }
    expect(trees(text).told).toEqual([['import-table-no-places', undefined]])
  })

  it('tells row by row what it leaves out', () => {
    const text =
      'row,tree,crop,spread\n1,1,apple,2\n1,1,apple,2\n,2,apple,2\n1,x,apple,2\n1,2.5,apple,2\n1,4,quandong,wide\n1,5,apple,-3\n\n'
    expect(trees(text, { ground: grid }).told).toEqual([
      ['import-row-repeated', 3],
      ['import-row-blank', 4],
      ['import-row-number', 5],
      ['import-row-figure', 6],
      ['import-row-number', 7],
      ['import-row-figure', 8],
      ['import-crop-unknown', 'quandong'],
    ])
    const places = 'lon,lat\n-1.7,52.2\n-1.7,95\n200,95\n'
    expect(trees(places).told).toEqual([
      ['import-row-position', 3],
      ['import-row-position', 4],
    ])
  })

  it('gathers the spellings of a cultivar under the known or the usual one', () => {
    const written = [
      'Jonagold',
      'jona-gold',
      'JONAGOLD',
      'Jonagodl',
      'Alfriston',
      'Alfriston',
      'Alfristn',
      'Egremont',
      'Cox',
    ]
    const text = `lon,lat,crop,cultivar\n${written.map((each, i) => `-1.7,52.${200 + i},apple,${each}`).join('\n')}`
    const used = trees(text).spellings.map(({ used: name, written: texts }) => [
      name,
      texts.reduce((sum, { count }) => sum + count, 0),
    ])
    // Two letters exchanged are two letters off, so that one stays by itself.
    expect(used).toEqual([
      ['Jonagold', 3],
      ['Cox', 1],
      ['Alfriston', 3],
      ['Jonagodl', 1],
      ['Egremont', 1],
    ])
  })

  it('too long to read is refused; one without a line says so', () => {
    expect(guessTable('\n\n').problems.map(({ code }) => code)).toEqual(['import-table-empty'])
    const long = `lon,lat\n${'1,2\n'.repeat(50_001)}`
    expect(readTreeTable(long, guess('lon,lat\n1,2').columns).problems.map(({ code }) => code)).toEqual([
      'import-too-many',
    ])
  })
})

describe('what goes out as CSV comes back in the same', () => {
  const name = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 10 }),
    fc.constantFrom("'=1", '=1+1', '-2', '@x', 'a,"b"', '\t=x'),
  )
  const degrees = (limit: number) =>
    fc.double({ min: -limit, max: limit, noNaN: true }).map(value => Number(value.toFixed(9)) + 0)
  const placed = fc.array(fc.record({ name, at: fc.tuple(degrees(180), degrees(90)) }), { minLength: 1, maxLength: 6 })
  // A table's reader takes blanks off a cell, and some words for a cell that was left empty.
  const isPlain = (text: string) => !/^(-+|na|n\/a|nan|null|none|m|\*|-99.*)$/i.test(text)

  it('stations', () => {
    fc.assert(
      fc.property(placed, things => {
        const features = things.map(({ name: called, at }, i) => {
          const station = stationFeature(`s-${i}`, { name: called, height: 1.5 })
          return { ...station, geometry: { type: 'Point', coordinates: at } } as typeof station
        })
        const text = planTable(smallPlan({ features }), 'stations')
        const { items } = shown(readStationTable(text, guess(text).columns))
        expect(
          items.map(({ geometry, properties }) => [geometry.coordinates, properties.name ?? '', properties.height]),
        ).toEqual(things.map(({ at, name: called }) => [at, tidyName(called), 1.5]))
      }),
      { seed, numRuns: 150 },
    )
  })

  it('plants', () => {
    fc.assert(
      fc.property(placed, things => {
        const features = things.map(({ name: called, at }, i) => {
          const plant = plantFeature(`p-${i}`, { cultivar: called })
          return { ...plant, geometry: { type: 'Point', coordinates: at } } as typeof plant
        })
        const text = planTable(smallPlan({ features }), 'plants')
        const { items, groups } = shown(readTreeTable(text, guess(text).columns))
        expect(groups.map(({ crop }) => crop)).toEqual(['apple'])
        expect(items.map(({ geometry, properties }) => [geometry.coordinates, properties.cultivar ?? ''])).toEqual(
          things.map(({ at, name: called }) => [at, isPlain(called.trim()) ? tidyName(called) : '']),
        )
      }),
      { seed, numRuns: 150 },
    )
  })
})

/** The corpus csv-spectrum of odd but sound tables (RFC 4180), with what each holds; one of its answers has a digit too few. */
describe('csv-spectrum', () => {
  const folder = dirname(createRequire(import.meta.url).resolve('csv-spectrum'))
  const names = readdirSync(join(folder, 'csvs'))
    .map(file => file.replace('.csv', ''))
    .filter(each => each !== 'location_coordinates')

  it('has eleven tables beside the faulty one', () => expect(names).toHaveLength(11))

  it.each(names)('%s is read as it is meant, and written and read again', name => {
    const wanted: readonly Record<string, string>[] = JSON.parse(
      readFileSync(join(folder, 'json', `${name}.json`), 'utf8'),
    )
    const read = (text: string) => {
      const [head = [], ...rows] = tableRows(text, 100).filter(row => row.some(cell => cell !== ''))
      return { head, rows, groups: rows.map(row => Object.fromEntries(head.map((key, i) => [key, row[i] ?? '']))) }
    }
    const { head, rows, groups } = read(readFileSync(join(folder, 'csvs', `${name}.csv`), 'utf8'))
    expect(groups).toEqual(wanted.filter(row => Object.values(row).some(cell => cell !== '')))
    expect(read(csvText([head, ...rows])).rows.map(row => row.map(withoutGuard))).toEqual(rows)
  })
})
