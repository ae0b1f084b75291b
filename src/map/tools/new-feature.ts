import type { Edit } from '#geo/plan/edits'
import { addFeatures, addStationInUse } from '#geo/plan/edits-features'
import { type Feature, type FeatureKind, type Geometry, isPlanting, type Plan, type Station } from '#geo/plan/plan'
import type { LngLat, Plane } from '#geo/space/plane'
import { bearing, distance } from '#geo/space/shape'
import { nextName } from '../../text/names'
import { lastCultivar } from './last-planting'
import type { Growing, ToolContext } from './tool'

/** What a plan without plantings grows. */
const firstCrop = 'apple'

/** What a first bed grows: hardly ever what the trees beside it are. */
const firstBedCrop = 'strawberry'

/** Nest tubes of a station that was only just drawn. */
const firstTubes = 100

/** A newly drawn thing with its name, crop and so on, those of its `own` before the usual, and the edit that adds it. */
export function newFeature(
  kind: FeatureKind,
  geometry: Geometry,
  context: ToolContext,
  own: Readonly<Record<string, string | number>> = {},
): { readonly id: string; readonly edit: Edit } {
  const { plan, year } = context
  const id = context.newId(kind)
  const properties = { kind, name: nextName(plan, kind), ...grownProperties(kind, geometry, context), ...own }
  const feature = { type: 'Feature', id, geometry, properties } as Feature
  if (kind === 'station') return { id, edit: addStationInUse(feature as Station, year, { tubes: firstTubes }) }
  return { id, edit: addFeatures([feature]) }
}

function grownProperties(kind: FeatureKind, geometry: Geometry, context: ToolContext): object {
  switch (kind) {
    case 'row':
    case 'plant':
    case 'bed':
      return grown(kind, context)
    case 'block': {
      const along = geometry.type === 'Polygon' ? longestSide(geometry.coordinates[0] ?? [], context.plane) : 0
      return { ...grown(kind, context), bearing: along }
    }
    case 'station':
    case 'candidate':
    case 'forage':
    case 'mud':
    case 'keepout':
    case 'boundary':
    case 'windbreak':
      return {}
    default:
      return kind satisfies never
  }
}

function grown(kind: GrowingKind, context: ToolContext): object {
  const { crop, cultivar } = growsIn(kind, context)
  return cultivar ? { crop, cultivar } : { crop }
}

export type GrowingKind = 'row' | 'block' | 'plant' | 'bed'

/** What grows in the next planting: what was chosen for it, else the crop drawn last, in rows with its cultivar. */
export function growsIn(kind: GrowingKind, { plan, growing = {} }: ToolContext): Required<Growing> {
  const crop = growing.crop ?? cropFor(plan, kind)
  const isRows = kind === 'row' || kind === 'block'
  return { crop, cultivar: growing.cultivar ?? (isRows ? lastCultivar(plan, kind, crop) : '') }
}

/** The crop drawn last: in beds that of beds alone, in rows and for single plants that of their own sort first. */
export function cropFor(plan: Plan, kind: FeatureKind): string {
  const crops = plan.features.filter(isPlanting)
  const last = (isLike: (kind: FeatureKind) => boolean) => crops.findLast(({ properties }) => isLike(properties.kind))
  const own = last(each => sortOf(each) === sortOf(kind))
  const before = kind === 'bed' ? own : (own ?? last(each => each !== 'bed') ?? crops.at(-1))
  return before?.properties.crop ?? (kind === 'bed' ? firstBedCrop : firstCrop)
}

function sortOf(kind: FeatureKind): FeatureKind | 'rows' {
  return kind === 'row' || kind === 'block' ? 'rows' : kind
}

/** Direction of an outline's longest side, degrees clockwise from north, 0 to 180, to a tenth. */
export function longestSide(ring: readonly LngLat[], plane: Plane): number {
  const corners = ring.map(at => plane.toMetres(at))
  let longest = 0
  let along = 0
  for (let i = 1; i < corners.length; i += 1) {
    const length = distance(corners[i - 1]!, corners[i]!)
    // A rectangle's two long sides differ by rounding only: the first one counts.
    if (length <= longest * (1 + 1e-6)) continue
    longest = length
    along = bearing(corners[i - 1]!, corners[i]!)
  }
  return (Math.round((along % 180) * 10) / 10) % 180
}
