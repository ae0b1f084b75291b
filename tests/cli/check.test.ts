import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { writePlan } from '#geo/file/write'
import { planOf, row, station } from '../support/orchard'
import { nestreach, scenario, scenarioNames } from './nestreach'

const bloom = { apple: { first: '2026-05-17', full: '2026-04-24', end: '2026-05-06' } }
const sound = planOf({ features: [row('east', [0, 0], [0, 100], { name: 'East row' }), station('box', 5, 50)] })
const unsound = planOf({
  features: [row('east', [0, 0], [0, 100], { name: 'East row', spacing: -1 }), station('box', 5, 50)],
  bloom,
  stock: { 'not-drawn': [] },
})

test.each(scenarioNames)('%s has no errors', name => {
  const { out, err, exitCode } = nestreach(['check', scenario(name)])
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
  expect(out).toMatch(/, latest season 2025: [1-9]\d* warnings( and [1-9] notes)?\n/)
})

test('field checks are told with figure, threshold and source', () => {
  const { out } = nestreach(['check', scenario('mixed-orchard'), '--year', '2025'])
  expect(out).toMatch(/season 2025: 4 warnings and 3 notes\n/)
  expect(out).toContain(
    'note     B2 apple headland faces 170 degrees, where the sun comes late in the morning; 90 to 160 degrees suits best ' +
      '(Mader, Spivak & Evans 2010).',
  )
  expect(out).toMatch(/ {9}facing-unsuited at b2: name B2 apple headland, facing 170, low 90, high 160/)
})

test('a plan without problems has none, and one without seasons is told of that', () => {
  expect(
    nestreach(['check', '-'], writePlan({ ...sound, seasons: [{ year: 2026, bloom: sound.seasons[0]!.bloom! }] })).out,
  ).toBe('Test orchard, latest season 2026: no problems\n')
  const { out, exitCode } = nestreach(['check', '-'], writePlan({ ...sound, seasons: [] }))
  expect(exitCode).toBe(0)
  expect(out).toMatch(/^Test orchard: 1 note\n\nnote {5}The plan has no season yet/)
})

test('problems are told worst first, with sentence, code, place, severity and figures', () => {
  const { out, err, exitCode } = nestreach(['check', '-'], writePlan(unsound))
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 1 })
  const [head, , ...lines] = out.trimEnd().split('\n')
  expect(head).toBe('Test orchard, latest season 2026: 2 errors and 1 warning')
  const told = lines.filter(line => line !== '')
  expect(told).toHaveLength(6)
  expect(told[0]).toMatch(/^error {4}East row: the .* is .*-1/)
  expect(told[1]).toMatch(/^ {9}out-of-range at \S+: .*name East row/)
  expect(told[2]).toMatch(/^error {4}The bloom of .* in 2026 is out of order/)
  expect(told[4]).toMatch(/^warning {2}The season 2026 lists a station “not-drawn”/)
  expect(told[5]).toMatch(/^ {9}station-unknown at /)
})

test('--json gives the same problems with their sentences', () => {
  const { out, exitCode } = nestreach(['check', '-', '--json'], writePlan(unsound))
  expect(exitCode).toBe(1)
  const { plan, year, problems } = JSON.parse(out)
  expect({ plan, year }).toEqual({ plan: 'Test orchard', year: 2026 })
  expect(problems.map((problem: { code: string }) => problem.code).sort()).toEqual([
    'bloom-order',
    'out-of-range',
    'station-unknown',
  ])
  for (const problem of problems) {
    expect(Object.keys(problem)).toEqual(['code', 'severity', 'at', 'values', 'text'])
    expect(problem.text).toMatch(/^\S.*\.$/)
  }
})

test('without --year every season is looked through, with --year that one', () => {
  const [season] = sound.seasons
  const plan = { ...sound, seasons: [{ ...season!, year: 2025, bloom: {} }, season!] }
  const late = { ...plan, seasons: [{ ...plan.seasons[0]!, bloom: { apple: { ...bloom.apple } } }, season!] }
  expect(nestreach(['check', '-'], writePlan(late)).exitCode).toBe(1)
  expect(nestreach(['check', '-', '--year', '2026'], writePlan(late)).exitCode).toBe(0)
  const without = nestreach(['check', '-', '--year', '2025'], writePlan(plan))
  expect(without.out).toMatch(/, season 2025: 1 warning\n[\s\S]*has no bloom dates for 2025/)
})

describe('files that cannot be opened', () => {
  const text = readFileSync(scenario('providence-apples'), 'utf8')
  test.each([
    ['empty', '', 'file-empty'],
    ['not JSON', text.replace('"features"', 'features'), 'not-json'],
    ['cut off', text.slice(0, 3000), 'not-json'],
    ['no plan', '{"type":"FeatureCollection","features":[]}', 'no-plan'],
    ['another kind of file', '[1, 2]', 'not-a-feature-collection'],
    ['newer than the program', text.replace('"version": 1', '"version": 99'), 'newer-version'],
    ['wrong types', text.replace(/"name": "[^"]*"/, '"name": 7'), 'wrong-type'],
    ['bytes of something else', '\u0000\u0001PNG', 'not-json'],
  ])('%s', (_, content, code) => {
    const { out, err, exitCode } = nestreach(['check', '-'], content)
    expect({ err, exitCode }).toEqual({ err: '', exitCode: 1 })
    expect(out).toMatch(/^The file cannot be opened: 1 error\n/)
    expect(out).toContain(`\n         ${code}`)
    expect(out).not.toMatch(/undefined|\[object/)
    const coverage = nestreach(['coverage', '-'], content)
    expect({ out: coverage.out, exitCode: coverage.exitCode }).toEqual({ out: '', exitCode: 1 })
    expect(coverage.err).toMatch(/^error: .*\n$/)
  })
})
