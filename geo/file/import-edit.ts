import type { Edit } from '../plan/edits'
import { addFeatures } from '../plan/edits-features'
import { things } from '../plan/edits-wording'
import type { Feature, FeatureKind, Geometry } from '../plan/plan'
import { cleanTrack } from './clean-track'
import { geometryTypes } from './format'
import { closedRing, type Import, type ImportGroup, type ImportItem } from './import'
import { givenProperties } from './import-properties'
import { straightRows } from './straight-rows'

/** What a group is brought in as. */
export type ImportChoice = {
  readonly kind: FeatureKind
  /** Must be there for plantings. */
  readonly crop?: string
  /** What is done to walked lines: nothing, pauses and spikes taken out, or also cut into straight rows. */
  readonly walked?: 'as-walked' | 'cleaned' | 'rows'
}

export type ImportEditOptions = {
  /** Asked once for each thing, however often the edit is applied; ids must be new to the plan. */
  readonly newId: (kind: FeatureKind) => string
  /** Cultivars by the spelling they were gathered under; what is not named keeps it. */
  readonly cultivars?: Readonly<Record<string, string>>
}

const plantings: ReadonlySet<FeatureKind> = new Set(['row', 'block', 'plant', 'bed'])

/** Whether a kind needs a crop before it can be brought in. */
export function needsCrop(kind: FeatureKind): boolean {
  return plantings.has(kind)
}

/**
 * One edit that brings in all groups that have a choice; a group without one, or with null, stays out.
 * A line that is to be an area is closed.
 */
export function importEdit(
  found: Import,
  choices: Readonly<Record<string, ImportChoice | null>>,
  { newId, cultivars = {} }: ImportEditOptions,
): Edit {
  const groups = new Map(found.groups.map(group => [group.key, group]))
  const spellings = new Map(
    found.spellings.flatMap(({ used, written }) =>
      written.map(({ text }) => [text, Object.hasOwn(cultivars, used) ? cultivars[used]! : used] as const),
    ),
  )
  const features = found.items.flatMap(item => {
    const choice = Object.hasOwn(choices, item.group) ? choices[item.group] : null
    if (!choice) return []
    checkChoice(groups.get(item.group)!, choice)
    const geometries = geometriesOf(item, choice)
    const properties = propertiesOf(item, choice, spellings)
    return geometries.map((geometry, i): Feature => {
      const named =
        geometries.length > 1 && properties.name ? { ...properties, name: `${properties.name} ${i + 1}` } : properties
      // Kind and geometry go together by the check above.
      return { type: 'Feature', id: newId(choice.kind), geometry, properties: named } as unknown as Feature
    })
  })
  return { label: `Bring in ${things(features)}`, apply: addFeatures(features).apply }
}

function checkChoice({ kinds, key }: ImportGroup, { kind, crop }: ImportChoice): void {
  if (!kinds.includes(kind)) throw new RangeError(`the group ${key} cannot be brought in as ${kind}`)
  if (needsCrop(kind) && !crop) throw new RangeError(`the group ${key} needs a crop`)
}

function geometriesOf(
  { geometry, track }: ImportItem,
  { kind, walked = 'as-walked' }: ImportChoice,
): readonly Geometry[] {
  const isArea = geometryTypes[kind].includes('Polygon')
  if (geometry.type !== 'LineString') return [geometry]
  const given = track ?? { positions: geometry.coordinates, times: geometry.coordinates.map(() => null) }
  const line = walked === 'as-walked' ? geometry.coordinates : cleanTrack(given, { isRing: isArea }).positions
  if (isArea) return [{ type: 'Polygon', coordinates: [closedRing(line)] }]
  const lines = walked === 'rows' ? straightRows(line) : [line]
  return lines.map(coordinates => ({ type: 'LineString', coordinates }))
}

function propertiesOf(item: ImportItem, { kind, crop }: ImportChoice, spellings: ReadonlyMap<string, string>) {
  const { name, cultivar } = item.properties
  const used = typeof cultivar === 'string' ? spellings.get(cultivar) : undefined
  const given = givenProperties(kind, used === undefined ? item.properties : { ...item.properties, cultivar: used })
  return { kind, ...(name ? { name } : {}), ...(needsCrop(kind) ? { crop } : {}), ...given }
}
