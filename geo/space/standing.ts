import { type LngLat, planeAt } from './plane'
import { distance } from './shape'

/** One reading of the device's position; `accuracy` is the radius it gives for itself, m. */
export type Fix = { readonly at: LngLat; readonly accuracy: number }

/** Where somebody stands, by `readings` readings, and within what radius, m. */
export type Standing = { readonly at: LngLat; readonly radius: number; readonly readings: number }

/**
 * The mean of the readings since whoever holds the device last moved, each weighed by the inverse square of its accuracy;
 * null without any. The radius never falls below the best reading's own, however many there are: what shifts
 * satellites' signals shifts all readings of some minutes alike, and no mean takes that out. It grows where they scatter
 * more widely than they say: devices give the radius that holds nineteen of twenty readings, some two root mean squares.
 */
export function standingOf(fixes: readonly Fix[]): Standing | null {
  const usable = fixes.filter(({ at: [lng, lat], accuracy }) => accuracy > 0 && Number.isFinite(lng + lat + accuracy))
  const latest = usable.at(-1)
  if (latest === undefined) return null
  const plane = planeAt(latest.at)
  const points = usable.map(fix => ({ ...plane.toMetres(fix.at), accuracy: fix.accuracy }))
  const here = points.at(-1)!
  // Further from the latest than both together allow for: there the walking ended.
  const moved = points.findLastIndex(point => distance(point, here) > Math.hypot(point.accuracy, here.accuracy))
  const still = points.slice(moved + 1)
  let weights = 0
  let [x, y] = [0, 0]
  for (const point of still) {
    const weight = 1 / point.accuracy ** 2
    weights += weight
    x += weight * point.x
    y += weight * point.y
  }
  const mean = { x: x / weights, y: y / weights }
  const spread = still.reduce((sum, point) => sum + distance(point, mean) ** 2 / point.accuracy ** 2, 0) / weights
  const best = Math.min(...still.map(({ accuracy }) => accuracy))
  return { at: plane.toLngLat(mean), radius: Math.max(best, 2 * Math.sqrt(spread)), readings: still.length }
}
