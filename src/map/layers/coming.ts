import { eachShape, type PackedShapes, packedLngLat } from '#geo/file/packed-things'
import type { PlannerStore } from '../../state/store'
import { unitPoints } from '../mercator'
import type { Frame, Painter } from './canvas-layer'

/** Vertices nearer than this to the last one drawn cannot be told from it, pixels; walked lines have hundreds of thousands. */
const leastStep = 2
/** More points, or lines longer than this in pixels, go without dashes, which no eye could tell and a canvas takes long for. */
const mostDashed = 3000
const longestDashed = 40_000
const radius = 6

/** What a file would bring, over the plan: dashed lines and rings with a sentence above them, gone when it is brought in or left. */
export function comingPainter(store: PlannerStore): Painter {
  let known: { readonly shapes: PackedShapes; readonly unit: Float64Array } | null = null
  return frame => {
    const { coming } = store.getState().view
    if (coming === null) {
      known = null
      return
    }
    const { shapes, words } = coming
    if (known?.shapes !== shapes) known = { shapes, unit: unitPoints(packedLngLat(shapes)) }
    const lines = new Path2D()
    const rings = new Path2D()
    const places = {
      count: 0,
      left: Number.POSITIVE_INFINITY,
      right: Number.NEGATIVE_INFINITY,
      top: Number.POSITIVE_INFINITY,
    }
    const { unit } = known
    let length = 0
    const place = (i: number) => ({
      x: unit[2 * i]! * frame.worldSize - frame.left,
      y: unit[2 * i + 1]! * frame.worldSize - frame.top,
    })
    const include = ({ x, y }: { readonly x: number; readonly y: number }) => {
      places.left = Math.min(places.left, x)
      places.right = Math.max(places.right, x)
      places.top = Math.min(places.top, y)
    }
    eachShape(shapes, (index, parts) => {
      const type = shapes.types[index]!
      for (const { from, count } of parts) {
        if (type === 'LineString' || type === 'Polygon') {
          let last = { x: Number.NaN, y: Number.NaN }
          for (let i = from; i < from + count; i += 1) {
            const at = place(i)
            include(at)
            const isEnd = i === from || i === from + count - 1
            if (!isEnd && Math.abs(at.x - last.x) < leastStep && Math.abs(at.y - last.y) < leastStep) continue
            if (i === from) lines.moveTo(at.x, at.y)
            else if (isBeside(last, at, frame)) lines.moveTo(at.x, at.y)
            else {
              lines.lineTo(at.x, at.y)
              length += Math.abs(at.x - last.x) + Math.abs(at.y - last.y)
            }
            last = at
          }
        } else {
          for (let i = from; i < from + count; i += 1) {
            const at = place(i)
            include(at)
            if (!isNear(at, frame)) continue
            places.count += 1
            rings.moveTo(at.x + radius, at.y)
            rings.arc(at.x, at.y, radius, 0, 2 * Math.PI)
          }
        }
      }
    })
    strokeTwice(frame, lines, length > longestDashed ? null : [9, 6])
    strokeTwice(frame, rings, places.count > mostDashed ? null : [4, 3])
    if (words !== '' && places.right >= places.left) paintWords(frame, words, places)
  }
}

type Place = { readonly x: number; readonly y: number }

function isNear({ x, y }: Place, { width, height }: Frame): boolean {
  return x > -radius && y > -radius && x < width + radius && y < height + radius
}

/** Whether a leg lies wholly to one side of the canvas. */
function isBeside(a: Place, b: Place, { width, height }: Frame): boolean {
  return (a.x < 0 && b.x < 0) || (a.y < 0 && b.y < 0) || (a.x > width && b.x > width) || (a.y > height && b.y > height)
}

/** Over paper, so that it is seen on whatever lies beneath; a multitude as thin lines alone. */
function strokeTwice({ context, palette }: Frame, path: Path2D, dashes: number[] | null): void {
  if (dashes === null) {
    context.lineJoin = 'bevel'
    context.lineWidth = 1
    context.strokeStyle = palette.accent
    context.stroke(path)
    return
  }
  context.lineJoin = 'round'
  context.lineWidth = 5
  context.globalAlpha = 0.7
  context.strokeStyle = palette.paper
  context.stroke(path)
  context.globalAlpha = 1
  context.setLineDash(dashes)
  context.lineWidth = 2.5
  context.strokeStyle = palette.accent
  context.stroke(path)
  context.setLineDash([])
}

/** What the map's own buttons take of its corner, pixels. */
const buttons = { width: 64, height: 150 }

/** Above what is coming, kept inside the view. */
function paintWords(
  { context, palette, view }: Frame,
  words: string,
  { left, right, top }: { readonly left: number; readonly right: number; readonly top: number },
): void {
  context.font = `600 13px ${palette.font}`
  const width = context.measureText(words).width + 16
  if (width > view.right - view.left - 8) return
  const y = Math.min(Math.max(top - 40, view.top + 4), view.bottom - 32)
  // Clear of the buttons for closer and farther, where there is room.
  const clear = y - view.top < buttons.height && width < view.right - view.left - buttons.width - 8 ? buttons.width : 4
  const x = Math.min(Math.max((left + right - width) / 2, view.left + clear), view.right - width - 4)
  context.beginPath()
  context.roundRect(x, y, width, 26, 6)
  context.fillStyle = palette.paper
  context.fill()
  context.lineWidth = 2
  context.setLineDash([6, 4])
  context.strokeStyle = palette.accent
  context.stroke()
  context.setLineDash([])
  context.fillStyle = palette.ink
  context.textAlign = 'left'
  context.textBaseline = 'middle'
  context.fillText(words, x + 8, y + 14)
}
