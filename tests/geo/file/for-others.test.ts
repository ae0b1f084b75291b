import { readFileSync } from 'node:fs'
import { gpx, kml } from '@tmcw/togeojson'
import { DOMParser } from '@xmldom/xmldom'
import { describe, expect, it } from 'vitest'
import { validateXML } from 'xmllint-wasm'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { plantFeature, rowFeature, smallPlan, stationFeature, step } from '../../support/builders'
import { gpxRules } from '../../support/gpx-rules'
import { kmlRules } from '../../support/kml-rules'
import { planOf, sampleFile } from './sample-file'

const odd = `<b onclick="x">\u0000\u001b & "Row" ]]> 'á' 日本 😀 \ud800 &amp;\r\n\t`

function scenario(name: string): Plan {
  const file = new URL(`../../../scenarios/${name}.plan.geojson`, import.meta.url)
  return planOf(readPlan(readFileSync(file, 'utf8')))
}

function oddPlan(): Plan {
  const many = plantFeature('plants', { name: odd, cultivar: '=1+1' })
  return smallPlan({
    name: odd,
    features: [
      rowFeature('row-1', { name: odd, spacing: 2.5, cultivar: odd }),
      stationFeature('station-1', { name: odd, height: 1.5 }),
      { ...stationFeature(odd), geometry: { type: 'Point', coordinates: [180, -90, 12.5] } },
      { ...stationFeature('high'), geometry: { type: 'Point', coordinates: [-1e-9, 1e-12, 1e300] } },
      { ...stationFeature('off'), geometry: { type: 'Point', coordinates: [-1.7, 95] } },
      { ...many, geometry: { type: 'MultiPoint', coordinates: [step([0, 0]), step([1, 2])] } },
    ],
  })
}

const plans: readonly (readonly [string, () => Plan])[] = [
  ['one of everything', () => planOf(readPlan(JSON.stringify(sampleFile())))],
  ['odd names and places', oddPlan],
  ['nothing drawn', () => smallPlan({ name: '', features: [] })],
  ...['allotment', 'mixed-orchard', 'farm', 'providence-apples'].map(name => [name, () => scenario(name)] as const),
]

async function faults(contents: string, schema: string): Promise<readonly string[]> {
  const { errors } = await validateXML({
    xml: [{ fileName: 'plan.xml', contents }],
    schema: [{ fileName: 'rules.xsd', contents: schema }],
    maxMemoryPages: 4096,
  })
  return errors.map(({ rawMessage }) => rawMessage)
}

/** Read by a parser and a converter that are not ours. */
function dom(text: string) {
  const told: string[] = []
  // It warns of signs that were put in place of those that XML cannot hold.
  const onError = (_: string, message: string) => message.includes('replacement character') || told.push(message)
  return { document: new DOMParser({ onError }).parseFromString(text, 'text/xml'), told }
}

describe.each(plans)('%s', (_, make) => {
  it('as GPX keeps the rules of GPX 1.1 (Topografix), and another reader finds every thing in it', async () => {
    const plan = make()
    expect(await faults(gpxText(plan), gpxRules)).toEqual([])
    const { document, told } = dom(gpxText(plan))
    expect(told).toEqual([])
    expect(gpx(document).features).toHaveLength(countOf(plan, true))
  })

  it('as KML keeps the rules of KML 2.2 (OGC 07-147r2), and another reader finds every thing in it', async () => {
    const plan = make()
    expect(await faults(kmlText(plan), kmlRules)).toEqual([])
    const { document, told } = dom(kmlText(plan))
    expect(told).toEqual([])
    expect(kml(document).features).toHaveLength(countOf(plan, false))
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

it('the rules find what is wrong', async () => {
  const good = gpxText(oddPlan())
  expect(await faults(good.replace('lat="', 'lat="9'), gpxRules)).not.toEqual([])
  expect(await faults(good.replace('creator="Nestreach"', ''), gpxRules)).not.toEqual([])
  expect(await faults(good.replace('</name><type>', '</name><name>x</name><type>'), gpxRules)).not.toEqual([])
  const other = kmlText(oddPlan())
  expect(await faults(other.replace('<coordinates>', '<coordinates>52 '), kmlRules)).not.toEqual([])
  expect(await faults(other.replace('<Placemark>', '<Placemark><Point/>'), kmlRules)).not.toEqual([])
})

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
