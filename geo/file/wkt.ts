import type { Geometry } from '../plan/plan'
import type { LngLat } from '../space/plane'
import type { Found } from './import'
import { altitudeOf, degreesText } from './xml-text'

/** Shapes of one text at most, and letters: a table has one for each line. */
const mostShapes = 10_000

type Shape = Pick<Found, 'shape' | 'parts'>

/** A geometry as well-known text (OGC 06-103r4), longitude first; with heights where every position has one. */
export function wktText({ type, coordinates }: Geometry): string {
  const all = type === 'Point' ? [coordinates] : type === 'Polygon' ? coordinates.flat() : coordinates
  const hasHeights = all.every(at => altitudeOf(at) !== undefined)
  const place = (at: LngLat) =>
    [at[0], at[1], ...(hasHeights ? [altitudeOf(at)!] : [])].map(value => degreesText(value)).join(' ')
  const line = (points: readonly LngLat[]) => `(${points.map(place).join(', ')})`
  const z = hasHeights ? ' Z' : ''
  switch (type) {
    case 'Point':
      return `POINT${z} (${place(coordinates)})`
    case 'MultiPoint':
      return `MULTIPOINT${z} (${coordinates.map(at => `(${place(at)})`).join(', ')})`
    case 'LineString':
      return `LINESTRING${z} ${line(coordinates)}`
    case 'Polygon':
      return `POLYGON${z} (${coordinates.map(line).join(', ')})`
    default:
      return type satisfies never
  }
}

/** The shapes of a well-known text; null where it is none. Passes over the text once. */
export function readWkt(text: string): readonly Shape[] | null {
  const head = /^\s*(?:SRID=\d{1,6};)?\s*(MULTI)?(POINT|LINESTRING|POLYGON)\s*(?:Z|M|ZM)?\s*(?=\()/i.exec(
    text.slice(0, 200),
  )
  if (head === null) return null
  const isMulti = head[1] !== undefined
  const lists = nested(text.slice(head[0].length))
  if (lists === null) return null
  const [top] = lists
  switch (head[2]!.toUpperCase()) {
    case 'POINT':
      if (!isMulti) return [{ shape: 'point', parts: [top!] }]
      // Both ways of writing several points: with brackets round each, and without.
      return [{ shape: 'points', parts: [lists.flat()] }]
    case 'LINESTRING':
      return lists.slice(0, mostShapes).map(part => ({ shape: 'line', parts: [part] }))
    default:
      return isMulti ? polygons(text.slice(head[0].length)) : [{ shape: 'ring', parts: lists }]
  }
}

/** Lists of positions within the innermost brackets, in order; null where brackets or figures are not sound. */
function nested(text: string): readonly (readonly (readonly number[])[])[] | null {
  const lists: (readonly (readonly number[])[])[] = []
  let depth = 0
  let start = -1
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i]
    if (sign === '(') {
      depth += 1
      if (depth > 3) return null
      start = i + 1
    } else if (sign === ')') {
      depth -= 1
      if (depth < 0) return null
      if (start >= 0) {
        const positions = text.slice(start, i).split(',').map(figures)
        if (positions.some(each => each === null)) return null
        lists.push(positions as readonly (readonly number[])[])
        start = -1
      }
      if (depth === 0) return text.slice(i + 1).trim() === '' && lists.length > 0 ? lists : null
    }
  }
  return null
}

function figures(text: string): readonly number[] | null {
  const parts = text.trim().split(/\s+/)
  if (parts.length < 2 || parts.length > 4) return null
  const values = parts
    .slice(0, 3)
    .map(part => (/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(part) ? Number(part) : Number.NaN))
  return values.every(Number.isFinite) ? values : null
}

/** Each polygon of several by its own brackets. */
function polygons(text: string): readonly Shape[] | null {
  const shapes: Shape[] = []
  let depth = 0
  let start = -1
  for (let i = 0; i < text.length; i += 1) {
    if (text[i] === '(') {
      depth += 1
      if (depth === 2) start = i
    } else if (text[i] === ')') {
      if (depth === 2) {
        const parts = nested(text.slice(start, i + 1))
        if (parts === null || shapes.length >= mostShapes) return null
        shapes.push({ shape: 'ring', parts })
      }
      depth -= 1
    }
  }
  return shapes
}
