import type { Units } from '#geo/plan/plan'
import { type LngLat, planeAt } from '#geo/space/plane'
import { lengthText } from '../../text/units'
import type { Ghost } from './tool'

/** Further from where the grid counts there are no words: a flat grid says nothing there; metres. */
const farthest = 200_000

/** Where a first point would lie, counted as along the edges of the grid: "105 m E, 42 m N". */
export function placeWords(at: LngLat, origin: LngLat, units: Units): string {
  const { x, y } = planeAt(origin).toMetres(at)
  if (!(Math.abs(x) < farthest && Math.abs(y) < farthest)) return ''
  return `${lengthText(Math.abs(x), units)} ${x < 0 ? 'W' : 'E'}, ${lengthText(Math.abs(y), units)} ${y < 0 ? 'S' : 'N'}`
}

/** While nothing can be measured yet, the pointer tells its place. */
export function withPlace(ghost: Ghost | null, origin: LngLat, units: Units): Ghost | null {
  if (ghost === null || ghost.pointer === null || ghost.says !== undefined) return ghost
  if (ghost.measure !== null && ghost.measure.geometry.type !== 'Point') return ghost
  return { ...ghost, says: placeWords(ghost.pointer, origin, units) }
}
