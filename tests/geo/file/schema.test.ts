import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { planFileSchema } from '#geo/file/schema'
import { drop, feature, put, sampleFile } from './sample-file'

const path = new URL('../../../public/plan.schema.json', import.meta.url)
const text = `${JSON.stringify(planFileSchema(), null, 2)}\n`
if (process.env.UPDATE === '1') writeFileSync(path, text)

// A position has two figures or more, which ajv's strictness about lists does not foresee.
const ajv = new Ajv2020({
  strict: true,
  strictRequired: false,
  strictTypes: false,
  strictTuples: false,
  allErrors: true,
})
const validate = ajv.compile(planFileSchema())
const faults = (content: string) =>
  validate(JSON.parse(content)) ? [] : (validate.errors ?? []).map(each => each.instancePath)

it('is the committed file; UPDATE=1 rewrites it', () => {
  expect(readFileSync(path, 'utf8')).toBe(text)
})

describe('accepts', () => {
  const scenarios = new URL('../../../scenarios/', import.meta.url)
  const names = existsSync(scenarios) ? readdirSync(scenarios).filter(name => name.endsWith('.plan.geojson')) : []
  const files = [
    new URL('./fixtures/worked-example.plan.geojson', import.meta.url),
    ...names.map(name => new URL(name, scenarios)),
  ]
  it.each(files.map(file => [file.pathname.split('/').at(-1), file]))('%s', (_, file) => {
    expect(faults(readFileSync(file!, 'utf8'))).toEqual([])
  })

  it('the sample, members of its own, other features and empty cells', () => {
    expect(faults(JSON.stringify(sampleFile()))).toEqual([])
    expect(faults(put('plan.later', { any: ['thing'] }))).toEqual([])
    expect(faults(put('features', [feature('x', 'Point', 'odd', { kind: 'pond' }), { id: 3 }]))).toEqual([])
    expect(faults(put('features.row-3.geometry', null))).toEqual([])
    expect(faults(put('features.row-3.properties.count', null))).toEqual([])
  })
})

describe('refuses', () => {
  it.each<[string, string, string]>([
    ['a plan without a version', drop('plan.version'), '/plan'],
    ['another bee', put('plan.bee', 'osmia-x'), '/plan/bee'],
    ['a bloom without its peak', drop('plan.seasons.0.bloom.apple.full'), '/plan/seasons/0/bloom/apple'],
    ['a spacing in words', put('features.row-3.properties.spacing', 'wide'), '/features/0/properties/spacing'],
    ['a row of one figure', put('features.row-3.geometry.coordinates', [[1]]), '/features/0/geometry/coordinates/0'],
    [
      'a weather day of three',
      put('plan.seasons.0.weather.days', [['2026-03-01', 1, 2]]),
      '/plan/seasons/0/weather/days/0',
    ],
  ])('%s', (_, content, place) => {
    expect(faults(content)).toContain(place)
  })
})
