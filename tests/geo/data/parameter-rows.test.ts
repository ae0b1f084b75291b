import { describe, expect, test } from 'vitest'
import { beeParameterNames } from '#geo/data/bees'
import { crops } from '#geo/data/crops'
import { type ParameterRow, parameterRows } from '#geo/data/parameter-rows'
import { settingsFor } from '#geo/data/settings'

const find = (rows: readonly ParameterRow[], groupId: string, name: string) => {
  const found = rows.filter(row => row.groupId === groupId && row.name === name)
  expect(found).toHaveLength(1)
  return found[0]!
}

describe('without own values', () => {
  const rows = parameterRows()

  test('every number of the settings has its row', () => {
    const { site, bees, crops: all } = settingsFor({ parameters: {}, crops: {} })
    for (const [name, value] of Object.entries(site)) expect(find(rows, 'site', name).value).toBe(value)
    for (const [id, bee] of Object.entries(bees)) {
      for (const [name, value] of Object.entries(bee)) expect(find(rows, id, name).value).toBe(value)
    }
    for (const [id, crop] of Object.entries(all)) {
      for (const [name, value] of Object.entries(crop)) {
        if (typeof value === 'number') expect(find(rows, id, name).value).toBe(value)
      }
      expect(find(rows, 'bloom', `${id} continental`).value).toBe(crop.bloomOffset!.continental.mid)
    }
  })

  test('none is own, and each names its source and reason', () => {
    for (const row of rows) {
      expect(row.own).toBe(false)
      expect(row.table).toBe(row.value)
      expect(row.source.length).toBeGreaterThan(3)
      expect(row.about.length).toBeGreaterThan(10)
    }
  })

  test('a group stands together, and a name once in it', () => {
    const keys = rows.map(row => `${row.group}\n${row.name}`)
    expect(new Set(keys).size).toBe(keys.length)
    const groups = rows.map(row => row.group)
    const starts = groups.filter((group, i) => group !== groups[i - 1])
    expect(new Set(starts).size).toBe(starts.length)
    expect(starts.slice(0, 3)).toEqual(['Site', 'Blue orchard bee, Osmia lignaria', 'Red mason bee, Osmia bicornis'])
  })

  test('a row reads in words', () => {
    expect(find(rows, 'cherry-sweet', 'stockingRate')).toMatchObject({
      group: 'Sweet cherry',
      unit: 'females/ha',
      low: 500,
      high: 1000,
      basis: 'derived',
      source: 'Bosch, Kemp & Trostle 2006',
      sources: ['bosch2006'],
    })
    expect(rows.filter(row => row.groupId === 'osmia-cornuta')).toHaveLength(beeParameterNames.length)
  })
})

describe('with own values', () => {
  const rows = parameterRows({
    parameters: { spareTubes: 0.25, 'osmia-cornuta': { lag: 5 } },
    crops: {
      'apple-late': { basedOn: 'apple', name: 'Late apple', stockingRate: 610 },
      medlar: { stockingRate: 300, blossomDensity: 30, appeal: 1, spacing: 3, rowSpacing: 4 },
      half: { spacing: 3 },
    },
  })

  test('they are shown as own beside the range and number of the table', () => {
    expect(find(rows, 'site', 'spareTubes')).toMatchObject({
      value: 0.25,
      own: true,
      basis: 'own',
      table: 0.1,
      low: 0,
      high: 0.3,
    })
    expect(find(rows, 'osmia-cornuta', 'lag')).toMatchObject({ value: 5, own: true, table: 7 })
    expect(find(rows, 'osmia-cornuta', 'spreadDays').own).toBe(false)
  })

  test('an own crop shows its own figures and those it takes over', () => {
    expect(find(rows, 'apple-late', 'stockingRate')).toMatchObject({
      group: 'Late apple',
      value: 610,
      own: true,
      table: 600,
    })
    expect(find(rows, 'apple-late', 'spacing')).toMatchObject({ value: crops.apple!.figures.spacing.value, own: false })
    expect(find(rows, 'bloom', 'apple-late continental').value).toBe(0)
  })

  test('a crop without base shows what it has', () => {
    const medlar = rows.filter(row => row.groupId === 'medlar')
    expect(medlar.map(row => [row.name, row.value, row.unit, row.table])).toEqual([
      ['stockingRate', 300, 'females/ha', null],
      ['blossomDensity', 30, 'flowers/m2', null],
      ['appeal', 1, '1', null],
      ['spacing', 3, 'm', null],
      ['rowSpacing', 4, 'm', null],
    ])
    expect(rows.filter(row => row.groupId === 'half').map(row => row.name)).toEqual(['spacing'])
    expect(rows.some(row => row.name === 'medlar continental')).toBe(false)
  })
})
