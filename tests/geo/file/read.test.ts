import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { type Content, feature, featureOf, planOf, sampleFile, sentences, spoilt, told } from './sample-file'

const text = () => JSON.stringify(sampleFile())

describe('a sound file', () => {
  it('opens without a single problem', () => {
    const outcome = readPlan(text())
    expect(sentences(outcome)).toEqual([])
    const plan = planOf(outcome)
    expect(plan.name).toBe('Lower Field')
    expect(plan.features).toEqual(sampleFile().features)
    expect(plan.seasons).toEqual(sampleFile().plan.seasons)
    expect(plan.besides).toEqual({})
  })

  it('opens with a byte order mark and white space round it', () => {
    expect(readPlan(`\uFEFF\n ${text()}\r\n`).ok).toBe(true)
  })

  it('opens the worked example', () => {
    const example = readFileSync(new URL('./fixtures/worked-example.plan.geojson', import.meta.url), 'utf8')
    expect(told(example)).toEqual([
      'note default-used at plan.bloomRegion',
      'warning tubes-few at s1',
      'warning tubes-few at s2',
      'note no-mud at ',
    ])
    expect(planOf(readPlan(example)).features).toHaveLength(11)
  })

  it('gets defaults for what may be missing, and is told of those that steer the figures', () => {
    const outcome = readPlan('{"type":"FeatureCollection","plan":{"version":1},"features":[]}')
    expect(planOf(outcome)).toEqual({
      version: 1,
      name: '',
      notes: '',
      timeZone: 'UTC',
      units: 'metric',
      bee: 'osmia-lignaria',
      bloomRegion: 'maritime-northwest',
      parameters: {},
      crops: {},
      seasons: [],
      features: [],
      besides: {},
    })
    expect(outcome.problems.map(({ at }) => at)).toEqual(['plan.bee', 'plan.bloomRegion'])
  })

  it.each([
    [-1.7, 52.2, 'southern-england'],
    [11.3, 46.5, 'continental'],
    [-122.9, 45.6, 'maritime-northwest'],
  ])('takes the bloom region from where it lies: %d, %d', (lng, lat, region) => {
    const file = spoilt(each => {
      delete each.plan.bloomRegion
      each.features = [feature('s1', 'Point', [lng, lat], { kind: 'station' })]
    })
    expect(planOf(readPlan(file)).bloomRegion).toBe(region)
  })

  it('takes null in a property as not given, as programs that keep tables write it', () => {
    const file = spoilt(each => {
      Object.assign(featureOf(each, 'row-3').properties, { count: null, vigour: null, cultivar: null, colour: null })
    })
    const [row] = planOf(readPlan(file)).features
    expect(row?.properties).toEqual({
      kind: 'row',
      name: 'Row 3',
      crop: 'apple-late',
      spacing: 2.5,
      rowSpacing: 4.5,
      colour: null,
    })
  })
})

describe('what is kept without being known', () => {
  it('features of other kinds, of no kind, and without a place', () => {
    const pond = feature('pond', 'Polygon', [], { kind: 'pond', depth: 2 })
    const bare = { type: 'Feature', id: 9, geometry: null, properties: null }
    const lost = { ...feature('row-9', 'Point', [], { kind: 'row', name: 'Row 9', crop: 'apple' }), geometry: null }
    const outcome = readPlan(
      spoilt(f => {
        f.features.unshift(pond, bare, lost)
      }),
    )
    const plan = planOf(outcome)
    expect(plan.features).toEqual(sampleFile().features)
    expect(plan.besides).toEqual({ features: [pond, bare, lost] })
    expect(outcome.problems.map(({ severity, code, at }) => [severity, code, at])).toEqual([
      ['warning', 'feature-unplaced', 'features[2].geometry'],
      ['note', 'features-kept', 'features'],
      ['note', 'features-kept', 'features'],
    ])
    expect(sentences(outcome)[0]).toContain('Row 9 has no place on the map')
    expect(sentences(outcome)[1]).toContain('1 drawn thing of a kind this version does not know (“pond”) is not shown')
  })

  it('members at every level stay where they are', () => {
    const mark = (group: Content) => {
      group['x-later'] = { deep: [1, { er: null }] }
    }
    const file = spoilt(f => {
      const season = f.plan.seasons[0]
      const row = featureOf(f, 'row-3')
      const groups = [f, f.plan, f.plan.crops['apple-late'], season, season.bloom.apple, season.stations.s1]
      groups.push(season.stations.s1.releases[0], season.weather, season.records.s1, season.records.s1.visits[0])
      groups.push(season.records.s1.opening, season.fruitSet['row-3'], row, row.geometry, row.properties)
      groups.forEach(mark)
    })
    const plan = planOf(readPlan(file))
    const { plan: inPlan, ...top } = plan.besides
    expect(top).toEqual({ 'x-later': { deep: [1, { er: null }] } })
    expect(inPlan).toEqual({ 'x-later': { deep: [1, { er: null }] } })
    expect(plan.seasons).toEqual(JSON.parse(file).plan.seasons)
    expect(plan.features).toEqual(JSON.parse(file).features)
    expect(plan.crops).toEqual(JSON.parse(file).plan.crops)
  })

  it('members of the plan named like those of a plan in memory', () => {
    const plan = planOf(
      readPlan(
        spoilt(f => {
          Object.assign(f.plan, { features: 'mine', besides: 4 })
        }),
      ),
    )
    expect(plan.features).toHaveLength(11)
    expect(plan.besides).toEqual({ plan: { features: 'mine', besides: 4 } })
  })
})

it('opens a plan whose meaning is wrong, with errors among its problems, so that it can be put right', () => {
  const file = spoilt(f => {
    featureOf(f, 'row-3').properties.spacing = -1
  })
  const outcome = readPlan(file)
  expect(outcome.ok).toBe(true)
  expect(told(file)).toEqual(['error out-of-range at row-3'])
  expect(planOf(outcome).features[0]?.properties).toMatchObject({ spacing: -1 })
})
