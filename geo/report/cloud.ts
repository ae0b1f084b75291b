import { samplePlanting } from '../coverage/demand'
import { settingsFor } from '../data/settings'
import { isPlanting, isPresent, type Plan } from '../plan/plan'
import { planeOf } from '../space/plane'
import type { PointCloud } from './report'

/**
 * Every plant and bed cell that stands in `year`, for drawing, in degrees; the order is that of `PointCoverage`.
 * Plantings whose crop is unknown are left out: the plan's check tells of them, and no coverage comes for them either.
 */
export function pointCloud(plan: Plan, year: number): PointCloud {
  const plane = planeOf(plan.features)
  const settings = settingsFor(plan)
  const plantings: PointCloud['plantings'][number][] = []
  const parts: Float64Array[] = []
  let end = 0
  for (const feature of plan.features) {
    if (!isPlanting(feature) || !isPresent(feature, year)) continue
    const crop = settings.crops[feature.properties.crop]
    if (crop === undefined) continue
    const { points, size, isCell } = samplePlanting(feature, crop, plane)
    const start = end
    end += points.length / 2
    parts.push(points)
    plantings.push({ id: feature.id, start, end, size, isBed: isCell })
  }
  const lngLat = new Float64Array(2 * end)
  let at = 0
  for (const points of parts) {
    for (let i = 0; i < points.length; i += 2) {
      const [lng, lat] = plane.toLngLat({ x: points[i]!, y: points[i + 1]! })
      lngLat[at] = lng
      lngLat[at + 1] = lat
      at += 2
    }
  }
  return { lngLat, plantings }
}
