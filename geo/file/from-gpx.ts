import { shortened } from '../plan/place'
import type { FeatureKind } from '../plan/plan'
import type { Outcome } from '../problem'
import { isFeatureKind } from './format'
import { planSpace } from './gpx'
import { type Found, type Import, type ImportOptions, importCollector, refused } from './import'
import { nameGiven, plainNumber } from './import-properties'
import { tidyName } from './spelling'
import { childOf, childrenOf, readXml, textOf, type XmlElement } from './xml'

const outlines: ReadonlySet<FeatureKind> = new Set(['block', 'bed', 'forage', 'keepout', 'boundary'])

/** Reads GPX 1.0 and 1.1 (Topografix): waypoints as points, routes and each part of a track as lines, closed ones as outlines. */
export function readGpx(text: string, options: ImportOptions = {}): Outcome<Import> {
  const parsed = readXml(text)
  if (!parsed.ok) return parsed
  const root = parsed.value
  if (root.name !== 'gpx') return refused('import-wrong-root', { expected: '“gpx”', found: shortened(root.name) })
  const { add, unplaced, finish } = importCollector(options)
  const holds = { waypoint: 0, track: 0, route: 0 }
  const isOurs = root.attributes.get('xmlns:p') === planSpace
  let number = 0
  for (const element of root.children) {
    if (element.name !== 'wpt' && element.name !== 'rte' && element.name !== 'trk') continue
    number += 1
    holds[element.name === 'wpt' ? 'waypoint' : element.name === 'trk' ? 'track' : 'route'] += 1
    const beside = extensionsOf(element)
    const isKnown = isOurs || isFeatureKind(beside.kind)
    const given = isKnown ? beside : {}
    const type = textOf(element, 'type')
    const common = {
      number,
      name: nameGiven(textOf(element, 'name'), given),
      label: isKnown ? '' : type,
      given: isFeatureKind(type) ? { ...given, kind: type } : given,
    }
    if (element.name === 'wpt') {
      add({ ...common, shape: 'point', parts: [[positionOf(element)]] })
      continue
    }
    const parts = (
      element.name === 'rte' ? [childrenOf(element, 'rtept')] : childrenOf(element, 'trkseg').map(points)
    ).filter(part => part.length > 0)
    if (parts.length === 0) unplaced(common.name, number)
    for (const found of lines(common, parts, element.name === 'trk')) add(found)
  }
  return finish({ format: 'GPX', version: tidyName(root.attributes.get('version') ?? '').slice(0, 8), holds })
}

function points(segment: XmlElement): readonly XmlElement[] {
  return childrenOf(segment, 'trkpt')
}

type Common = Pick<Found, 'number' | 'name' | 'label' | 'given'>

/** A thing written as an outline with its holes, as one; else each part by itself. A route was drawn, not walked. */
function lines(common: Common, parts: readonly (readonly XmlElement[])[], isWalked: boolean): readonly Found[] {
  const positions = parts.map(part => part.map(positionOf))
  const { kind } = common.given
  if (isFeatureKind(kind) && outlines.has(kind) && positions.every(isClosed))
    return [{ ...common, shape: 'ring', parts: positions }]
  return parts.map((part, i): Found => {
    const name = parts.length > 1 ? `${common.name} ${i + 1}` : common.name
    if (isClosed(positions[i]!)) return { ...common, name, shape: 'ring', parts: [positions[i]!] }
    return { ...common, name, shape: 'line', parts: [positions[i]!], ...(isWalked ? { times: part.map(timeOf) } : {}) }
  })
}

function isClosed(positions: readonly (readonly number[])[]): boolean {
  const first = positions[0]
  const last = positions.at(-1)
  return positions.length > 3 && first![0] === last![0] && first![1] === last![1]
}

function positionOf(element: XmlElement): readonly number[] {
  const degrees = (name: string) => plainNumber((element.attributes.get(name) ?? '').trim()) ?? Number.NaN
  const altitude = plainNumber(textOf(element, 'ele').trim())
  return altitude === null ? [degrees('lon'), degrees('lat')] : [degrees('lon'), degrees('lat'), altitude]
}

const moment = /^\s*\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:\d{2})?\s*$/

/** When a point was taken; a time without a zone counts as UTC, as the schema asks. */
function timeOf(element: XmlElement): number | null {
  const text = textOf(element, 'time').slice(0, 60)
  const found = moment.exec(text)
  if (found === null) return null
  const time = Date.parse(found[3] === undefined ? `${text.trim()}Z` : text.trim())
  return Number.isFinite(time) ? time : null
}

/** Properties beside those of GPX, by name: ours, and those of a program that wrote down what it had read from us. */
function extensionsOf(element: XmlElement): Readonly<Record<string, unknown>> {
  const leaves = (childOf(element, 'extensions')?.children ?? []).filter(({ children }) => children.length === 0)
  return Object.fromEntries(leaves.map(({ name, attributes, text }) => [attributes.get('name') ?? name, text]))
}
