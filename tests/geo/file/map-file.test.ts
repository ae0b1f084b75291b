import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { gpxText } from '#geo/file/gpx'
import type { Import, ImportOptions } from '#geo/file/import'
import { importEdit } from '#geo/file/import-edit'
import { importThings } from '#geo/file/import-things'
import { largestImport, readMapFile } from '#geo/file/map-file'
import { mostUnpacked } from '#geo/file/unpack-kml'
import { mostElements } from '#geo/file/xml'
import { labelOf } from '#geo/plan/edits'
import { problemText } from '#geo/problem'
import { smallPlan, stationFeature } from '../../support/builders'
import { utf8, utf16 } from '../../support/bytes'

const gpx = (content: string) => `<?xml version="1.0"?><gpx version="1.1" creator="x">${content}</gpx>`
const kml = (content: string) =>
  `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>${content}</Document></kml>`
const place = (geometry: string, name = 'A') => `<Placemark><name>${name}</name>${geometry}</Placemark>`
const json = (...geometries: readonly unknown[]) =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: geometries.map(geometry => ({ type: 'Feature', properties: null, geometry })),
  })

function read(file: string | Uint8Array, options?: ImportOptions) {
  const outcome = readMapFile(typeof file === 'string' ? utf8(file) : file, options)
  const form: Import['form'] = { format: 'table', version: '', encoding: '', holds: {} }
  const found: Import = outcome.ok ? outcome.value : { form, items: [], groups: [], spellings: [] }
  return { ...found, problems: outcome.problems, codes: outcome.problems.map(({ code }) => code) }
}

describe('files of other programs', () => {
  it('GPX: waypoints, routes, each part of a track, closed ones as outlines', () => {
    const path = (name: string, ...at: readonly (readonly [number, number])[]) =>
      at.map(([lat, lon]) => `<${name} lat="${lat}" lon="${lon}"><time>2026-03-01T10:00:00Z</time></${name}>`).join('')
    const { form, items, groups, problems } = read(
      gpx(
        `<wpt lat="52.2" lon="-1.7"><ele>80.5</ele><name> Nest\n1 </name></wpt><wpt lat="52.21" lon="-1.7"><name>Mud by the pond</name></wpt>
        <rte><name>Hedge</name>${path('rtept', [52.2, -1.7], [52.201, -1.7])}</rte>
        <trk><name>Walk</name><trkseg>${path('trkpt', [52.2, -1.7], [52.201, -1.7])}</trkseg>
        <trkseg>${path('trkpt', [52.2, -1.7], [52.201, -1.7], [52.201, -1.69], [52.2, -1.7])}</trkseg></trk>`,
      ),
    )
    expect(form).toEqual({
      format: 'GPX',
      version: '1.1',
      encoding: 'utf-8',
      holds: { waypoint: 2, track: 1, route: 1 },
    })
    // A route was drawn, not walked, whatever times it has.
    expect(items.map(({ track }) => track !== null)).toEqual([false, false, false, true, false])
    expect(problems).toEqual([])
    expect(items.map(({ geometry, properties }) => [geometry.type, properties.name])).toEqual([
      ['Point', 'Nest 1'],
      ['Point', 'Mud by the pond'],
      ['LineString', 'Hedge'],
      ['LineString', 'Walk 1'],
      ['Polygon', 'Walk 2'],
    ])
    expect(items[0]!.geometry.coordinates).toEqual([-1.7, 52.2, 80.5])
    expect(items[3]!.track?.times).toEqual([Date.UTC(2026, 2, 1, 10), Date.UTC(2026, 2, 1, 10)])
    expect(groups.map(({ kind }) => kind)).toEqual(['station', 'mud', 'windbreak', 'row', 'block'])
  })

  it('KML: folders as labels, holes, groups of geometries, walked tracks, blanks behind commas', () => {
    const ring = (text: string) => `<LinearRing><coordinates>${text}</coordinates></LinearRing>`
    const { items, groups, problems } = read(
      kml(
        `<Folder><name>Nest boxes</name>${place('<Point><coordinates> -1.7, 52.2, 0 </coordinates></Point>')}</Folder>
        ${place(
          `<Polygon><outerBoundaryIs>${ring('0,0 0.01,0 0.01,0.01 0,0.01 0,0')}</outerBoundaryIs><innerBoundaryIs>${ring('0.001,0.001 0.002,0.001 0.002,0.002')}</innerBoundaryIs></Polygon>`,
        )}${place('<MultiGeometry><Point><coordinates>1,2</coordinates></Point><LineString><coordinates>1,2 1,3</coordinates></LineString></MultiGeometry>')}
        ${place('<gx:Track xmlns:gx="x"><when>2026-03-01T10:00:00Z</when><gx:coord>1 2 0</gx:coord><gx:coord>1 2.1 0</gx:coord></gx:Track>')}`,
      ),
    )
    expect(problems).toEqual([])
    expect(groups[0]).toMatchObject({ label: 'Nest boxes', kind: 'station', shape: 'point' })
    expect(items.map(({ geometry }) => geometry.type)).toEqual([
      'Point',
      'Polygon',
      'Point',
      'LineString',
      'LineString',
    ])
    // A ring that was left open is closed.
    expect(items[1]!.geometry.coordinates[1]).toHaveLength(4)
    expect(items.slice(2, 4).map(({ properties }) => properties.name)).toEqual(['A 1', 'A 2'])
    expect(items[4]!.track?.times).toEqual([Date.UTC(2026, 2, 1, 10), null])
  })

  it('GeoJSON: every geometry of RFC 7946, bare or in features', () => {
    const square = [
      [
        [0, 0],
        [0.01, 0],
        [0.01, 0.01],
        [0, 0.01],
        [0, 0],
      ],
    ]
    const types = ({ items }: { items: Import['items'] }) => items.map(({ geometry }) => geometry.type)
    const every = [
      {
        type: 'MultiPoint',
        coordinates: [
          [1, 2],
          [1, 3],
        ],
      },
      {
        type: 'MultiLineString',
        coordinates: [
          [
            [1, 2],
            [1, 3],
          ],
          [
            [1, 2],
            [2, 2],
          ],
        ],
      },
      { type: 'MultiPolygon', coordinates: [square, square] },
      {
        type: 'GeometryCollection',
        geometries: [
          { type: 'Point', coordinates: [1, 2] },
          { type: 'Polygon', coordinates: square },
        ],
      },
    ]
    const two = (type: string) => [type, type]
    expect(types(read(json(...every)))).toEqual([
      ...two('Point'),
      ...two('LineString'),
      ...two('Polygon'),
      'Point',
      'Polygon',
    ])
    expect(types(read(JSON.stringify(every[0])))).toEqual(two('Point'))
    const crs = { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::27700' } }
    expect(read(JSON.stringify({ ...JSON.parse(json(every[0])), crs })).codes).toEqual(['import-crs'])
  })

  it('are told apart by what they hold, in any encoding', () => {
    const text = gpx('<wpt lat="52.2" lon="-1.7"><name>Krämer 日本</name></wpt>')
    for (const bytes of [utf8(text, true), utf16(text, 'le', true), utf16(text, 'be', true)]) {
      expect(read(bytes).items[0]?.properties.name).toBe('Krämer 日本')
    }
    expect(read('row,tree\n1,1').codes).toEqual(['import-unknown'])
    expect(read('<html><body/></html>').codes).toEqual(['import-wrong-root'])
  })
})

describe('what is wrong is told, thing by thing', () => {
  it.each([
    ['52.2', '200', 'import-position'],
    ['95', '-1.7', 'import-swapped'],
    ['NaN', '-1.7', 'import-position'],
    ['1e999', '-1.7', 'import-position'],
    ['', '-1.7', 'import-position'],
    ['52.2abc', '-1.7', 'import-position'],
    ['0x10', '-1.7', 'import-position'],
  ])('latitude %j, longitude %j: %s', (lat, lon, code) => {
    const { codes, items } = read(gpx(`<wpt lat="${lat}" lon="${lon}"/><wpt lat="1" lon="2"/>`))
    expect({ codes, count: items.length }).toEqual({ codes: [code], count: 1 })
  })

  it('points without a place are taken out of a line; too few left make none', () => {
    const { codes, items } = read(
      kml(
        place('<LineString><coordinates>1,2 NaN,2 1,91 1,3</coordinates></LineString>') +
          place('<LineString><coordinates>1,2 1,2</coordinates></LineString>') +
          place(
            '<Polygon><outerBoundaryIs><LinearRing><coordinates>0,0 1,1 2,2 0,0</coordinates></LinearRing></outerBoundaryIs></Polygon>',
          ) +
          place(''),
      ),
    )
    expect(codes).toEqual(['import-points-left', 'import-no-shape', 'import-no-shape', 'import-unplaced'])
    expect(items.map(({ geometry }) => geometry.coordinates)).toEqual([
      [
        [1, 2],
        [1, 3],
      ],
    ])
  })

  it('longitude and latitude that both lie on earth are told apart by where the plan lies', () => {
    const file = json({ type: 'Point', coordinates: [52.2, -1.7] })
    expect(read(file).codes).toEqual([])
    expect(read(file, { near: [-1.7, 52.2] }).codes).toEqual(['import-far-swapped'])
    expect(read(json({ type: 'Point', coordinates: [-1.7, 52.2] }), { near: [-1.7, 52.2] }).codes).toEqual([])
  })

  it('text that looks like markup stays text, and every problem has its sentence', () => {
    const { items, problems } = read(
      gpx(
        '<wpt lat="1" lon="2"><name>&lt;img src=x onerror=alert(1)&gt;</name></wpt><wpt lat="&lt;b&gt;" lon="2"><name>&lt;b&gt;</name></wpt>',
      ),
    )
    expect(items[0]?.properties.name).toBe('<img src=x onerror=alert(1)>')
    expect(problems.map(problemText)).toEqual([
      '<b>: longitude none, latitude none is no longitude and latitude in degrees. It is left out.'.replace(
        'longitude none',
        'longitude 2',
      ),
    ])
  })
})

describe('hostile files are refused', () => {
  it('that are too large, or are no text', () => {
    expect(read(new Uint8Array(largestImport + 1)).codes).toEqual(['import-too-large'])
    expect(read(Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 7, 7])).codes).toContain('text-binary')
    expect(read(json()).codes).toEqual(['import-empty'])
  })

  it('with more things or positions than any plan needs', () => {
    expect(read(gpx('<wpt lat="1" lon="2"/>'.repeat(50_001))).codes).toEqual(['import-too-many'])
    expect(
      read(kml(place(`<LineString><coordinates>${'1,2 '.repeat(500_001)}</coordinates></LineString>`))).codes,
    ).toEqual(['import-too-many'])
  })

  it('deep GeoJSON, deep XML, document types', () => {
    expect(read(`${'['.repeat(100_000)}${']'.repeat(100_000)}`).codes).toEqual(['too-deep'])
    expect(read(kml('<Folder>'.repeat(100_000))).codes).toEqual(['import-too-deep'])
    expect(read(`<!DOCTYPE kml [<!ENTITY a "b">]>${kml('&a;')}`).codes).toEqual(['import-doctype'])
  })
})

describe('properties in GPX', () => {
  const station = (beside: string) => `<wpt lat="52.2" lon="-1.7"><extensions>${beside}</extensions></wpt>`
  const read1 = (root: string, beside: string) => read(`<gpx version="1.1" ${root}>${station(beside)}</gpx>`)
  const ours = 'xmlns:p="urn:nestreach:plan"'

  it('are elements by their name, or named by an attribute where no element can be called so', () => {
    for (const beside of ['<p:height>1.5</p:height>', '<p:property name="height">1.5</p:property>'])
      expect(read1(ours, beside).items[0]?.properties).toEqual({ height: 1.5 })
    const plan = smallPlan({ features: [stationFeature('s', { height: 1.5, 'odd name': 'kept' } as object)] })
    expect(gpxText(plan)).toContain('<p:height>1.5</p:height><p:property name="odd name">kept</p:property>')
  })

  it('of other programs count only where they name a kind of ours', () => {
    expect(read1('', '<x:height>1.5</x:height>').items[0]?.properties).toEqual({})
    const { items, groups } = read1('', '<x:kind>mud</x:kind><x:name>n</x:name>')
    expect([items[0]?.properties, groups[0]?.kind]).toEqual([{}, 'mud'])
  })
})

describe('KMZ', () => {
  const inner = kml(place('<Point><coordinates>-1.7,52.2</coordinates></Point>', 'Gate'))

  it('is the first KML file of the archive, packed or not', () => {
    for (const level of [0, 9] as const) {
      const { items, problems } = read(
        zipSync({ 'a.png': [strToU8('x'), { level }], 'doc.kml': [strToU8(inner), { level }] }),
      )
      expect({ name: items[0]?.properties.name, problems }).toEqual({ name: 'Gate', problems: [] })
    }
  })

  it('whose first file points to others in it is all of them; what lies elsewhere is told', () => {
    const link = (address: string, of = 'Link') => `<NetworkLink><${of}><href>${address}</href></${of}></NetworkLink>`
    const spot = (name: string) => place('<Point><coordinates>-1.7,52.2</coordinates></Point>', name)
    const there = `https://example.org/${'x'.repeat(3)}.kml`
    const archive = zipSync({
      'doc.kml': strToU8(
        kml(`${spot('First')}${link('layers/a.kml')}<Folder>${link('./b.kml', 'Url')}</Folder>${link(there)}`),
      ),
      'layers/a.kml': strToU8(kml(spot('A') + link('doc.kml') + link('layers/a.kml') + link('broken.kml'))),
      'b.kml': strToU8(kml(spot('B'))),
      'broken.kml': strToU8('<kml>'),
      'left.kml': strToU8(kml(spot('nobody points here'))),
    })
    const { items, problems } = read(archive)
    expect(items.map(({ properties }) => properties.name)).toEqual(['First', 'A', 'B'])
    expect(problems.map(({ code, values }) => `${code} ${values.found}`).sort()).toEqual([
      'import-link broken.kml',
      `import-link ${there}`,
    ])
    expect(read(kml(link(there))).codes).toEqual(['import-empty', 'import-link'])
  })

  it('that points to more than one file may hold is read until then', () => {
    const inEach = 90_000
    const count = Math.ceil(mostElements / inEach) + 2
    const names = Array.from({ length: count }, (_, i) => `f${i}.kml`)
    const links = names.map(each => `<NetworkLink><Link><href>${each}</href></Link></NetworkLink>`).join('')
    const spot = place('<Point><coordinates>-1.7,52.2</coordinates></Point>')
    // Marks within a text are counted like those of elements, and are read far sooner.
    const full = strToU8(kml(`${spot}<description><![CDATA[${'<'.repeat(inEach)}]]></description>`))
    const { items, codes } = read(
      zipSync({ 'doc.kml': strToU8(kml(links)), ...Object.fromEntries(names.map(each => [each, full])) }, { level: 1 }),
    )
    expect(items.length).toBeGreaterThan(1)
    expect(items.length * inEach).toBeLessThanOrEqual(mostElements)
    expect(codes).toEqual(Array.from({ length: count - items.length }, () => 'import-link'))
  })

  it('that unpacks to more than can be read is broken off', () => {
    const bomb = zipSync({ 'doc.kml': new Uint8Array(mostUnpacked + 1) }, { level: 9 })
    expect(bomb.length).toBeLessThan(mostUnpacked / 500)
    expect(read(bomb).codes).toEqual(['import-zip-large'])
  })

  it('that is damaged, cut short or without a map is told', () => {
    const whole = zipSync({ 'doc.kml': strToU8(inner) })
    expect(read(whole.subarray(0, 60)).codes).toEqual(['import-zip-broken'])
    expect(read(whole.map((byte, i) => (i > 40 && i < 60 ? 0xff : byte))).codes).toEqual(['import-zip-broken'])
    expect(read(zipSync({ 'a.txt': strToU8('x') })).codes).toEqual(['import-zip-no-kml'])
    expect(read(utf8('PK nothing')).codes).toEqual(['import-zip-no-kml'])
  })
})

describe('bringing in', () => {
  const file = gpx(`<wpt lat="52.2" lon="-1.7"><name>Box</name></wpt><wpt lat="52.21" lon="-1.7"/>
    <trk><name>Edge</name><trkseg><trkpt lat="52.2" lon="-1.7"/><trkpt lat="52.201" lon="-1.7"/><trkpt lat="52.201" lon="-1.69"/></trkseg></trk>`)

  it('is one edit with its words and ids that stay', () => {
    const { problems: _, codes: __, ...found } = read(file)
    const [points, lines] = found.groups
    const ids = [3, 2, 1]
    const choices = { [points!.key]: { kind: 'station' }, [lines!.key]: { kind: 'block', crop: 'apple' } } as const
    const edit = importEdit(importThings(found, choices), kind => `${kind}-new-${ids.pop()}`)
    const plan = smallPlan()
    expect(labelOf(edit, plan)).toBe('Bring in 3 things')
    const added = edit.apply(plan).features.slice(plan.features.length)
    expect(edit.apply(plan).features.slice(plan.features.length)).toEqual(added)
    expect(added.map(({ id, properties }) => [id, properties.kind, properties.name])).toEqual([
      ['station-new-1', 'station', 'Box'],
      ['station-new-2', 'station', undefined],
      ['block-new-3', 'block', 'Edge'],
    ])
    const [ring] = added[2]!.geometry.coordinates as readonly (readonly unknown[])[]
    expect(ring).toHaveLength(4)
    expect(ring!.at(-1)).toEqual(ring![0])
  })

  it('leaves out what nobody chose, and takes no kind that the shape does not allow, nor a planting without crop', () => {
    const { problems: _, codes: __, ...found } = read(file)
    const [points, lines] = found.groups
    const newId = () => 'x'
    const plan = smallPlan()
    expect(importEdit(importThings(found, { [lines!.key]: null }), newId).apply(plan)).toBe(plan)
    expect(() => importThings(found, { [points!.key]: { kind: 'row', crop: 'apple' } })).toThrow(RangeError)
    expect(() => importThings(found, { [lines!.key]: { kind: 'row' } })).toThrow(/needs a crop/)
  })
})
