import type { Geometry, Units } from '#geo/plan/plan'
import type { LngLat, Metres, Plane } from '#geo/space/plane'
import { type PolygonFault, polygonFault } from '#geo/space/ring'
import { bearing as bearingOf, distance, offset } from '#geo/space/shape'
import { significant } from '#geo/wording/plain'
import { readNumber } from '../../text/read-number'
import { readPlace } from '../../text/read-place'
import { type Measure, measureOf } from '../../text/units'

/** How positions are typed: metres (or feet) east and north of the plan's fixed point, or latitude and longitude. */
export type Typing = 'ground' | 'degrees'

export type Frame = { readonly home: Plane; readonly typing: Typing; readonly units: Units }

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string }

/** "12.4, -30" in ground units (east, north) or "52.59, 0.16" in degrees (latitude, longitude). */
export function positionText(at: LngLat, { home, typing, units }: Frame): string {
  if (typing === 'degrees') return `${significant(at[1], 9)}, ${significant(at[0], 10)}`
  const { x, y } = home.toMetres(at)
  const measure = measureOf('length', units)
  return `${groundFigure(x, measure)}, ${groundFigure(y, measure)}`
}

/** To the centimetre. */
function groundFigure(metres: number, measure: Measure): string {
  const shown = Math.round(measure.toShown(metres) * 100) / 100
  return String(shown === 0 ? 0 : shown)
}

export function readPosition(text: string, { home, typing, units }: Frame): Read<LngLat> {
  if (typing === 'degrees') {
    const place = readPlace(text)
    return place.ok ? { ok: true, value: place.at } : place
  }
  const parts = text.split(/[;\t]|,\s+|\s+/).filter(part => part.trim() !== '')
  const pieces = parts.length === 1 ? text.split(',') : parts
  if (pieces.length !== 2) return { ok: false, why: `“${text.trim()}” should be two figures: east, north.` }
  const [east, north] = pieces.map(piece => readNumber(piece))
  if (!east!.ok) return east as { ok: false; why: string }
  if (!north!.ok) return north as { ok: false; why: string }
  const { toStored } = measureOf('length', units)
  const at = { x: toStored(east!.value), y: toStored((north as { value: number }).value) }
  if (Math.hypot(at.x, at.y) > 50_000) return { ok: false, why: 'That is more than 50 km from the middle of the plan.' }
  return { ok: true, value: home.toLngLat(at) }
}

/** One corner a line; an empty line begins a hole in an area. The closing corner of a ring is not shown. */
export function geometryText(geometry: Geometry, frame: Frame): string {
  const lines = (positions: readonly LngLat[]) => positions.map(at => positionText(at, frame)).join('\n')
  switch (geometry.type) {
    case 'Point':
      return positionText(geometry.coordinates, frame)
    case 'MultiPoint':
    case 'LineString':
      return lines(geometry.coordinates)
    case 'Polygon':
      return geometry.coordinates.map(ring => lines(ring.slice(0, -1))).join('\n\n')
    default:
      return geometry satisfies never
  }
}

/** The reverse of `geometryText`, as a geometry of the same type. */
export function readGeometry(text: string, type: Geometry['type'], frame: Frame): Read<Geometry> {
  const groups = text
    .trim()
    .split(/\n\s*\n/)
    .map(group => group.split('\n').filter(line => line.trim() !== ''))
  const rings: LngLat[][] = []
  let number = 0
  for (const group of groups) {
    const ring: LngLat[] = []
    for (const line of group) {
      number += 1
      const read = readPosition(line, frame)
      if (!read.ok) return { ok: false, why: `Corner ${number}: ${read.why}` }
      ring.push(read.value)
    }
    rings.push(ring)
  }
  return geometryOf(rings, type)
}

export function geometryOf(groups: readonly (readonly LngLat[])[], type: Geometry['type']): Read<Geometry> {
  const positions = groups.flat()
  const [first] = positions
  if (first === undefined) return { ok: false, why: 'At least one position is needed.' }
  switch (type) {
    case 'Point':
      if (positions.length > 1) return { ok: false, why: 'One position only.' }
      return { ok: true, value: { type, coordinates: first } }
    case 'MultiPoint':
      return { ok: true, value: { type, coordinates: positions } }
    case 'LineString':
      if (positions.length < 2) return { ok: false, why: 'A line needs two positions at least.' }
      return { ok: true, value: { type, coordinates: positions } }
    case 'Polygon': {
      const coordinates = groups.map(ring => [...ring, ring[0] as LngLat])
      const fault = polygonFault(coordinates)
      if (fault !== null) return { ok: false, why: ringFaults[fault.fault] }
      return { ok: true, value: { type, coordinates } }
    }
    default:
      return type satisfies never
  }
}

const ringFaults: Readonly<Record<PolygonFault, string>> = {
  short: 'An area needs three different corners at least.',
  open: 'The outline is not closed.',
  long: 'The outline has more corners than can be looked through.',
  crossing: 'The outline crosses itself. List the corners in the order in which you would walk round.',
  flat: 'The corners lie on one line, so there is no area.',
  outside: 'A hole lies outside the outline.',
  overlap: 'Two holes lie over each other.',
}

/** A straight line of `length` metres from a start. */
export function lineFrom(start: Metres, bearing: number, length: number): readonly [Metres, Metres] {
  return [start, offset(start, bearing, length)]
}

/** A rectangle from a corner: `length` along the bearing, `width` to the right of it. */
export function rectangleFrom(
  corner: Metres,
  size: { length: number; width: number; bearing: number },
): readonly Metres[] {
  const { length, width, bearing } = size
  const far = offset(corner, bearing, length)
  return [corner, far, offset(far, bearing + 90, width), offset(corner, bearing + 90, width)]
}

/** A straight line of two ends with another length or bearing; its start stays. */
export function withLineEnd(
  line: readonly [Metres, Metres],
  change: { length?: number; bearing?: number },
): readonly [Metres, Metres] {
  const { length = distance(line[0], line[1]), bearing = bearingOf(line[0], line[1]) } = change
  return lineFrom(line[0], bearing, length)
}
