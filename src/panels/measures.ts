import { samplePlanting } from '#geo/coverage/demand'
import type { CropSettings } from '#geo/data/settings'
import { type Feature, isPlanting, type Plan } from '#geo/plan/plan'
import { type LngLat, type Plane, planeAt } from '#geo/space/plane'
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
  // Its own plane: lengths and areas do not hang on where else the plan has things.
  const plane = planeAt(first)
  const length =
    feature.geometry.type === 'LineString' ? lineLength(feature.geometry.coordinates.map(plane.toMetres)) : null
  if (isPlanting(feature)) {
    if (crop === undefined) return { ...nothing, length }
    const { points, area, isCell } = samplePlanting(feature, crop, plane)
    const count = points.length / 2
    return { plants: isCell ? null : count, area: count * area, length }
  }
  if (feature.geometry.type !== 'Polygon') return { ...nothing, length }
  return { ...nothing, area: polygonArea(rings(feature.geometry.coordinates, plane)) }
}

function rings(coordinates: readonly (readonly LngLat[])[], plane: Plane) {
  return coordinates.map(ring => ring.map(plane.toMetres))
}

function firstPosition(coordinates: unknown): LngLat | null {
  if (!Array.isArray(coordinates)) return null
  if (typeof coordinates[0] === 'number') return coordinates as unknown as LngLat
  return firstPosition(coordinates[0])
}
