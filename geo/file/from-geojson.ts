import { foundText, isRecord, shortened } from '../plan/place'
import type { Outcome } from '../problem'
import { type Found, type Import, type ImportOptions, importCollector, refused } from './import'
import { nameGiven } from './import-properties'
import { parseJson } from './parse-json'

/** Members that programs keep a thing's name in, the likeliest first. */
const nameMembers = ['name', 'Name', 'NAME', 'title', 'label']
/** Names that other programs have for longitude and latitude in degrees, in that order. */
const degrees = /crs84|epsg:+(\d*:)?4326/i

/** Reads GeoJSON of any program (RFC 7946): collections, single features and bare geometries. */
export function readForeignGeoJson(text: string, options: ImportOptions = {}): Outcome<Import> {
  const parsed = parseJson(text)
  if (!parsed.ok) return parsed
  const root = parsed.value
  const features = isRecord(root) ? featuresOf(root) : null
  if (features === null)
    return refused('import-wrong-root', { expected: 'a GeoJSON object', found: shortened(foundText(root)) })
  const crs = isRecord(root) ? crsName(root.crs) : null
  if (crs !== null && !degrees.test(crs)) return refused('import-crs', { found: shortened(crs) })
  const { add, unplaced, finish } = importCollector(options)
  for (const [i, feature] of features.entries()) {
    const properties = isRecord(feature) && isRecord(feature.properties) ? feature.properties : {}
    const id = isRecord(feature) ? feature.id : undefined
    const named = nameMembers
      .map(member => properties[member])
      .find(value => typeof value === 'string' || typeof value === 'number')
    const given: Readonly<Record<string, unknown>> = { ...properties, ...(typeof id === 'string' ? { id } : {}) }
    const name = nameGiven(named === undefined ? '' : String(named), given)
    const shapes = isRecord(feature) ? shapesOf(feature.geometry) : []
    if (shapes.length === 0) unplaced(name, i + 1)
    const common = { number: i + 1, name, label: '', given }
    const isGroup = given.kind === 'plant' && shapes.length > 0 && isRecord(feature) && isMultiPoint(feature.geometry)
    if (isGroup) add({ ...common, shape: 'points', parts: [shapes.flatMap(({ parts }) => parts[0]!)] })
    else
      for (const [j, shape] of shapes.entries())
        add({ ...common, name: shapes.length > 1 ? `${name} ${j + 1}` : name, ...shape })
  }
  return finish({ format: 'GeoJSON', version: '', holds: { feature: features.length } })
}

function featuresOf(root: Record<string, unknown>): readonly unknown[] | null {
  if (root.type === 'FeatureCollection') return Array.isArray(root.features) ? root.features : null
  if (root.type === 'Feature') return [root]
  return typeof root.type === 'string' && ('coordinates' in root || 'geometries' in root) ? [{ geometry: root }] : null
}

/** Before RFC 7946 a file could name another system of coordinates. */
function crsName(crs: unknown): string | null {
  const properties = isRecord(crs) && isRecord(crs.properties) ? crs.properties : {}
  return typeof properties.name === 'string' ? properties.name : null
}

function isMultiPoint(geometry: unknown): boolean {
  return isRecord(geometry) && geometry.type === 'MultiPoint'
}

type Shape = Pick<Found, 'shape' | 'parts'>

/** Geometries one by one; the reader of JSON bounds how deep collections can be. */
function shapesOf(geometry: unknown): readonly Shape[] {
  if (!isRecord(geometry)) return []
  const { coordinates } = geometry
  switch (geometry.type) {
    case 'Point':
      return [{ shape: 'point', parts: [[positionOf(coordinates)]] }]
    case 'MultiPoint':
      return list(coordinates).map((position): Shape => ({ shape: 'point', parts: [[positionOf(position)]] }))
    case 'LineString':
      return [{ shape: 'line', parts: [line(coordinates)] }]
    case 'MultiLineString':
      return list(coordinates).map((part): Shape => ({ shape: 'line', parts: [line(part)] }))
    case 'Polygon':
      return [{ shape: 'ring', parts: list(coordinates).map(line) }]
    case 'MultiPolygon':
      return list(coordinates).map((polygon): Shape => ({ shape: 'ring', parts: list(polygon).map(line) }))
    case 'GeometryCollection':
      return list(geometry.geometries).flatMap(shapesOf)
    default:
      return []
  }
}

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : []
}

function line(value: unknown): readonly (readonly number[])[] {
  return list(value).map(positionOf)
}

function positionOf(value: unknown): readonly number[] {
  const [lng = Number.NaN, lat = Number.NaN, altitude] = list(value)
    .slice(0, 3)
    .map(each => (typeof each === 'number' ? each : Number.NaN))
  return altitude === undefined ? [lng, lat] : [lng, lat, altitude]
}
