import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { plainGeoJson } from '#geo/file/geojson'
import { readPlan } from '#geo/file/read'
import { nestreach, scenario, scenarioNames } from './nestreach'

test.each(scenarioNames)('%s becomes plain GeoJSON', name => {
  const plan = readPlan(readFileSync(scenario(name), 'utf8'))
  const { out, err, exitCode } = nestreach(['convert', scenario(name), '--to', 'geojson'])
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
  expect(plan.ok && plainGeoJson(plan.value)).toBe(out)
  const { type, plan: member, features } = JSON.parse(out)
  expect({ type, member }).toEqual({ type: 'FeatureCollection', member: undefined })
  expect(plan.ok && plan.value.features.length).toBe(features.length)
})

test('--to names the format, --table the table', () => {
  const made = (...words: string[]) => nestreach(['convert', scenario('allotment'), ...words]).out
  expect(made('--to', 'gpx')).toContain('creator="Nestreach"')
  expect(made('--to', 'kml')).toContain('<kml xmlns="http://www.opengis.net/kml/2.2">')
  expect(made('--to', 'csv')).toMatch(/^id,kind,name,crop,/)
  expect(made('--to', 'csv', '--table', 'stations')).toMatch(/^id,name,longitude,latitude,/)
  expect(made('--to', 'csv', '--table', 'plants')).toMatch(/^planting,kind,name,crop,/)
  expect(JSON.parse(made('--to', 'csv', '--json'))).toMatchObject({ to: 'csv', table: 'plantings', problems: [] })
})

test('--json puts it beside the problems', () => {
  const { out, exitCode } = nestreach(['convert', scenario('farm'), '--to=geojson', '--json'])
  const { content, ...rest } = JSON.parse(out)
  expect(exitCode).toBe(0)
  expect(rest).toEqual({ plan: 'Sample C: farm with early and late blocks', to: 'geojson', problems: [] })
  expect(content).toEqual(JSON.parse(nestreach(['convert', scenario('farm'), '--to=geojson']).out))
})

test('what cannot be opened is not converted', () => {
  expect(nestreach(['convert', '-', '--to', 'geojson'], '{}')).toMatchObject({ out: '', exitCode: 1 })
  const { content, problems } = JSON.parse(nestreach(['convert', '-', '--to', 'geojson', '--json'], '{}').out)
  expect(content).toBeNull()
  expect(problems).toHaveLength(1)
})
