import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import type { Feature, Geometry } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { broughtIn, essence } from '../../support/brought-in'
import { planOf, sampleFile } from './sample-file'

const plan = planOf(readPlan(JSON.stringify(sampleFile())))

function read(name: string) {
  const bytes = readFileSync(new URL(`fixtures/gdal/${name}`, import.meta.url))
  return broughtIn(new Uint8Array(bytes), { crops: plan.crops })
}

/** One of its writers gives every position the height 0. */
function flat(feature: Feature): Pick<Feature, 'geometry' | 'properties'> {
  const { type, coordinates } = feature.geometry
  const level = (value: unknown): unknown =>
    Array.isArray(value)
      ? typeof value[0] === 'number'
        ? (value as unknown as LngLat).slice(0, 2)
        : value.map(level)
      : value
  return { ...feature, geometry: { type, coordinates: level(coordinates) } as Geometry }
}

describe('what a general converter makes of our GeoJSON comes in as it was', () => {
  it.each(['plain.geojson', 'plain.kml', 'full.kml', 'archive.kmz'])('%s', name => {
    const { features, problems } = read(name)
    expect(problems).toEqual([])
    expect(essence(features.map(flat))).toEqual(essence(plan.features))
  })

  it.each([
    ['points.gpx', 'Point'],
    ['routes.gpx', 'LineString'],
  ])('%s', (name, type) => {
    const { features, problems } = read(name)
    expect(problems).toEqual([])
    expect(essence(features)).toEqual(essence(plan.features.filter(({ geometry }) => geometry.type === type)))
  })

  it('tracks.gpx, of which only name, kind and crop were asked', () => {
    const outlines = plan.features.filter(({ geometry }) => geometry.type === 'Polygon')
    const asked = outlines.map(({ geometry, properties }) => {
      const said = Object.entries(properties).filter(([name]) => ['name', 'kind', 'crop'].includes(name))
      return { geometry, properties: Object.fromEntries(said) } as unknown as Feature
    })
    const { features, problems } = read('tracks.gpx')
    expect(problems).toEqual([])
    expect(essence(features)).toEqual(essence(asked))
  })
})
