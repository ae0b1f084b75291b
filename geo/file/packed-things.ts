import type { FeatureKind, Geometry } from '../plan/plan'
import type { LngLat } from '../space/plane'
import type { ImportThing } from './import-thing'

/** Shapes in a few flat lists, which go from a worker to the page at no cost, however many points they have. */
export type PackedShapes = {
  /** Kinds and types of geometry, one for each shape. */
  readonly kinds: readonly FeatureKind[]
  readonly types: readonly Geometry['type'][]
  /** How many lines or rings each shape has; points count as one line. */
  readonly parts: Uint32Array
  /** How many positions each part has. */
  readonly counts: Uint32Array
  /** Longitude, latitude and altitude of each position; NaN where there is no altitude. */
  readonly positions: Float64Array
}

/** Shapes with everything else that is said of them, as JSON: read much faster than it could be copied. */
export type PackedThings = { readonly shapes: PackedShapes; readonly properties: string }

const stride = 3

export function packedShapes(things: readonly Pick<ImportThing, 'geometry' | 'properties'>[]): PackedShapes {
  const lines = things.map(({ geometry }) => partsOf(geometry))
  const all = lines.flat()
  const positions = new Float64Array(stride * all.reduce((sum, line) => sum + line.length, 0))
  let at = 0
  for (const line of all) {
    for (const [lng, lat, altitude = Number.NaN] of line) {
      positions[at] = lng
      positions[at + 1] = lat
      positions[at + 2] = altitude
      at += stride
    }
  }
  return {
    kinds: things.map(({ properties }) => properties.kind),
    types: things.map(({ geometry }) => geometry.type),
    parts: Uint32Array.from(lines, parts => parts.length),
    counts: Uint32Array.from(all, line => line.length),
    positions,
  }
}

export function packedThings(things: readonly ImportThing[]): PackedThings {
  return { shapes: packedShapes(things), properties: JSON.stringify(things.map(({ properties }) => properties)) }
}

export function unpackedThings({ shapes, properties }: PackedThings): readonly ImportThing[] {
  const all = JSON.parse(properties) as readonly ImportThing['properties'][]
  const things: ImportThing[] = []
  eachShape(shapes, (i, parts) => {
    const lines = parts.map(({ from, count }) => Array.from({ length: count }, (_, k) => positionAt(shapes, from + k)))
    things.push({ geometry: geometryOf(shapes.types[i]!, lines), properties: all[i]! })
  })
  return things
}

/** A part of a shape: its first position in the list, and how many it has. */
export type PackedPart = { readonly from: number; readonly count: number }

/** Goes through the shapes in order. */
export function eachShape(
  { types, parts, counts }: PackedShapes,
  visit: (index: number, parts: readonly PackedPart[]) => void,
): void {
  let [part, from] = [0, 0]
  for (let i = 0; i < types.length; i += 1) {
    const own: PackedPart[] = []
    for (const end = part + parts[i]!; part < end; part += 1) {
      own.push({ from, count: counts[part]! })
      from += counts[part]!
    }
    visit(i, own)
  }
}

/** Longitude and latitude of one position after another. */
export function packedLngLat({ positions }: PackedShapes): Float64Array {
  const lngLat = new Float64Array((positions.length / stride) * 2)
  for (let i = 0, at = 0; at < positions.length; i += 2, at += stride) {
    lngLat[i] = positions[at]!
    lngLat[i + 1] = positions[at + 1]!
  }
  return lngLat
}

function positionAt({ positions }: PackedShapes, index: number): LngLat {
  const at = stride * index
  const altitude = positions[at + 2]!
  const [lng, lat] = [positions[at]!, positions[at + 1]!]
  return Number.isNaN(altitude) ? [lng, lat] : [lng, lat, altitude]
}

function partsOf(geometry: Geometry): readonly (readonly LngLat[])[] {
  switch (geometry.type) {
    case 'Point':
      return [[geometry.coordinates]]
    case 'MultiPoint':
    case 'LineString':
      return [geometry.coordinates]
    case 'Polygon':
      return geometry.coordinates
    default:
      return geometry satisfies never
  }
}

function geometryOf(type: Geometry['type'], lines: readonly (readonly LngLat[])[]): Geometry {
  switch (type) {
    case 'Point':
      return { type, coordinates: lines[0]![0]! }
    case 'MultiPoint':
    case 'LineString':
      return { type, coordinates: lines[0]! }
    case 'Polygon':
      return { type, coordinates: lines }
    default:
      return type satisfies never
  }
}
