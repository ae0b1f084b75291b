import { settingsFor } from '../data/settings'
import { localFrame } from '../space/ring'
import { extentOf, lineLength, polygonArea } from '../space/shape'
import { positionsOf } from './check-ground'
import { shortened } from './place'
import {
  type Feature,
  isForage,
  isPlanting,
  isPresent,
  type LineGeometry,
  nameOf,
  type Plan,
  type PolygonGeometry,
} from './plan'
import type { ReportProblem } from './report-problem'

/** Plants and cells that a plan may break into; a thousand hectares of apple have a million. */
const mostPlants = 2_000_000
/** Side of the cells that beds and forage areas are cut into, m. */
const cellSide = 2

/** Counts plants by length and area, before anything is laid out: a slip in a spacing must not fill the memory. */
export function checkPlants(plan: Plan, year: number | undefined, report: ReportProblem): void {
  const { crops } = settingsFor({ parameters: {}, crops: plan.crops })
  let total = 0
  let most: { readonly feature: Feature; readonly plants: number } | null = null
  for (const feature of plan.features) {
    if (!isPlanting(feature) && !isForage(feature)) continue
    if (year !== undefined && !isPresent(feature, year)) continue
    const plants = plantsIn(feature, name => (Object.hasOwn(crops, name) ? crops[name] : undefined))
    total += plants
    if (plants > (most?.plants ?? 0)) most = { feature, plants }
  }
  if (!(total > mostPlants) || most === null) return
  const values = {
    plants: Math.round(total),
    limit: mostPlants,
    name: shortened(nameOf(most.feature)),
    most: Math.round(most.plants),
  }
  report('error', 'too-many-plants', most.feature.id, values)
}

type Spacings = { readonly spacing: number; readonly rowSpacing: number }

function plantsIn(feature: Feature, cropOf: (crop: string) => Spacings | undefined): number {
  const { geometry, properties } = feature
  if (geometry.type === 'Point') return 1
  if (geometry.type === 'MultiPoint') return geometry.coordinates.length
  const size = sizeOf(geometry)
  if (size === null) return 0
  const given = 'crop' in properties ? { ...cropOf(properties.crop), ...spacingsOf(properties) } : {}
  if (geometry.type === 'LineString') {
    if ('count' in properties && properties.count !== undefined) return Math.max(0, properties.count)
    const { spacing = 0 } = given
    return spacing > 0 ? size.length / spacing + 1 : 0
  }
  return plantsOnArea(size, properties.kind === 'block' ? given : null)
}

/** Metres and square metres: of a line its length, of an outline its area and its box. */
type Size = { readonly length: number; readonly area: number; readonly width: number; readonly height: number }

const sizes = new WeakMap<LineGeometry | PolygonGeometry, Size>()

/** Remembered by what was drawn: a large plan is checked at every edit, and an edit draws little anew. */
function sizeOf(geometry: LineGeometry | PolygonGeometry): Size | null {
  const known = sizes.get(geometry)
  if (known !== undefined) return known
  const first = positionsOf(geometry)[0]
  if (first === undefined) return null
  const size = measured(geometry, localFrame(first))
  sizes.set(geometry, size)
  return size
}

function measured(geometry: LineGeometry | PolygonGeometry, toLocal: ReturnType<typeof localFrame>): Size {
  if (geometry.type === 'LineString') {
    return { length: lineLength(geometry.coordinates.map(toLocal)), area: 0, width: 0, height: 0 }
  }
  const rings = geometry.coordinates.map(ring => ring.map(toLocal))
  const { minX, maxX, minY, maxY } = extentOf(rings.flat())
  return { length: 0, area: Math.abs(polygonArea(rings)), width: maxX - minX, height: maxY - minY }
}

function spacingsOf(properties: object): Partial<Spacings> {
  const { spacing, rowSpacing } = properties as Partial<Spacings>
  return { ...(spacing === undefined ? {} : { spacing }), ...(rowSpacing === undefined ? {} : { rowSpacing }) }
}

/** `spacings` null = cut into cells. Laying out passes over every row of a block and every cell of a bed's box. */
function plantsOnArea({ area, width, height }: Size, spacings: Partial<Spacings> | null): number {
  if (spacings === null) return Math.max(area / cellSide ** 2, (width * height) / cellSide ** 2 / 10)
  const { spacing = 0, rowSpacing = 0 } = spacings
  // Spacings of nothing are told elsewhere.
  if (!(spacing > 0 && rowSpacing > 0)) return 0
  return Math.max(area / (spacing * rowSpacing), Math.hypot(width, height) / rowSpacing)
}
