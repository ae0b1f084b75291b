import type { Units } from '#geo/plan/plan'
import { type LngLat, type Plane, planeAt } from '#geo/space/plane'
import type { Frame, Painter } from '../layers/canvas-layer'
import { pixelsPerMetre } from '../mercator'
import { type GridStep, gridLabel, gridStep, strongEvery } from './grid-step'

/** Beyond this distance from the grid's middle a flat grid is not drawn any more, m. */
const farthest = 200_000

/** Lines of a square metre grid in the plan's own flat frame, with their distance from its middle at the edges. */
export function gridPainter(source: { middle(): LngLat; units(): Units; hasLabels(): boolean }): Painter {
  let plane: Plane | null = null
  return frame => {
    const middle = source.middle()
    if (plane === null || plane.centre[0] !== middle[0] || plane.centre[1] !== middle[1]) plane = planeAt(middle)
    paintGrid(frame, plane, source.units(), source.hasLabels())
  }
}

function paintGrid(frame: Frame, plane: Plane, units: Units, hasLabels: boolean): void {
  const { context, palette, width, height, view } = frame
  const step = gridStep(1 / pixelsPerMetre(plane.centre[1], frame.worldSize), units)
  if (step === null) return
  const corners = [
    [0, 0],
    [width, 0],
    [0, height],
    [width, height],
  ].map(([x, y]) => plane.toMetres(frame.toLngLat(x!, y!)))
  const xs = corners.map(({ x }) => x)
  const ys = corners.map(({ y }) => y)
  if (![...xs, ...ys].every(value => Math.abs(value) < farthest)) return
  const reach = { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) }
  const strong = strongEvery(step.step)
  context.strokeStyle = palette.line
  for (const isStrong of [false, true]) {
    context.beginPath()
    eachLine(reach.minX, reach.maxX, step, count => {
      if ((count % strong === 0) !== isStrong) return
      trace(frame, plane, { x: count * step.metres, y: reach.minY }, { x: count * step.metres, y: reach.maxY })
    })
    eachLine(reach.minY, reach.maxY, step, count => {
      if ((count % strong === 0) !== isStrong) return
      trace(frame, plane, { x: reach.minX, y: count * step.metres }, { x: reach.maxX, y: count * step.metres })
    })
    context.lineWidth = isStrong ? 1.5 : 0.75
    context.stroke()
  }
  if (!hasLabels) return
  context.font = `11px ${palette.font}`
  context.fillStyle = palette.ink2
  context.textBaseline = 'top'
  context.textAlign = 'center'
  const topMiddle = plane.toMetres(frame.toLngLat((view.left + view.right) / 2, view.top))
  const rightMiddle = plane.toMetres(frame.toLngLat(view.right, (view.top + view.bottom) / 2))
  eachLine(reach.minX, reach.maxX, step, count => {
    if (count % strong !== 0) return
    const { x } = frame.toCanvas(plane.toLngLat({ x: count * step.metres, y: topMiddle.y }))
    context.fillText(`${gridLabel(count, step)}${count === 0 ? '' : count > 0 ? ' E' : ' W'}`, x, view.top + 4)
  })
  context.textAlign = 'right'
  context.textBaseline = 'middle'
  eachLine(reach.minY, reach.maxY, step, count => {
    if (count % strong !== 0) return
    const { y } = frame.toCanvas(plane.toLngLat({ x: rightMiddle.x, y: count * step.metres }))
    const label = `${gridLabel(count, step)}${count === 0 ? '' : count > 0 ? ' N' : ' S'}`
    if (y > view.top + 130) context.fillText(label, view.right - 4, y)
  })
}

function eachLine(from: number, to: number, step: GridStep, visit: (count: number) => void): void {
  for (let count = Math.ceil(from / step.metres); count * step.metres <= to; count += 1) visit(count)
}

/** A line straight in the plane is a little bent on the map: three points are enough at these lengths. */
function trace(frame: Frame, plane: Plane, a: { x: number; y: number }, b: { x: number; y: number }): void {
  for (const share of [0, 0.5, 1]) {
    const { x, y } = frame.toCanvas(plane.toLngLat({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) }))
    if (share === 0) frame.context.moveTo(x, y)
    else frame.context.lineTo(x, y)
  }
}
