import { shortened } from '../plan/place'
import type { Outcome } from '../problem'
import { type Collector, type Found, type Import, type ImportOptions, importCollector, refused } from './import'
import { nameGiven, plainNumber } from './import-properties'
import { childOf, childrenOf, mostElements, readXml, textOf, type XmlElement } from './xml'

/** Marks (starts and ends of elements) in all files together that one points to: then their elements are no more than one file may have. */
const mostMarks = mostElements

/** The archive that a KML file stands in: its own path there, and the texts of the others by theirs. */
export type Archive = { readonly own: string; readonly textOf: (path: string) => string | null }

/**
 * Reads KML 2.0 to 2.3 (OGC 07-147r2, 12-007r2): points, lines, outlines with holes, walked tracks; the folder is their
 * label. Files that it points to are read where they stand in the same archive; no address is ever fetched.
 */
export function readKml(text: string, options: ImportOptions = {}, archive: Archive | null = null): Outcome<Import> {
  const parsed = readXml(text)
  if (!parsed.ok) return parsed
  const root = parsed.value
  if (root.name !== 'kml') return refused('import-wrong-root', { expected: '“kml”', found: shortened(root.name) })
  const collector = importCollector(options)
  const followed = new Set([archive?.own])
  let number = 0
  let marks = 0
  const follow = (link: XmlElement): void => {
    const address = textOf(childOf(link, 'Link') ?? childOf(link, 'Url') ?? link, 'href')
      .trim()
      .replace(/^\.\//, '')
    if (followed.has(address)) return
    followed.add(address)
    const other = archive?.textOf(address) ?? null
    marks += other === null ? 0 : other.split('<').length
    const read = other === null || marks > mostMarks ? null : readXml(other)
    if (read?.ok && read.value.name === 'kml') visit(read.value, '')
    else collector.notFollowed(address)
  }
  // The reader lets nothing be so deep that this could end badly.
  const visit = (element: XmlElement, label: string): void => {
    for (const child of element.children) {
      if (child.name === 'Folder' || child.name === 'Document') {
        visit(child, child.name === 'Folder' ? textOf(child, 'name') : label)
      } else if (child.name === 'Placemark') {
        number += 1
        placemark(child, number, label, collector)
      } else if (child.name === 'NetworkLink') follow(child)
    }
  }
  visit(root, '')
  const version = [...root.attributes.values()].map(value => /kml\/(\d\.\d)$/.exec(value)?.[1] ?? '').join('')
  return collector.finish({ format: 'KML', version, holds: { placemark: number } })
}

function placemark(element: XmlElement, number: number, label: string, { add, unplaced }: Collector): void {
  const given = extendedData(element)
  const name = nameGiven(textOf(element, 'name'), given)
  const common = { number, name, label: given.kind === undefined ? label : '', given }
  const shapes = shapesOf(element)
  if (shapes.length === 0) unplaced(name, number)
  if (given.kind === 'plant' && shapes.length > 1 && shapes.every(({ shape }) => shape === 'point')) {
    add({ ...common, shape: 'points', parts: [shapes.flatMap(({ parts }) => parts[0]!)] })
    return
  }
  for (const [i, shape] of shapes.entries())
    add({ ...common, name: shapes.length > 1 ? `${name} ${i + 1}` : name, ...shape })
}

type Shape = Pick<Found, 'shape' | 'parts' | 'times'>

/** The geometries that stand in an element, one after the other. */
function shapesOf(element: XmlElement): readonly Shape[] {
  return element.children.flatMap((child): readonly Shape[] => {
    switch (child.name) {
      case 'Point':
        return [{ shape: 'point', parts: [coordinates(child)] }]
      case 'LineString':
        return [{ shape: 'line', parts: [coordinates(child)] }]
      case 'LinearRing':
        return [{ shape: 'ring', parts: [coordinates(child)] }]
      case 'Polygon':
        return [{ shape: 'ring', parts: [...ringsIn(child, 'outerBoundaryIs'), ...ringsIn(child, 'innerBoundaryIs')] }]
      case 'Track': {
        const positions = childrenOf(child, 'coord').map(({ text }) => figures(text.trim().split(/\s+/)))
        const times = childrenOf(child, 'when').map(({ text }) => timeOf(text))
        return [{ shape: 'line', parts: [positions], times: positions.map((_, i) => times[i] ?? null) }]
      }
      case 'MultiGeometry':
      case 'MultiTrack':
        return shapesOf(child)
      default:
        return []
    }
  })
}

function ringsIn(polygon: XmlElement, edge: string): readonly (readonly (readonly number[])[])[] {
  return childrenOf(polygon, edge).flatMap(boundary => childrenOf(boundary, 'LinearRing').map(coordinates))
}

/** `lng,lat,altitude lng,lat …`; some programs put blanks behind the commas. */
function coordinates(element: XmlElement): readonly (readonly number[])[] {
  const text = textOf(element, 'coordinates').replace(/,\s+/g, ',').trim()
  return text === '' ? [] : text.split(/\s+/).map(tuple => figures(tuple.split(',')))
}

/** No more than three: what stands behind the altitude means nothing. */
function figures(texts: readonly string[]): readonly number[] {
  const [lng = Number.NaN, lat = Number.NaN, altitude] = texts.slice(0, 3).map(text => plainNumber(text) ?? Number.NaN)
  return altitude === undefined ? [lng, lat] : [lng, lat, altitude]
}

function timeOf(text: string): number | null {
  const time = /^\d{4}-\d{2}-\d{2}T[\d:.]{5,15}(Z|[+-]\d{2}:\d{2})$/.test(text.slice(0, 60).trim())
    ? Date.parse(text.trim())
    : Number.NaN
  return Number.isFinite(time) ? time : null
}

function extendedData(element: XmlElement): Readonly<Record<string, unknown>> {
  const data = childOf(element, 'ExtendedData')
  if (data === undefined) return {}
  const typed = childrenOf(data, 'SchemaData').flatMap(schema => childrenOf(schema, 'SimpleData'))
  return Object.fromEntries([
    ...childrenOf(data, 'Data').map(each => [each.attributes.get('name') ?? '', textOf(each, 'value')]),
    ...typed.map(each => [each.attributes.get('name') ?? '', each.text]),
  ])
}
