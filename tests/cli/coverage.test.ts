import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { evaluate } from '#geo/report/evaluate'
import type { Report } from '#geo/report/report'
import { block, planOf, row, spring, station } from '../support/orchard'
import { nestreach, scenario, scenarioNames, tableUnder } from './nestreach'

const release = { date: '2026-04-14', females: 60 } as const
const small = planOf({
  features: [
    row('east', [0, 0], [0, 100], { name: 'East row' }),
    block('far', [600, 0, 640, 40], { name: 'Far block', crop: 'pear-european' }),
    station('box', 5, 50),
  ],
  stock: { box: [release] },
})

function reportOf(name: string, year: number): Report {
  const plan = readPlan(readFileSync(scenario(name), 'utf8'))
  if (!plan.ok) throw new Error(`${name} cannot be read`)
  const report = evaluate(plan.value, year)
  if (!report.ok) throw new Error(`${name} has no report`)
  return report.value
}

describe.each(scenarioNames)('%s', name => {
  test('--json is the result of the engine, to the last bit, for the latest season', () => {
    const { out, err, exitCode } = nestreach(['coverage', scenario(name), '--json'])
    expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(reportOf(name, 2025))))
  })

  test('the table has a line for every planting and station, in columns', () => {
    const report = reportOf(name, 2025)
    const { out, err, exitCode } = nestreach(['coverage', scenario(name)])
    expect(exitCode).toBe(0)
    expect(err).toBe(
      `warning: ${report.problems.length} field checks of stations and dates found something; see nestreach check. The coverage does not hang on it.\n`,
    )
    expect(out.split('\n')[0]).toBe(`${report.plan}, season 2025`)
    expect(out).not.toMatch(/NaN|undefined|null|Infinity|\d\.\d{4}/)
    const plantings = tableUnder(out, 'Plantings')
    expect(plantings.slice(1).map(line => line.trim().split(/ {2,}/)[0])).toEqual(
      report.plantings.map(({ name }) => name),
    )
    const stations = tableUnder(out, 'Stations')
    expect(stations.slice(1).map(line => line.trim().split(/ {2,}/)[0])).toEqual(
      report.stations.map(({ name }) => name),
    )
    for (const head of ['Wanted', 'Supplied', 'Coverage', 'In reach', 'In time', 'Short by']) {
      expect(rightEdges(plantings, head), head).toBe(true)
    }
    for (const head of ['Females', 'Female cocoons', 'Male cocoons', 'Tubes wanted']) {
      expect(rightEdges(stations, head), head).toBe(true)
    }
  })
})

/** Whether a figure ends in every line where the head of its column ends, with room on its right. */
function rightEdges([heads = '', ...lines]: readonly string[], head: string): boolean {
  const end = heads.indexOf(`  ${head}`) + 2 + head.length
  return lines.every(line => /\S/.test(line[end - 1] ?? ' ') && /^( {2}|$)/.test(line.slice(end)))
}

test('the members of the result stand in the order of the format', () => {
  const result = JSON.parse(nestreach(['coverage', scenario('farm'), '--json']).out)
  expect(Object.keys(result)).toEqual(['plan', 'year', 'orchard', 'plantings', 'stations', 'problems'])
  expect(Object.keys(result.orchard)).toEqual(['wanted', 'supplied', 'coverage', 'reach', 'shortBy', 'busiestDay'])
  expect(Object.keys(result.plantings[0]).join()).toBe(
    'id,name,crop,points,area,wanted,supplied,coverage,reach,timingMatch,shortBy,limit,gains',
  )
  expect(Object.keys(result.stations[0]).join()).toBe('id,name,bee,females,femaleCocoons,maleCocoons,tubesWanted,tubes')
})

test('--year chooses the season', () => {
  const { out } = nestreach(['coverage', scenario('farm'), '--year', '2024', '--json'])
  expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(reportOf('farm', 2024))))
  const missing = nestreach(['coverage', scenario('farm'), '--year=2031'])
  expect(missing.exitCode).toBe(1)
  expect(missing.out).toBe('')
  expect(missing.err).toBe('error: The plan has no season 2031. Seasons in the plan: 2024, 2025. [no-season]\n')
})

test('units are those of the plan, or of --units', () => {
  const of = (name: string, ...words: string[]) => nestreach(['coverage', scenario(name), ...words]).out
  expect(of('farm')).toContain('1.61 ha')
  expect(of('farm', '--units', 'us')).toContain('3.99 acres')
  expect(of('mixed-orchard')).toMatch(/\d (acres|sq ft)/)
  expect(of('mixed-orchard', '--units', 'metric')).toMatch(/\d (ha|m²)/)
  expect(of('farm', '--units', 'us', '--json')).toBe(of('farm', '--json'))
})

test('- reads standard input, with or without a byte order mark', () => {
  const text = readFileSync(scenario('farm'), 'utf8')
  const ofFile = nestreach(['coverage', scenario('farm')])
  expect(ofFile.exitCode).toBe(0)
  expect(nestreach(['coverage', '-'], text)).toEqual(ofFile)
  expect(nestreach(['coverage', '-'], `\ufeff${text}`)).toEqual(ofFile)
})

test('what cannot be known is said to be not known, and why', () => {
  const { out, err, exitCode } = nestreach(['coverage', '-'], writePlan(small))
  expect(exitCode).toBe(0)
  const far = tableUnder(out, 'Plantings').find(line => line.includes('Far block'))
  expect(far?.trim().split(/ {2,}/).slice(5)).toEqual([
    'not known',
    'not known',
    '0%',
    'not known',
    'not known',
    'not known',
  ])
  expect(err).toMatch(/^warning: Far block has no bloom dates for 2026.*\[no-bloom at far\]\n/)
  expect(out).toContain('1 planting without bloom dates cannot be worked out.')
})

test('a plan with errors has no result', () => {
  const wrong = { ...small, seasons: [{ ...small.seasons[0]!, bloom: { apple: { ...spring, end: '2026-04-01' } } }] }
  const { out, err, exitCode } = nestreach(['coverage', '-'], writePlan(wrong))
  expect({ out, exitCode }).toEqual({ out: '', exitCode: 1 })
  expect(err).toMatch(/^error: The bloom of .* is out of order.*\[bloom-order at /)
  const json = nestreach(['coverage', '-', '--json'], writePlan(wrong))
  expect({ err: json.err, exitCode: json.exitCode }).toEqual({ err: '', exitCode: 1 })
  expect(JSON.parse(json.out)).toMatchObject({
    plan: 'Test orchard',
    year: 2026,
    orchard: null,
    plantings: [],
    stations: [],
    problems: [
      { code: 'bloom-order', severity: 'error' },
      { code: 'no-mud', severity: 'note' },
    ],
  })
})

test('a slip in another season does not hold up this one', () => {
  const other = { year: 2025, bloom: { apple: { first: '2025-05-01', full: '2025-04-01', end: '2025-05-09' } } }
  const plan = { ...small, seasons: [other, ...small.seasons] }
  expect(nestreach(['coverage', '-'], writePlan(plan)).exitCode).toBe(0)
  expect(nestreach(['coverage', '-', '--year', '2025'], writePlan(plan)).exitCode).toBe(1)
})

test('a plan without seasons is told so', () => {
  const { out, err, exitCode } = nestreach(['coverage', '-'], writePlan({ ...small, seasons: [] }))
  expect({ out, exitCode }).toEqual({ out: '', exitCode: 1 })
  expect(err).toContain('The plan has no season yet')
})

test('what only the file can tell is told beside the result', () => {
  const file = JSON.parse(writePlan(small))
  file.features.push({
    type: 'Feature',
    id: 'p',
    geometry: { type: 'Point', coordinates: [-1.7, 52.2] },
    properties: { kind: 'pond' },
  })
  const { err, exitCode } = nestreach(['coverage', '-'], JSON.stringify(file))
  expect(exitCode).toBe(0)
  expect(err).toMatch(/^note: .*pond.*\[features-kept at features\]$/m)
})

test('columns hold with names of any script, and names cannot steer the terminal', () => {
  const plan = planOf({
    features: [
      row('a', [0, 0], [0, 100], { name: '苹果 东' }),
      row('b', [8, 0], [8, 100], { name: 'Ra\u0301d' }),
      row('c', [16, 0], [16, 100], { name: 'red \u001b[31m\nrow' }),
      station('box', 5, 50),
    ],
    stock: { box: [release] },
  })
  const { out } = nestreach(['coverage', '-'], writePlan(plan))
  const [heads = '', han = '', accent = '', steering = ''] = tableUnder(out, 'Plantings')
  const at = heads.indexOf('Crop')
  expect(han.indexOf('Apple')).toBe(at - 3)
  expect(accent.indexOf('Apple')).toBe(at + 1)
  expect(steering.indexOf('Apple')).toBe(at)
  expect(out).not.toContain('\u001b')
})

test('two rules of thumb that disagree are both shown', () => {
  const rules = tableUnder(nestreach(['coverage', scenario('farm')]).out, 'Two rules of thumb')
  expect(rules[0]).toMatch(/Crop +Plantings +By area +By plant +In use/)
  expect(rules[1]).toMatch(/Apple +1 +820 +2,400 to 7,200 +by area/)
  const plan = planOf({ features: [row('east', [0, 0], [0, 100], { femalesPerPlant: 2 }), station('box', 5, 50)] })
  expect(tableUnder(nestreach(['coverage', '-'], writePlan(plan)).out, 'Two rules of thumb')[1]).toMatch(/by plant$/)
})
