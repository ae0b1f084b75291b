import { gpx, kml } from '@tmcw/togeojson'
import { DOMParser } from '@xmldom/xmldom'
import { describe, expect, it } from 'vitest'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { plansToWrite } from '../../support/plans-to-write'
import { planOf, sampleFile } from './sample-file'

/** Read by a parser and a converter that are not ours. */
function dom(text: string) {
  const told: string[] = []
  // It warns of signs that were put in place of those that XML cannot hold.
  const onError = (_: string, message: string) => message.includes('replacement character') || told.push(message)
  return { document: new DOMParser({ onError }).parseFromString(text, 'text/xml'), told }
}

describe.each(plansToWrite)('%s: another reader finds every thing', (_, make) => {
  it.each([
    ['GPX', gpxText, gpx, true],
    ['KML', kmlText, kml, false],
  ] as const)('in %s', (_, textOf, read, isApart) => {
    const plan = make()
    const { document, told } = dom(textOf(plan))
    expect(told).toEqual([])
    expect(read(document).features).toHaveLength(countOf(plan, isApart))
  })
})

/** Things on the earth; in GPX every plant of a group is one by itself. */
function countOf({ features }: Plan, isApart: boolean): number {
  return features
    .filter(({ id }) => id !== 'off')
    .reduce(
      (sum, { geometry }) => sum + (isApart && geometry.type === 'MultiPoint' ? geometry.coordinates.length : 1),
      0,
    )
}

it('a station is a waypoint under its name, a row a route from end to end, an outline a closed track', () => {
  const plan = planOf(readPlan(JSON.stringify(sampleFile())))
  const { features } = gpx(dom(gpxText(plan)).document)
  const named = (name: string) => features.find(({ properties }) => properties?.name === name)
  const station = plan.features.find(({ id }) => id === 's1')!
  expect(named(station.properties.name ?? 's1')).toMatchObject({
    geometry: { type: 'Point', coordinates: station.geometry.coordinates },
    properties: { type: 'station' },
  })
  expect(named('Row 3')).toMatchObject({ properties: { _gpxType: 'rte', type: 'row' } })
  const block = plan.features.find(({ id }) => id === 'block-1')!
  expect(named(block.properties.name ?? 'block-1')).toMatchObject({
    geometry: { type: 'MultiLineString', coordinates: block.geometry.coordinates },
    properties: { _gpxType: 'trk', type: 'block' },
  })
})
