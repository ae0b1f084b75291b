import { samplePlanting } from '#geo/coverage/demand'
import type { CropSettings } from '#geo/data/settings'
import { type Feature, isPlanting, type LineGeometry, type Plan, type RowProperties } from '#geo/plan/plan'
import { type LngLat, type Plane, planeAt } from '#geo/space/plane'
import { plantsInRow } from '#geo/space/sample'
import { lineLength, polygonArea } from '#geo/space/shape'
import { settingsOf } from '../state/selectors'

/** What there is to count or measure of a drawn thing; metres and square metres, null where it has none. */
export type Measured = { readonly plants: number | null; readonly area: number | null; readonly length: number | null }

const nothing: Measured = { plants: null, area: null, length: null }
const known = new WeakMap<Feature, { readonly crop: CropSettings | undefined; readonly measured: Measured }>()

/** Remembered for each thing and the crop figures it was measured with. */
export function measured(plan: Plan, feature: Feature): Measured {
  const crop = isPlanting(feature) ? settingsOf(plan).crops[feature.properties.crop] : undefined
  const found = known.get(feature)
  if (found !== undefined && found.crop === crop) return found.measured
  const answer = measure(feature, crop)
  known.set(feature, { crop, measured: answer })
  return answer
}

function measure(feature: Feature, crop: CropSettings | undefined): Measured {
  const first = firstPosition(feature.geometry.coordinates)
  if (first === null) return nothing
  const plane = planeNear(first)
  const length = feature.geometry.type === 'LineString' ? lengthOf(feature.geometry, plane) : null
  if (isPlanting(feature)) {
    if (crop === undefined) return { ...nothing, length }
    if (feature.properties.kind === 'row' && length !== null) return measuredRow(feature.properties, length, crop)
    const { points, area, isCell } = samplePlanting(feature, crop, plane)
    const count = points.length / 2
    return { plants: isCell ? null : count, area: count * area, length }
  }
  if (feature.geometry.type !== 'Polygon') return { ...nothing, length }
  return { ...nothing, area: polygonArea(rings(feature.geometry.coordinates, plane)) }
}

const lengths = new WeakMap<LineGeometry, number>()

/** Remembered by the line itself: other figures of a row change without it. */
function lengthOf(line: LineGeometry, plane: Plane): number {
  const length = lengths.get(line) ?? lineLength(line.coordinates.map(plane.toMetres))
  lengths.set(line, length)
  return length
}

/** A row is counted without being laid out: thousands are counted at once. */
function measuredRow(row: RowProperties, length: number, crop: CropSettings): Measured {
  const { spacing = crop.spacing, rowSpacing = crop.rowSpacing } = row
  const plants = row.count ?? plantsInRow(length, spacing)
  return Number.isFinite(plants) ? { plants, area: plants * spacing * rowSpacing, length } : { ...nothing, length }
}

/** Degrees between planes: none of a thing's own ground lies so far from the middle of one that a length would show it. */
const step = 0.02
const mostPlanes = 100
const planes = new Map<string, Plane>()

/** A plane close by: lengths and areas do not hang on where else the plan has things. Thousands of rows share a few. */
function planeNear([lng, lat]: LngLat): Plane {
  const [column, row] = [Math.round(lng / step), Math.round(lat / step)]
  const key = `${column} ${row}`
  const found = planes.get(key)
  if (found !== undefined) return found
  if (planes.size >= mostPlanes) planes.clear()
  const plane = planeAt([column * step, row * step])
  planes.set(key, plane)
  return plane
}

function rings(coordinates: readonly (readonly LngLat[])[], plane: Plane) {
  return coordinates.map(ring => ring.map(plane.toMetres))
}

function firstPosition(coordinates: unknown): LngLat | null {
  if (!Array.isArray(coordinates)) return null
  if (typeof coordinates[0] === 'number') return coordinates as unknown as LngLat
  return firstPosition(coordinates[0])
}
