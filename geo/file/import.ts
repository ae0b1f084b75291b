import { isPosition } from '../plan/check-ground'
import { shortened } from '../plan/place'
import type { FeatureKind, Geometry, Plan } from '../plan/plan'
import { problemList } from '../plan/report-problem'
import type { Outcome, Problem } from '../problem'
import type { LngLat } from '../space/plane'
import { localFrame } from '../space/ring'
import { signedArea } from '../space/shape'
import type { Encoding } from './encoding'
import { givenProperties } from './import-properties'
import { gatheredSpellings, type Spelling, tidyName } from './spelling'
import { cropFinder, kindByWords } from './suggest-kind'
import type { Track } from './track'

export type ImportShape = 'point' | 'points' | 'line' | 'ring'

/** One thing that another program's file holds, and what it may be in a plan. */
export type ImportItem = {
  /** Which of its file it is, or the row of its table, from 1. */
  readonly number: number
  /** Key of its group. */
  readonly group: string
  readonly geometry: Geometry
  /** What the file says of it, as properties of the suggested kind; figures within their limits. */
  readonly properties: Readonly<Record<string, string | number>>
  /** Where it was walked with a device: the points with their times. */
  readonly track: Track | null
  /** Of a tree that a table has by row and number. */
  readonly inRow?: InRow
}

/** Which row a tree stands in, and which of it it is. */
export type InRow = { readonly row: string; readonly tree: number }

/** Things that are alike, for which kind and crop are chosen together. */
export type ImportGroup = {
  readonly key: string
  /** What the file calls them: a folder, a type, a crop's words; empty where it says nothing. */
  readonly label: string
  readonly shape: ImportShape
  readonly count: number
  /** The likeliest kind, and all that their shape allows. */
  readonly kind: FeatureKind
  readonly kinds: readonly FeatureKind[]
  /** The crop that the words mean; null where none is meant, or it is not known. */
  readonly crop: string | null
  /** The crop that words of no known crop may well mean, and those words: a guess, to be shown as one. */
  readonly likely: { readonly crop: string; readonly from: string } | null
}

/** What a file was recognised as. */
export type ImportForm = {
  readonly format: 'GPX' | 'KML' | 'KMZ' | 'GeoJSON' | 'table'
  /** As the file says it; empty where it says none. */
  readonly version: string
  /** What it was written in; empty where that is not known. */
  readonly encoding: Encoding | ''
  /** How many of what it holds, by the word for one: 12 waypoints. */
  readonly holds: Readonly<Record<string, number>>
}

/** What a file of another program would bring, before anything of it is in the plan. */
export type Import = {
  readonly form: ImportForm
  /** From row to row where that was said, m. */
  readonly rowSpacing?: number
  readonly items: readonly ImportItem[]
  readonly groups: readonly ImportGroup[]
  readonly spellings: readonly Spelling[]
}

export type ImportOptions = {
  /** The plan's own crops, which words may mean too. */
  readonly crops?: Plan['crops']
  /** Where the plan lies, to tell exchanged longitude and latitude that both lie on earth. */
  readonly near?: LngLat | null
}

/** Something found in a file, its positions as they stand there. */
export type Found = {
  readonly number: number
  readonly name: string
  readonly label: string
  readonly shape: ImportShape
  /** One list for a point, points or a line; a ring's outline first, then its holes. May hold anything. */
  readonly parts: readonly (readonly (readonly number[])[])[]
  /** Everything else the file says, by name. */
  readonly given: Readonly<Record<string, unknown>>
  readonly inRow?: InRow
  /** Times of a line's points, milliseconds since 1970; null where not known. */
  readonly times?: readonly (number | null)[]
}

const ringKinds: readonly FeatureKind[] = ['block', 'bed', 'forage', 'boundary', 'keepout']
const kindsOfShape: Readonly<Record<ImportShape, readonly FeatureKind[]>> = {
  point: ['station', 'plant', 'mud', 'candidate'],
  points: ['plant'],
  line: ['row', 'windbreak'],
  ring: ringKinds,
}

/** Things and positions that a file may bring; a thousand rows walked with a device have as many. */
const mostItems = 50_000
const mostPositions = 500_000
/** An outline of less is none, m2. */
const leastArea = 0.01
/** Beyond this from the plan, longitude and latitude may have been exchanged, m. */
const farAway = 100_000

export type Collector = {
  add(found: Found): void
  /** Something without a place. */
  unplaced(name: string, number: number): void
  /** Another file that this one points to and that is not read. */
  notFollowed(address: string): void
  /** Not ok where there is nothing to bring in. */
  finish(form: Omit<ImportForm, 'encoding'>): Outcome<Import>
}

/** Takes what a reader finds, tells what is wrong with it and puts what is alike together. */
export function importCollector({ crops = {}, near = null }: ImportOptions): Collector {
  const { report, finish: told } = problemList()
  const cropOf = cropFinder(crops)
  const items: ImportItem[] = []
  const groups = new Map<string, ImportGroup>()
  const unknownCrops = new Map<string, number>()
  let positions = 0
  let tooMany: { what: string; most: number } | null = null
  return {
    add(found) {
      if (tooMany !== null) return
      positions += found.parts.reduce((sum, part) => sum + part.length, 0)
      if (items.length >= mostItems) tooMany = { what: 'things', most: mostItems }
      if (positions > mostPositions) tooMany = { what: 'positions', most: mostPositions }
      if (tooMany !== null) return
      const called = tidyName(found.name) || `Item ${found.number}`
      const shown = shortened(called)
      const kept = found.parts.map(part => soundPart(part, found.times))
      const bad = kept.flatMap(({ bad }) => bad)
      const geometry = geometryOf(
        found.shape,
        kept.map(part => part.positions),
      )
      if (geometry === null) {
        if (bad.length > 0) {
          const isSwapped = bad.every(([lng, lat]) => isPosition([lat!, lng!]))
          report('warning', isSwapped ? 'import-swapped' : 'import-position', '', {
            name: shown,
            found: placeText(bad[0]!),
          })
        } else {
          report('warning', 'import-no-shape', '', { name: shown, isRing: found.shape === 'ring' })
        }
        return
      }
      if (bad.length > 0)
        report('warning', 'import-points-left', '', { name: shown, count: bad.length, found: placeText(bad[0]!) })
      const first = kept[0]!.positions[0]!
      const away = near === null ? 0 : metresBetween(near, first)
      if (away > farAway && isPosition([first[1], first[0]]) && metresBetween(near!, [first[1], first[0]]) <= farAway) {
        report('warning', 'import-far-swapped', '', { name: shown, kilometres: Math.round(away / 1000) })
      }
      const kinds = kindsOf(found.shape, kept[0]!.positions)
      const kind = kindByWords(found, kinds)
      const words = [found.given.crop, found.given.cropName].flatMap(each => (typeof each === 'string' ? [each] : []))
      const { crop, likely } = cropOf(words)
      const wish = tidyName(words[0] ?? '')
      if (crop === null && likely === null && wish !== '') unknownCrops.set(wish, (unknownCrops.get(wish) ?? 0) + 1)
      const label = tidyName(found.label)
      const key = JSON.stringify([kind, found.shape, label, crop ?? wish])
      const group = groups.get(key) ?? {
        key,
        label: label || wish,
        shape: found.shape,
        count: 0,
        kind,
        kinds,
        crop,
        likely: likely === null ? null : { crop: likely, from: shortened(wish) },
      }
      groups.set(key, {
        ...group,
        count: group.count + 1,
        kinds: group.kinds.filter(each => kinds.includes(each)),
      })
      const properties = givenProperties(kind, found.given, (property, value, allowed) =>
        report('warning', 'import-property', '', { name: shown, property, found: shortened(value), allowed }),
      )
      const name = tidyName(found.name)
      const track = found.times === undefined || found.shape !== 'line' ? null : kept[0]!
      items.push({
        number: found.number,
        group: key,
        geometry,
        properties: name === '' ? properties : { name, ...properties },
        track: track && { positions: track.positions, times: track.times },
        ...(found.inRow === undefined ? {} : { inRow: found.inRow }),
      })
    },
    notFollowed(address) {
      report('warning', 'import-link', '', { found: shortened(address) })
    },
    unplaced(name, number) {
      report('warning', 'import-unplaced', '', { name: shortened(tidyName(name) || `Item ${number}`) })
    },
    finish(form) {
      if (tooMany !== null) return refused('import-too-many', tooMany)
      const spellings = gatheredSpellings(items.map(({ properties }) => properties.cultivar))
      for (const { used, written } of spellings) {
        const texts = written.map(({ text }) => `“${shortened(text)}”`)
        if (texts.length > 1) report('note', 'import-cultivar-spellings', '', { used, written: texts.join(', ') })
      }
      for (const [found, count] of unknownCrops)
        report('warning', 'import-crop-unknown', '', { found: shortened(found), count })
      if (items.length === 0) return refused('import-empty', {}, told())
      const value = { form: { ...form, encoding: '' as const }, items, groups: [...groups.values()], spellings }
      return { ok: true, value, problems: told() }
    },
  }
}

/** An Outcome that says only why. */
export function refused(
  code: Problem['code'],
  values: Problem['values'],
  others: readonly Problem[] = [],
): Outcome<never> {
  return { ok: false, problems: [{ code, severity: 'error', at: '', values }, ...others] }
}

type Sound = {
  readonly positions: readonly LngLat[]
  readonly times: readonly (number | null)[]
  readonly bad: readonly (readonly number[])[]
}

function soundPart(part: readonly (readonly number[])[], times: Found['times']): Sound {
  const positions: LngLat[] = []
  const kept: (number | null)[] = []
  const bad: (readonly number[])[] = []
  for (const [i, [lng = Number.NaN, lat = Number.NaN, altitude]] of part.entries()) {
    if (!(Number.isFinite(lng) && Number.isFinite(lat) && isPosition([lng, lat]))) {
      bad.push([lng, lat])
      continue
    }
    positions.push(altitude !== undefined && Number.isFinite(altitude) ? [lng, lat, altitude] : [lng, lat])
    kept.push(times?.[i] ?? null)
  }
  return { positions, times: kept, bad }
}

/** The shape of sound positions; null where too few are left of them. */
function geometryOf(shape: ImportShape, parts: readonly (readonly LngLat[])[]): Geometry | null {
  const [first = [], ...others] = parts
  switch (shape) {
    case 'point':
      return first[0] === undefined ? null : { type: 'Point', coordinates: first[0] }
    case 'points':
      return first.length === 0 ? null : { type: 'MultiPoint', coordinates: first }
    case 'line':
      return !hasCorners(first, 2) ? null : { type: 'LineString', coordinates: first }
    case 'ring': {
      if (!isOutline(first)) return null
      return { type: 'Polygon', coordinates: [first, ...others.filter(isOutline)].map(closedRing) }
    }
    default:
      return shape satisfies never
  }
}

function kindsOf(shape: ImportShape, positions: readonly LngLat[]): readonly FeatureKind[] {
  const kinds = kindsOfShape[shape]
  return shape === 'line' && isOutline(positions) ? [...kinds, ...ringKinds] : kinds
}

/** Whether so many of the positions are different. */
function hasCorners(positions: readonly LngLat[], wanted: number): boolean {
  const found: LngLat[] = []
  for (const at of positions) {
    if (found.some(([lng, lat]) => lng === at[0] && lat === at[1])) continue
    found.push(at)
    if (found.length === wanted) return true
  }
  return false
}

function isOutline(positions: readonly LngLat[]): boolean {
  if (!hasCorners(positions, 3)) return false
  return Math.abs(signedArea(closedRing(positions).map(localFrame(positions[0]!)))) >= leastArea
}

/** The ring with its first position repeated last. */
export function closedRing(ring: readonly LngLat[]): readonly LngLat[] {
  const first = ring[0]
  const last = ring.at(-1)
  if (first === undefined || last === undefined) return ring
  if (first[0] === last[0] && first[1] === last[1]) return ring
  return [...ring, first]
}

/** The same outcome, with what its text was written in. */
export function writtenIn(
  outcome: Outcome<Import>,
  encoding: Encoding,
  format?: ImportForm['format'],
): Outcome<Import> {
  if (!outcome.ok) return outcome
  const form = { ...outcome.value.form, encoding, ...(format === undefined ? {} : { format }) }
  return { ...outcome, value: { ...outcome.value, form } }
}

function metresBetween(from: LngLat, to: LngLat): number {
  const { x, y } = localFrame(from)(to)
  return Math.hypot(x, y)
}

function placeText([lng, lat]: readonly number[]): string {
  const text = (value: number | undefined) => (value !== undefined && Number.isFinite(value) ? String(value) : 'none')
  return `longitude ${text(lng)}, latitude ${text(lat)}`
}
