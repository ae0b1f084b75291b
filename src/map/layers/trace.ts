import type { Geometry } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import type { Frame } from './canvas-layer'

/** Begins a path along every line or ring of a geometry; points leave it empty. */
export function trace(frame: Frame, geometry: Geometry): void {
  const { context } = frame
  context.beginPath()
  switch (geometry.type) {
    case 'Point':
    case 'MultiPoint':
      return
    case 'LineString':
      traceLine(frame, geometry.coordinates)
      return
    case 'Polygon':
      for (const ring of geometry.coordinates) {
        traceLine(frame, ring.slice(0, -1))
        context.closePath()
      }
      return
    default:
      geometry satisfies never
  }
}

function traceLine(frame: Frame, positions: readonly LngLat[]): void {
  positions.forEach((at, i) => {
    const { x, y } = frame.toCanvas(at)
    if (i === 0) frame.context.moveTo(x, y)
    else frame.context.lineTo(x, y)
  })
}

/** Whether any of a geometry may be seen on the canvas. */
export function isInFrame(frame: Frame, geometry: Geometry, margin = 40): boolean {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  const visit = (coordinates: unknown): void => {
    const list = coordinates as readonly unknown[]
    if (typeof list[0] === 'number') {
      const { x, y } = frame.toCanvas(list as unknown as LngLat)
      left = Math.min(left, x)
      right = Math.max(right, x)
      top = Math.min(top, y)
      bottom = Math.max(bottom, y)
    } else list.forEach(visit)
  }
  visit(geometry.coordinates)
  return right >= -margin && left <= frame.width + margin && bottom >= -margin && top <= frame.height + margin
}
