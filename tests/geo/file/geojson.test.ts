import { booleanClockwise } from '@turf/turf'
import { expect, it } from 'vitest'
import { plainGeoJson } from '#geo/file/geojson'
import { readPlan } from '#geo/file/read'
import { type Content, featureOf, planOf, sampleFile, spoilt } from './sample-file'

const plain = (text: string): Content => JSON.parse(plainGeoJson(planOf(readPlan(text))))

it('holds what is drawn and no member beside the standard', () => {
  const file = plain(JSON.stringify({ ...sampleFile(), later: 1 }))
  expect(Object.keys(file)).toEqual(['type', 'features'])
  expect(file.type).toBe('FeatureCollection')
  expect(file.features).toHaveLength(11)
  for (const feature of file.features) expect(Object.keys(feature)).toEqual(['type', 'id', 'geometry', 'properties'])
})

it("has each planting's crop by name: the plan's own or the table's", () => {
  const file = plain(JSON.stringify(sampleFile()))
  expect(featureOf(file, 'row-3').properties).toMatchObject({ crop: 'apple-late', cropName: 'Late apple' })
  expect(featureOf(file, 'block-1').properties).toMatchObject({ crop: 'apple', cropName: 'Apple' })
  expect('cropName' in featureOf(file, 's1').properties).toBe(false)
})

it('winds outer rings counter-clockwise and holes clockwise, whichever way they were drawn', () => {
  const drawn = JSON.stringify(sampleFile())
  const turned = spoilt(file => {
    for (const ring of featureOf(file, 'block-1').geometry.coordinates) ring.reverse()
  })
  for (const text of [drawn, turned]) {
    const [outer, hole] = featureOf(plain(text), 'block-1').geometry.coordinates
    expect(booleanClockwise(outer)).toBe(false)
    expect(booleanClockwise(hole)).toBe(true)
    expect(outer).toHaveLength(5)
    expect(outer[0]).toEqual(outer[4])
  }
})

it('has properties without groups', () => {
  const file = plain(
    spoilt(each => {
      Object.assign(featureOf(each, 'row-3').properties, { soil: { ph: 6.5, tests: [{ year: 2020 }] }, none: null })
    }),
  )
  const { properties } = featureOf(file, 'row-3')
  expect(properties).toMatchObject({ 'soil.ph': 6.5, 'soil.tests.0.year': 2020 })
  expect(Object.values(properties).every(value => typeof value !== 'object')).toBe(true)
})
