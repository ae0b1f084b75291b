import { describe, expect, it } from 'vitest'
import { codePointOrder, naturalOrder } from '#geo/file/print-json'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import { type Content, feature, featureOf, planOf, put, sampleFile, spoilt } from './sample-file'

const written = (text: string) => writePlan(planOf(readPlan(text)))
const linesOf = (text: string) => new Set(text.split('\n'))

/** The same content with the members of every group in the opposite order. */
function reversed(value: Content): Content {
  if (Array.isArray(value)) return value.map(reversed)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, part]) => [key, reversed(part)]),
  )
}

describe('the canonical text', () => {
  it('holds all that was read', () => {
    expect(JSON.parse(written(JSON.stringify(sampleFile())))).toEqual(sampleFile())
  })

  it('is the same after being read and written again', () => {
    const once = written(JSON.stringify(sampleFile()))
    expect(written(once)).toBe(once)
    expect(once.endsWith('}\n')).toBe(true)
  })

  it('does not hang on the order in which members were set', () => {
    expect(written(JSON.stringify(reversed(sampleFile())))).toBe(written(JSON.stringify(sampleFile())))
  })

  it('has the members of the format first and in its order', () => {
    const text = written(spoilt(file => Object.assign(file.plan.seasons[0].bloom.apple, { seen: 'x', by: 'y' })))
    const { plan, features } = JSON.parse(text)
    expect(Object.keys(JSON.parse(text))).toEqual(['type', 'plan', 'features'])
    expect(Object.keys(plan)).toEqual(
      'version name notes timeZone units bee bloomRegion parameters crops lots seasons'.split(' '),
    )
    expect(Object.keys(plan.seasons[0])).toEqual(
      'year appleFullBloom bloom stations weather records fruitSet shareOut coldStore setAside'.split(' '),
    )
    expect(Object.keys(plan.seasons[0].bloom.apple)).toEqual(['first', 'full', 'end', 'observed', 'by', 'seen'])
    expect(Object.keys(plan.parameters['osmia-bicornis'])).toEqual(['typicalForagingRadius', 'lag'])
    expect(Object.keys(features[0])).toEqual(['type', 'id', 'geometry', 'properties'])
    expect(Object.keys(features[0].properties)).toEqual('kind name crop cultivar spacing rowSpacing'.split(' '))
  })

  it('has ids in natural order, features in their own', () => {
    const bloom = sampleFile().plan.seasons[0].bloom.apple
    const text = written(
      put('plan.seasons.0.bloom', {
        'row-10': bloom,
        10: bloom,
        'row-9': bloom,
        9: bloom,
        apple: bloom,
        'row-09': bloom,
      }),
    )
    const keys = [...text.matchAll(/^ {10}"(.*)": \{$/gm)].map(match => match[1])
    expect(keys.slice(0, 6)).toEqual(['9', '10', 'apple', 'row-09', 'row-9', 'row-10'])
    const ids = sampleFile().features.map((each: Content) => each.id)
    expect(JSON.parse(text).features.map((each: Content) => each.id)).toEqual(ids)
  })

  it('has a position and a weather day on one line each', () => {
    const lines = linesOf(written(JSON.stringify(sampleFile())))
    expect(lines).toContain('          [-1.7, 52.2],')
    expect(lines).toContain('            ["2026-03-01", 4.1, 12.3, 0, 3.2],')
    expect(lines).toContain('        "coordinates": [-1.6995, 52.2004]')
  })

  it('changes by one line where one figure changes', () => {
    const before = linesOf(written(JSON.stringify(sampleFile())))
    const after = linesOf(written(put('features.row-3.properties.spacing', 3.25)))
    expect([...after].filter(line => !before.has(line))).toEqual(['        "spacing": 3.25,'])
    expect([...before].filter(line => !after.has(line))).toEqual(['        "spacing": 2.5,'])
  })

  it('rounds coordinates to nine decimals, and no other number', () => {
    const text = written(
      spoilt(file => {
        featureOf(file, 's1').geometry.coordinates = [-1.69950000001234, 52.2004, 81.123456789012]
        file.plan.parameters.backgroundBlossom = 3.000000000123457
      }),
    )
    expect(text).toContain('"coordinates": [-1.6995, 52.2004, 81.123456789]')
    expect(text).toContain('"backgroundBlossom": 3.000000000123457')
  })

  it('has features that are not understood after the known ones', () => {
    const pond = feature('pond', 'Polygon', [], { z: 1, a: 2, kind: 'pond' })
    const { features } = JSON.parse(written(spoilt(file => file.features.unshift(pond))))
    expect(features).toHaveLength(12)
    expect(features[11]).toEqual(pond)
    expect(Object.keys(features[11].properties)).toEqual(['kind', 'a', 'z'])
  })

  it('has unknown members at every level', () => {
    const file = sampleFile()
    Object.assign(file, { bbox: [1, 2, 3, 4] })
    Object.assign(file.plan, { features: 'mine', author: { name: 'A' } })
    Object.assign(featureOf(file, 'row-3').properties, { 'trellis wires': null })
    expect(JSON.parse(written(JSON.stringify(file)))).toEqual(file)
  })
})

it('leaves out members that are undefined', () => {
  const plan = planOf(readPlan(JSON.stringify(sampleFile())))
  const season = { ...plan.seasons[0], weather: undefined } as unknown as Plan['seasons'][number]
  expect(writePlan({ ...plan, seasons: [season] })).not.toContain('weather')
})

it.each([Number.NaN, Number.POSITIVE_INFINITY, () => 1, 1n])('refuses what JSON cannot hold: %s', value => {
  const plan = planOf(readPlan(JSON.stringify(sampleFile())))
  const spoiltPlan = { ...plan, parameters: { backgroundBlossom: value as number } }
  expect(() => writePlan(spoiltPlan)).toThrow(RangeError)
})

it('orders as people count, and by code point, not by language', () => {
  expect(['b10', 'b9', 'a', 'b09', 'B1', 'b'].sort(naturalOrder)).toEqual(['B1', 'a', 'b', 'b09', 'b9', 'b10'])
  expect(['é', 'z', 'Z', '\u{1F41D}', '\uFB01'].sort(codePointOrder)).toEqual(['Z', 'z', 'é', '\uFB01', '\u{1F41D}'])
})
