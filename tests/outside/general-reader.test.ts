import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { planTable } from '#geo/file/csv-tables'
import { plainGeoJson } from '#geo/file/geojson'
import { gpxText } from '#geo/file/gpx'
import { kmlText } from '#geo/file/kml'
import { readPlan } from '#geo/file/read'
import { kindWords } from '#geo/plan/edits-wording'
import { type Feature, isPlanting, isStation, nameOf } from '#geo/plan/plan'
import { woundRight } from '#geo/space/ring'
import { planOf, sampleFile } from '../geo/file/sample-file'
import { broughtIn, essence } from '../support/brought-in'
import { hasGdal, layersOf, madeBy, rounded, type Seen, seenBy } from '../support/gdal'
import { scenario } from '../support/plans-to-write'

const everything = planOf(readPlan(JSON.stringify(sampleFile())))
const orchard = scenario('mixed-orchard')

/** A feature as a reader of areas has it. */
function thing({ geometry: { type, coordinates }, ...feature }: Feature) {
  return {
    name: feature.properties.name ?? '',
    kind: feature.properties.kind,
    type,
    coordinates: rounded(type === 'Polygon' ? woundRight(coordinates) : coordinates),
  }
}

/** The same as GPX has it, where outlines are tracks and every plant of a group is a waypoint. */
function inGpx(feature: Feature) {
  const { properties, geometry } = feature
  const common = { name: nameOf(feature), kind: properties.kind }
  switch (geometry.type) {
    case 'MultiPoint':
      return geometry.coordinates.map((position, i) => ({
        ...common,
        name: `${common.name} ${i + 1}`,
        type: 'Point',
        coordinates: rounded(position),
      }))
    case 'Polygon':
      return [{ ...common, type: 'MultiLineString', coordinates: rounded(geometry.coordinates) }]
    default:
      return [{ ...common, type: geometry.type, coordinates: rounded(geometry.coordinates) }]
  }
}

function found({ properties, type, coordinates }: Seen, nameField = 'name', kindField = 'kind') {
  return { name: properties[nameField] ?? '', kind: properties[kindField], type, coordinates }
}

const sorted = (things: readonly unknown[]) => things.map(each => JSON.stringify(each)).sort()
const places = ['-oo', 'X_POSSIBLE_NAMES=longitude', '-oo', 'Y_POSSIBLE_NAMES=latitude']

function readThere() {
  it.each([everything, orchard])('$name as GPX', async plan => {
    const seen = await seenBy('plan.gpx', gpxText(plan), ['waypoints', 'routes', 'tracks'])
    expect(sorted(seen.map(each => found(each, 'name', 'type')))).toEqual(sorted(plan.features.flatMap(inGpx)))
    // Properties beside those of GPX are fields of their own.
    const station = plan.features.find(isStation)!
    const there = seen.find(({ properties }) => properties.p_id === station.id)
    expect(Number(there?.properties.p_height)).toBe(station.properties.height)
  })

  it.each([
    ['KML', 'plan.kml', everything, kmlText(everything)],
    ['KMZ', 'plan.kmz', orchard, zipSync({ 'doc.kml': strToU8(kmlText(orchard)) })],
  ] as const)('as %s', async (_, file, plan, written) => {
    const [seen, layers] = await Promise.all([seenBy(file, written), layersOf(file, written)])
    const things = plan.features.map(feature => ({ ...thing(feature), name: nameOf(feature) }))
    expect(sorted(seen.map(each => found(each, 'Name')))).toEqual(sorted(things))
    expect(new Set(layers)).toEqual(new Set(plan.features.map(({ properties }) => kindWords[properties.kind])))
  })

  it('as GeoJSON', async () => {
    const seen = await seenBy('plan.geojson', plainGeoJson(everything))
    expect(sorted(seen.map(each => found(each)))).toEqual(sorted(everything.features.map(thing)))
  })

  it('as tables', async () => {
    const plan = everything
    const [plantings, stations, plants] = await Promise.all(
      (['plantings', 'stations', 'plants'] as const).map(of => seenBy(`${of}.csv`, planTable(plan, of), places)),
    )
    const ids = (seen: readonly Seen[]) => seen.map(({ properties }) => properties.id)
    expect(ids(plantings!)).toEqual(plan.features.filter(isPlanting).map(({ id }) => id))
    expect(stations!.map(({ properties: { id, name }, coordinates }) => ({ id, name, coordinates }))).toEqual(
      plan.features.filter(isStation).map(({ id, properties, geometry }) => ({
        id,
        name: properties.name ?? '',
        coordinates: rounded(geometry.coordinates),
      })),
    )
    for (const { properties, type, coordinates } of [...plantings!, ...plants!]) {
      expect(type).toBe('Point')
      expect(coordinates).toEqual(rounded([properties.longitude, properties.latitude]))
    }
    const counted = plantings!.reduce((sum, { properties }) => sum + Number(properties.plants), 0)
    expect(plants).toHaveLength(counted)
  })
}

function readHere() {
  it.each([
    ['KML', 'kml'],
    ['LIBKML', 'kmz'],
    ['GeoJSON', 'geojson'],
  ])('%s, %s', async (format, ending) => {
    const { features, problems } = broughtIn(await madeBy(format, ending, 'plan.json', plainGeoJson(orchard)), orchard)
    expect(problems).toEqual([])
    const flat = (each: Feature) =>
      ({ ...each, geometry: { ...each.geometry, coordinates: rounded(each.geometry.coordinates) } }) as Feature
    expect(essence(features.map(flat))).toEqual(essence(orchard.features))
  })
}

if (hasGdal) {
  describe.concurrent('GDAL finds in what we write every thing with its name, kind and place', readThere)
  describe.concurrent('what GDAL makes of our GeoJSON comes in as it was', readHere)
} else {
  it('GDAL is not installed on this machine: whether it reads what we write is not tried here', () => {
    expect(hasGdal).toBe(false)
  })
}
