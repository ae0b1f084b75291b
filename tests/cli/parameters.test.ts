import { describe, expect, test } from 'vitest'
import { parameterRows } from '#geo/data/parameter-rows'
import { sources } from '#geo/data/sources'
import { writePlan } from '#geo/file/write'
import { planOf, row } from '../support/orchard'
import { nestreach } from './nestreach'

const own = planOf({
  features: [row('east', [0, 0], [0, 100])],
  parameters: { backgroundBlossom: 7, 'osmia-lignaria': { typicalForagingRadius: 60 } },
})

test('every number is listed under its group', () => {
  const { out, err, exitCode } = nestreach(['parameters'])
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
  const rows = parameterRows()
  const names = out.slice(0, out.indexOf('\nSources\n')).match(/^ {2}\S.*?(?= {2})/gm) ?? []
  expect(names.map(name => name.trim()).filter(name => name !== 'Name')).toEqual(rows.map(({ name }) => name))
  for (const group of new Set(rows.map(row => row.group))) expect(out.split('\n')).toContain(group)
  expect(out).not.toMatch(/NaN|undefined|null|e[+-]\d/)
})

test('every source that is cited stands in the list of sources', () => {
  const list = nestreach(['parameters']).out.split('\nSources\n')[1]?.replace(/\s+/g, ' ')
  for (const key of new Set(parameterRows().flatMap(row => row.sources))) {
    expect(list, key).toContain(sources[key].title.replace(/\s+/g, ' '))
  }
})

test('--json gives the rows themselves and their sources in full', () => {
  const { plan, parameters, sources: cited, problems } = JSON.parse(nestreach(['parameters', '--json']).out)
  expect({ plan, problems }).toEqual({ plan: null, problems: [] })
  expect(parameters).toEqual(JSON.parse(JSON.stringify(parameterRows())))
  for (const key of parameters.flatMap((row: { sources: string[] }) => row.sources)) expect(cited).toHaveProperty(key)
})

describe('with a plan', () => {
  test('its own values stand in place of the built-in ones and say so', () => {
    const { out } = nestreach(['parameters', '-', '--why'], writePlan(own))
    expect(out).toMatch(/^ {2}backgroundBlossom +7 .* own +/m)
    expect(out.replace(/\s+/g, ' ')).toContain("The plan's own value, in place of 3.")
    expect(out).toMatch(/^ {2}typicalForagingRadius +60 .* own +/m)
  })

  test('units are those of the plan or of --units', () => {
    const text = writePlan({ ...own, units: 'us' })
    expect(nestreach(['parameters', '-'], text).out).toMatch(/^ {2}typicalForagingRadius +196\.9 .* ft +own/m)
    expect(nestreach(['parameters', '-', '--units=metric'], text).out).toMatch(
      /^ {2}typicalForagingRadius +60 .* m +own/m,
    )
  })

  test('that cannot be opened there are none', () => {
    const { out, err, exitCode } = nestreach(['parameters', '-'], '{')
    expect({ out, exitCode }).toEqual({ out: '', exitCode: 1 })
    expect(err).toMatch(/^error: .*\[not-json/)
  })
})
