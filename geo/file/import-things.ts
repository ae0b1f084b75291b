import type { FeatureKind, Geometry } from '../plan/plan'
import { cleanTrack } from './clean-track'
import { geometryTypes } from './format'
import { gatheredRows, type RowFit, type TreeInRow } from './gather-rows'
import { closedRing, type Import, type ImportGroup, type ImportItem } from './import'
import { givenProperties } from './import-properties'
import type { ImportThing } from './import-thing'
import { straightRows } from './straight-rows'
import type { Track } from './track'

/** What a group is brought in as. */
export type ImportChoice = {
  readonly kind: FeatureKind
  /** Must be there for plantings. */
  readonly crop?: string
  /** What is done to lines of many points: nothing, pauses and spikes taken out, or also cut into straight rows. */
  readonly walked?: 'as-walked' | 'cleaned' | 'rows'
  /** Single plants that are known by row and number are gathered into rows where they stand in one. */
  readonly inRows?: true
}

/** By the key of the group; a group without a choice, or with null, stays out. */
export type ImportChoices = Readonly<Record<string, ImportChoice | null>>

const plantings: ReadonlySet<FeatureKind> = new Set(['row', 'block', 'plant', 'bed'])

/** Whether a kind needs a crop before it can be brought in. */
export function needsCrop(kind: FeatureKind): boolean {
  return plantings.has(kind)
}

/**
 * What comes of all groups that have a choice. A line that is to be an area is closed. `cultivars` are names by the
 * spelling that cultivars were gathered under; what is not named keeps it.
 */
export function importThings(
  found: Import,
  choices: ImportChoices,
  cultivars: Readonly<Record<string, string>> = {},
): readonly ImportThing[] {
  const groups = new Map(found.groups.map(group => [group.key, group]))
  const spellings = new Map(
    found.spellings.flatMap(({ used, written }) =>
      written.map(({ text }) => [text, Object.hasOwn(cultivars, used) ? cultivars[used]! : used] as const),
    ),
  )
  const trees = new Map<string, TreeInRow[]>()
  const things = found.items.flatMap((item): readonly ImportThing[] => {
    const choice = Object.hasOwn(choices, item.group) ? choices[item.group] : null
    if (!choice) return []
    checkChoice(groups.get(item.group)!, choice)
    const geometries = geometriesOf(item, choice)
    const properties = propertiesOf(item, choice, spellings)
    if (choice.kind === 'plant' && choice.inRows && item.inRow && item.geometry.type === 'Point') {
      const like = trees.get(item.group) ?? []
      like.push({ at: item.geometry.coordinates, ...item.inRow, properties })
      trees.set(item.group, like)
      return []
    }
    return geometries.map((geometry, i): ImportThing => {
      const isOneOfSeveral = geometries.length > 1 && properties.name
      return {
        geometry,
        properties: isOneOfSeveral ? { ...properties, name: `${properties.name} ${i + 1}` } : properties,
      }
    })
  })
  return [...things, ...[...trees.values()].flatMap(like => gatheredRows(like, found.rowSpacing).things)]
}

/** How the single trees of a group would stand in rows; null where they are not known by row and number. */
export function rowFit({ items, rowSpacing }: Import, key: string): RowFit | null {
  const trees = items.flatMap(({ group, geometry, inRow, properties }) =>
    group === key && inRow && geometry.type === 'Point'
      ? [{ at: geometry.coordinates, ...inRow, properties: { ...properties, kind: 'plant' as const } }]
      : [],
  )
  if (trees.length === 0) return null
  const { things: _, ...fit } = gatheredRows(trees, rowSpacing)
  return fit.rows === 0 ? null : fit
}

function checkChoice({ kinds, key }: ImportGroup, { kind, crop }: ImportChoice): void {
  if (!kinds.includes(kind)) throw new RangeError(`the group ${key} cannot be brought in as ${kind}`)
  if (needsCrop(kind) && !crop) throw new RangeError(`the group ${key} needs a crop`)
}

/** A line with the times that are known of it. */
export function givenTrack({ coordinates }: Extract<Geometry, { type: 'LineString' }>, track: Track | null): Track {
  return track ?? { positions: coordinates, times: coordinates.map(() => null) }
}

function geometriesOf(
  { geometry, track }: ImportItem,
  { kind, walked = 'as-walked' }: ImportChoice,
): readonly Geometry[] {
  const isArea = geometryTypes[kind].includes('Polygon')
  if (geometry.type !== 'LineString') return [geometry]
  const line =
    walked === 'as-walked'
      ? geometry.coordinates
      : cleanTrack(givenTrack(geometry, track), { isRing: isArea }).positions
  if (isArea) return [{ type: 'Polygon', coordinates: [closedRing(line)] }]
  const lines = walked === 'rows' ? straightRows(line) : [line]
  return lines.map(coordinates => ({ type: 'LineString', coordinates }))
}

function propertiesOf(
  item: ImportItem,
  { kind, crop }: ImportChoice,
  spellings: ReadonlyMap<string, string>,
): ImportThing['properties'] {
  const { name, cultivar } = item.properties
  const used = typeof cultivar === 'string' ? spellings.get(cultivar) : undefined
  const given = givenProperties(kind, used === undefined ? item.properties : { ...item.properties, cultivar: used })
  return { kind, ...(name ? { name } : {}), ...(needsCrop(kind) && crop ? { crop } : {}), ...given }
}
