import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { shapeProblems } from '#geo/file/shape'
import { drop, feature, put, sampleFile, sentences, spoilt, told } from './sample-file'

const text = JSON.stringify(sampleFile())
const area = sampleFile().features[1].geometry
const oneMember = { deep: 1 }

describe('what cannot be opened', () => {
  it.each<[string, string, string, RegExp]>([
    ['nothing', '', 'file-empty at ', /empty/],
    ['white space', ' \n', 'file-empty at ', /empty/],
    ['text that is no JSON', '{\n  "type": "Feat', 'not-json at ', /line 2, column 11/],
    ['a file cut short', text.slice(0, -40), 'not-json at ', /line 1, column \d+/],
    ['a list', '[1]', 'not-a-feature-collection at ', /a list/],
    ['a single feature', '{"type":"Feature"}', 'not-a-feature-collection at type', /“Feature”/],
    ['a map without a plan', drop('plan'), 'no-plan at plan', /mapping program/],
    ['a plan that is a text', put('plan', 'x'), 'wrong-type at plan', /“x”/],
    ['no version', drop('plan.version'), 'no-version at plan.version', /missing/],
    ['half a version', put('plan.version', 0.5), 'no-version at plan.version', /0\.5/],
    ['a later version', put('plan.version', 2), 'newer-version at plan.version', /version 2/],
    ['no features', drop('features'), 'member-missing at features', /a list/],
    ['features that are none', put('features', [7]), 'wrong-type at features[0]', /number 7/],
    ['features in a text', put('features', 'all'), 'wrong-type at features', /a list, but is the text “all”/],
    ['a name that is a number', put('plan.name', 7), 'wrong-type at plan.name', /a text, but is the number 7/],
    ['other units', put('plan.units', 'old'), 'wrong-value at plan.units', /“metric”, “us”, but is the text “old”/],
    ['a bee without figures', put('plan.bee', 'osmia-x'), 'unknown-bee at plan.bee', /osmia-bicornis/],
    [
      'a station with such a bee',
      put('plan.seasons.0.stations.s1.bee', 'x'),
      'unknown-bee at plan.seasons[0].stations.s1.bee',
      /“x”/,
    ],
    [
      'a bloom without its peak',
      drop('plan.seasons.0.bloom.apple.full'),
      'member-missing at plan.seasons[0].bloom.apple.full',
      /should be a text/,
    ],
    [
      'a parameter in words',
      put('plan.parameters.backgroundBlossom', 'much'),
      'wrong-type at plan.parameters.backgroundBlossom',
      /a number or a group of numbers, but is the text “much”/,
    ],
    [
      "a bee's parameter in words",
      put('plan.parameters.osmia-bicornis.lag', 'long'),
      'wrong-type at plan.parameters.osmia-bicornis.lag',
      /a number, but is the text “long”/,
    ],
    [
      'a weather day of three',
      put('plan.seasons.0.weather.days.0', ['2026-03-01', 1, 2]),
      'wrong-type at plan.seasons[0].weather.days[0]',
      /a list of 5, but is a list of 3/,
    ],
    [
      'a weather day of six',
      put('plan.seasons.0.weather.days.0', ['2026-03-01', 1, 2, 3, 4, 5]),
      'wrong-type at plan.seasons[0].weather.days[0]',
      /a list of 5, but is a list of 6/,
    ],
    ['a season that is null', put('plan.seasons.0', null), 'wrong-type at plan.seasons[0]', /null/],
    ['crops in a list', put('plan.crops', []), 'wrong-type at plan.crops', /a group of members, but is an empty list/],
    [
      'a spacing in words',
      put('features.row-3.properties.spacing', 'wide'),
      'wrong-type at features[0].properties.spacing',
      /a number, but is the text “wide”/,
    ],
    [
      'a planting without a crop',
      drop('features.row-3.properties.crop'),
      'member-missing at features[0].properties.crop',
      /missing/,
    ],
    ['a number for an id', put('features.s1.id', 5), 'wrong-type at features[4].id', /a text, but is the number 5/],
    ['an empty id', put('features.s1.id', ''), 'wrong-type at features[4].id', /not empty, but is an empty text/],
    [
      'a support of another kind',
      put('features.s1.properties.support', 'tree'),
      'wrong-value at features[4].properties.support',
      /“post”, “wall”, “fence”, “branch”/,
    ],
    [
      'a row drawn as an area',
      put('features.row-3.geometry', area),
      'wrong-geometry at features[0].geometry.type',
      /Row 3 is a row, which is drawn as LineString; the file has the text “Polygon”/,
    ],
    [
      'a station of many points',
      put('features.s1.geometry.type', 'MultiPoint'),
      'wrong-geometry at features[4].geometry.type',
      /North gate is a station/,
    ],
    [
      'a position of one figure',
      put('features.row-3.geometry.coordinates.1', [3]),
      'member-missing at features[0].geometry.coordinates[1][1]',
      /a number/,
    ],
    [
      'a geometry without a type',
      drop('features.trees.geometry.type'),
      'member-missing at features[2].geometry.type',
      /such as “Point”/,
    ],
    [
      'an infinite number',
      text.replace('2.5', '2.5e999'),
      'number-too-large at features[0].properties.spacing',
      /too large/,
    ],
    [
      'a name kept for objects',
      text.replace('"notes"', '"__proto__"'),
      'forbidden-key at plan.__proto__',
      /“__proto__”/,
    ],
    [
      'such a name deep down',
      text.replace('"lag"', '"constructor"'),
      'forbidden-key at plan.parameters.osmia-bicornis.constructor',
      /another name/,
    ],
    [
      'such a name for a group',
      put('plan.later', [{ prototype: oneMember }]),
      'forbidden-key at plan.later[0].prototype',
      /“prototype”/,
    ],
    [
      'an id that every object has',
      text.replaceAll('"row-3"', '"toString"'),
      'forbidden-key at features[0].id',
      /“toString”/,
    ],
    [
      'a crop that every object has',
      text.replaceAll('"apple-late"', '"valueOf"'),
      'forbidden-key at features[0].properties.crop',
      /“valueOf”/,
    ],
  ])('%s', (_, file, place, words) => {
    const outcome = readPlan(file)
    expect(outcome.ok).toBe(false)
    expect(told(file)).toEqual([`error ${place}`])
    expect(sentences(outcome)[0]).toMatch(words)
  })

  it('never takes over a forbidden name', () => {
    const file =
      '{"type":"FeatureCollection","__proto__":{"polluted":1},"plan":{"constructor":{"prototype":{"polluted":1}}}}'
    expect(told(file)).toHaveLength(2)
    expect('polluted' in {}).toBe(false)
  })

  it('a file beyond 50 MB, before it is taken apart', () => {
    const outcome = readPlan(' '.repeat(50_000_001))
    expect(outcome.problems.map(({ code }) => code)).toEqual(['file-too-large'])
    expect(sentences(outcome)[0]).toContain('51 MB')
  })

  it('brackets a hundred thousand deep', () => {
    const deep = '['.repeat(100_000) + ']'.repeat(100_000)
    const codes = (file: string) => readPlan(file).problems.map(({ code }) => code)
    expect(codes(deep)).toEqual(['too-deep'])
    expect(codes(put('plan.extra', 'DEEP').replace('"DEEP"', deep))).toEqual(['too-deep'])
    expect(codes('{"a":'.repeat(100_000))).toEqual(['not-json'])
    expect(codes(`"${'\\n'.repeat(5_000_000)}`)).toEqual(['not-json'])
  })
})

it('tells of every fault, but lists fifty at most', () => {
  const file = spoilt(f => {
    f.features = Array.from({ length: 60 }, (_, i) => feature(`r${i}`, 'LineString', [], { kind: 'row' }))
  })
  const { problems } = readPlan(file)
  expect(problems).toHaveLength(51)
  expect(problems.at(-1)).toMatchObject({ code: 'more-problems', severity: 'error', values: { count: 10 } })
})

it('shortens what it quotes and keeps it on one line', () => {
  expect(sentences(readPlan(put('plan.units', `a\nb${'x'.repeat(500)}`)))[0]).toMatch(/“a bx{36}…”/)
  expect(told(put('plan.crops', { 'my "best" crop': { spacing: 'x' } }))).toEqual([
    'error wrong-type at plan.crops["my "best" crop"].spacing',
  ])
})

it('counts faults that it does not list, also within one thing', () => {
  const many = Array.from({ length: 300 }, () => [1, 'x'])
  const { problems } = readPlan(put('features.trees.geometry.coordinates', many))
  expect(problems).toHaveLength(51)
  expect(problems[1]?.at).toBe('features[2].geometry.coordinates[1][1]')
  expect(problems.at(-1)).toMatchObject({ code: 'more-problems', values: { count: 250 } })
})

it('survives more faults than the shape library can pass on', () => {
  const overflowing = {
    safeParse: () => {
      throw new RangeError('Maximum call stack size exceeded')
    },
  }
  const problems = shapeProblems(overflowing as unknown as Parameters<typeof shapeProblems>[0], {}, ['features', 3])
  expect(problems.map(({ code, at }) => [code, at])).toEqual([['too-many-faults', 'features[3]']])
})
