import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { drop, feature, featureOf, put, sentences, spoilt, square, told } from '../file/sample-file'

const station = (id: string, lng: number, lat: number) => feature(id, 'Point', [lng, lat], { kind: 'station' })
const row = (id: string, coordinates: [number, number][]) =>
  feature(id, 'LineString', coordinates, { kind: 'row', crop: 'apple' })
const corners = square(-1.699, 52.2, 0.0008)
const bowTie = [corners[0], corners[2], corners[1], corners[3], corners[0]]

describe('the ground of a plan', () => {
  it.each<[string, string, string[], RegExp]>([
    [
      'a longitude beyond the last',
      put('features.s1.geometry.coordinates', [-190, 52.2]),
      ['error position-off-earth at s1'],
      /North gate has a position at -190, 52\.2.*WGS84/,
    ],
    [
      'a longitude where the latitude belongs, beyond the pole',
      put('features.s1.geometry.coordinates', [45.6, -122.9]),
      ['error position-off-earth at s1'],
      /longitude comes first/,
    ],
    [
      'metres for degrees in one corner of an area',
      put('features.block-1.geometry.coordinates.0.1', [530_000, 180_000]),
      ['error position-off-earth at block-1'],
      /another coordinate system/,
    ],
    [
      'longitude and latitude swapped',
      put('features.s1.geometry.coordinates', [52.2004, -1.6995]),
      ['error lon-lat-swapped at s1'],
      /North gate lies \d+ km from the rest.*Longitude comes first/,
    ],
    [
      'the same in one position of a row',
      put('features.row-3.geometry.coordinates.1', [52.2009, -1.7]),
      ['error lon-lat-swapped at row-3'],
      /Row 3/,
    ],
    [
      'a station far off that no swap brings back',
      put('features.s1.geometry.coordinates', [-1.7, 56]),
      ['warning plan-wide at ', 'warning mud-far at s1'],
      /4\d\d km wide/,
    ],
    [
      'a station on another continent',
      put('features.s1.geometry.coordinates', [-70, 40]),
      ['error plan-too-wide at ', 'warning mud-far at s1'],
      /beyond 500 km/,
    ],
    [
      'an id used twice',
      spoilt(file => file.features.push(station('s1', -1.6994, 52.2004))),
      ['error id-repeated at s1'],
      /s1 is used 2 times/,
    ],
    [
      'a row of one position',
      put('features.row-3.geometry.coordinates', [[-1.7, 52.2]]),
      ['error line-short at row-3'],
      /one position; a line needs two/,
    ],
    ['a row of none', put('features.row-3.geometry.coordinates', []), ['error line-short at row-3'], /no positions/],
    [
      'a row without length',
      spoilt(file => {
        featureOf(file, 'row-3').geometry.coordinates = [
          [-1.7, 52.2],
          [-1.7, 52.2],
        ]
      }),
      ['error line-flat at row-3'],
      /without length/,
    ],
    [
      'plants without positions',
      put('features.trees.geometry.coordinates', []),
      ['error no-positions at trees'],
      /empty/,
    ],
    [
      'a block without a ring',
      put('features.block-1.geometry.coordinates', []),
      ['error ring-short at block-1'],
      /corners/,
    ],
    [
      'a block of two corners',
      put('features.block-1.geometry.coordinates', [[corners[0], corners[1], corners[0]]]),
      ['error ring-short at block-1'],
      /The outline of Long block has fewer than three different corners/,
    ],
    [
      'an open outline',
      put('features.block-1.geometry.coordinates', [corners.slice(0, 4)]),
      ['error ring-open at block-1'],
      /not closed/,
    ],
    [
      'an outline that crosses itself',
      put('features.block-1.geometry.coordinates', [bowTie]),
      ['error ring-crossing at block-1'],
      /The outline of Long block crosses or touches itself/,
    ],
    [
      'an outline there and back',
      put('features.beds.geometry.coordinates', [[corners[0], corners[1], [-1.6985, 52.2], corners[0]]]),
      ['error ring-flat at beds'],
      /no area/,
    ],
    [
      'a hole beside its block',
      put('features.block-1.geometry.coordinates.1', square(-1.697, 52.2, 0.0002)),
      ['error hole-outside at block-1'],
      /a hole \(number 1\) that is not wholly within/,
    ],
    [
      'the same hole twice',
      spoilt(file => {
        const { coordinates } = featureOf(file, 'block-1').geometry
        coordinates.push(coordinates[1])
      }),
      ['error holes-overlap at block-1'],
      /number 2/,
    ],
    [
      'a keepout that crosses itself, which spoils no figure',
      put('features.yard.geometry.coordinates', [bowTie]),
      ['warning ring-crossing at yard'],
      /Yard/,
    ],
    [
      'a windbreak without length',
      put('features.poplars.geometry.coordinates', [[-1.7, 52.2]]),
      ['warning line-short at poplars'],
      /Poplars/,
    ],
    [
      'another coordinate system',
      put('crs', { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::27700' } }),
      ['error other-coordinates at crs'],
      /EPSG::27700/,
    ],
  ])('%s', (_, file, places, words) => {
    const outcome = readPlan(file)
    expect(outcome.ok).toBe(true)
    expect(told(file)).toEqual(places)
    expect(sentences(outcome)[0]).toMatch(words)
  })

  it.each(['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326'])(
    'takes %s for what it is',
    name => {
      expect(told(put('crs', { type: 'name', properties: { name } }))).toEqual([])
    },
  )

  it('cannot tell which of two is swapped, and says only that they lie apart', () => {
    const file = spoilt(each => {
      each.features = [station('a', -1.7, 52.2), station('b', 52.2, -1.7)]
    })
    expect(told(file).filter(line => line.startsWith('error'))).toEqual(['error plan-too-wide at '])
  })

  it('finds several swapped among more that are not', () => {
    const file = spoilt(each => {
      each.features = [0, 1, 2, 3, 4].map(i =>
        i < 2
          ? row(`r${i}`, [
              [52.2, -1.7],
              [52.201, -1.7],
            ])
          : row(`r${i}`, [
              [-1.7, 52.2],
              [-1.7, 52.201],
            ]),
      )
    })
    expect(told(file).filter(line => line.includes('swapped'))).toEqual([
      'error lon-lat-swapped at r0',
      'error lon-lat-swapped at r1',
    ])
  })

  it('is content with nothing drawn', () => {
    expect(told(put('features', [])).filter(line => line.startsWith('error'))).toEqual([])
    expect(told(drop('crs'))).toEqual([])
  })
})
