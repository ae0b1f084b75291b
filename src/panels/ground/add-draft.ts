import type { Edit } from '#geo/plan/edits'
import { compose } from '#geo/plan/edits'
import { addFeatures, addStationInUse } from '#geo/plan/edits-features'
import type { Feature, FeatureKind, Geometry, Plan, Station } from '#geo/plan/plan'
import { type RowLayout, rowBlock } from '#geo/plan/row-block'
import type { LngLat, Metres } from '#geo/space/plane'
import { offset } from '#geo/space/shape'
import { newId } from '../../state/new-id'
import { nextName } from '../../text/names'
import { type Frame, geometryOf, lineFrom, type Read, readGeometry, rectangleFrom } from './typed-geometry'

/** What the form for adding by typing holds; metres and degrees. */
export type Draft = {
  readonly kind: FeatureKind
  readonly name: string
  readonly crop: string
  readonly start: LngLat | null
  readonly length: number | null
  readonly width: number | null
  readonly bearing: number
  readonly spacing: number | null
  readonly rowSpacing: number | null
  readonly count: number | null
  /** How many rows side by side. */
  readonly rows: number
  /** A block is given by its rows and the plants in each, not by its sides. */
  readonly isCounted: boolean
  readonly isList: boolean
  /** Corners, one a line, where the outline is given as a list. */
  readonly list: string
}

export const emptyDraft: Draft = {
  kind: 'row',
  name: '',
  crop: 'apple',
  start: null,
  length: null,
  width: null,
  bearing: 0,
  spacing: null,
  rowSpacing: null,
  count: null,
  rows: 1,
  isCounted: false,
  isList: false,
  list: '',
}

export type Shape = 'point' | 'line' | 'area'

export function shapeOf(kind: FeatureKind): Shape {
  switch (kind) {
    case 'row':
    case 'windbreak':
      return 'line'
    case 'block':
    case 'bed':
    case 'forage':
    case 'keepout':
    case 'boundary':
      return 'area'
    case 'plant':
    case 'station':
    case 'candidate':
    case 'mud':
      return 'point'
    default:
      return kind satisfies never
  }
}

type Added = { readonly edit: Edit; readonly ids: readonly string[] }

/** The edit that adds what the form describes, or why it cannot be added. `rowSpacing` is the crop's default. */
export function addedBy(
  draft: Draft,
  plan: Plan,
  options: { year: number; frame: Frame; spacing: number; rowSpacing: number },
): Read<Added> {
  if (draft.kind === 'block' && draft.isCounted && !draft.isList) return countedBlock(draft, plan, options)
  const shapes = geometriesOf(draft, options)
  if (!shapes.ok) return shapes
  const features: Feature[] = []
  for (const geometry of shapes.value) {
    const named = { ...plan, features: [...plan.features, ...features] }
    const single = shapes.value.length === 1 ? draft.name : ''
    const name = single || (draft.name ? `${draft.name} ${features.length + 1}` : nextName(named, draft.kind))
    features.push({
      type: 'Feature',
      id: newId(draft.kind),
      geometry,
      properties: propertiesOf(draft, name),
    } as Feature)
  }
  const ids = features.map(({ id }) => id)
  const [first] = features
  if (first?.properties.kind === 'station') {
    return { ok: true, value: { edit: addStationInUse(first as Station, options.year, {}), ids } }
  }
  const edit = addFeatures(features)
  return { ok: true, value: { edit: compose(edit.label, [edit]), ids } }
}

/** A block by its first plant, its rows and the plants in each; the others stand to the right of the first row. */
function countedBlock(
  draft: Draft,
  plan: Plan,
  options: { frame: Frame; spacing: number; rowSpacing: number },
): Read<Added> {
  const { start, count } = draft
  if (start === null) return { ok: false, why: 'Give the place of the first plant.' }
  if (count === null) return { ok: false, why: 'Give the number of plants in a row.' }
  const { home } = options.frame
  const spacing = draft.spacing ?? options.spacing
  const rowSpacing = draft.rowSpacing ?? options.rowSpacing
  const layout: RowLayout = {
    start: home.toMetres(start),
    bearing: draft.bearing,
    plants: count,
    rows: draft.rows,
    spacing,
    rowSpacing,
    side: 'right',
  }
  const { geometry, bearing } = rowBlock(layout, home, plan.features)
  const name = draft.name || nextName(plan, 'block')
  const properties = { kind: 'block' as const, name, crop: draft.crop, spacing, rowSpacing, bearing }
  const block: Feature = { type: 'Feature', id: newId('block'), geometry, properties }
  return { ok: true, value: { edit: addFeatures([block]), ids: [block.id] } }
}

function propertiesOf(draft: Draft, name: string): object {
  const { kind, crop, spacing, rowSpacing, count, bearing } = draft
  const own = (member: string, value: number | null) => (value === null ? {} : { [member]: value })
  switch (kind) {
    case 'row':
      return { kind, name, crop, ...own('spacing', spacing), ...own('rowSpacing', rowSpacing), ...own('count', count) }
    case 'block':
      return {
        kind,
        name,
        crop,
        ...own('spacing', spacing),
        ...own('rowSpacing', rowSpacing),
        ...(bearing ? { bearing } : {}),
      }
    case 'plant':
    case 'bed':
      return { kind, name, crop }
    default:
      return { kind, name }
  }
}

function geometriesOf(draft: Draft, options: { frame: Frame; rowSpacing: number }): Read<readonly Geometry[]> {
  const { frame } = options
  const { home } = frame
  const shape = shapeOf(draft.kind)
  if (shape !== 'point' && draft.isList) {
    const read = readGeometry(draft.list, shape === 'line' ? 'LineString' : 'Polygon', frame)
    return read.ok ? { ok: true, value: [read.value] } : read
  }
  if (draft.start === null) return { ok: false, why: 'Give the position it starts from.' }
  if (shape === 'point') return { ok: true, value: [{ type: 'Point', coordinates: draft.start }] }
  if (draft.length === null) return { ok: false, why: 'Give its length.' }
  const start = home.toMetres(draft.start)
  const back = (positions: readonly Metres[]) => positions.map(at => home.toLngLat(at))
  if (shape === 'line') {
    const apart = draft.rowSpacing ?? options.rowSpacing
    const count = draft.kind === 'row' ? draft.rows : 1
    const lines = Array.from({ length: count }, (_, i) => {
      const from = offset(start, draft.bearing + 90, i * apart)
      return { type: 'LineString' as const, coordinates: back(lineFrom(from, draft.bearing, draft.length ?? 0)) }
    })
    return { ok: true, value: lines }
  }
  if (draft.width === null) return { ok: false, why: 'Give its width.' }
  const corners = rectangleFrom(start, { length: draft.length, width: draft.width, bearing: draft.bearing })
  const read = geometryOf([back(corners)], 'Polygon')
  return read.ok ? { ok: true, value: [read.value] } : read
}
