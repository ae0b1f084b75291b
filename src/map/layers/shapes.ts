import type { Feature, FeatureKind, Geometry } from '#geo/plan/plan'
import type { Frame } from './canvas-layer'
import { hatch } from './hatch'
import { isInFrame, trace } from './trace'

/** Lines and outlines of everything that has an extent: ground first, plantings over it. */
export function paintShapes(frame: Frame, features: readonly Feature[], isSelected: (id: string) => boolean): void {
  const shown = features.filter(feature => isInFrame(frame, feature.geometry))
  for (const kind of order) {
    for (const feature of shown) {
      if (feature.properties.kind === kind) paintShape(frame, kind, feature.geometry, isSelected(feature.id))
    }
  }
}

const order: readonly FeatureKind[] = ['boundary', 'forage', 'keepout', 'windbreak', 'block', 'bed', 'row']

/** One shape in the manner of its kind; the ghost of a thing under way is painted by the same hand. */
export function paintShape(frame: Frame, kind: FeatureKind, geometry: Geometry, isSelected: boolean): void {
  const { context, palette } = frame
  context.setLineDash([])
  context.lineJoin = 'round'
  context.lineCap = 'butt'
  trace(frame, geometry)
  switch (kind) {
    case 'boundary':
      context.setLineDash([18, 8])
      stroke(context, palette.ink2, 1.5)
      break
    case 'forage':
      fillDots(frame)
      context.setLineDash([2, 4])
      stroke(context, palette.ink2, 1.5)
      break
    case 'keepout':
      fillHatch(context, palette.ink2, 9)
      stroke(context, palette.ink2, 1.5)
      break
    case 'windbreak':
      stroke(context, palette.ink2, 2)
      paintTicks(frame, geometry)
      break
    case 'block':
    case 'bed':
    case 'row':
      stroke(context, palette.ink2, 1)
      break
    default:
      break
  }
  context.setLineDash([])
  if (!isSelected) return
  trace(frame, geometry)
  stroke(context, palette.paper, 6)
  stroke(context, palette.accent, 3)
}

function stroke(context: CanvasRenderingContext2D, colour: string, width: number): void {
  context.strokeStyle = colour
  context.lineWidth = width
  context.stroke()
}

function fillHatch(context: CanvasRenderingContext2D, colour: string, gap: number): void {
  const pattern = hatch(context, colour, gap)
  if (pattern === null) return
  context.globalAlpha = 0.45
  context.fillStyle = pattern
  context.fill('evenodd')
  context.globalAlpha = 1
}

/** Dotted ground: dots in a grid, kept inside the path that stands. */
function fillDots({ context, palette, width, height, left, top }: Frame): void {
  context.save()
  context.clip('evenodd')
  context.fillStyle = palette.ink2
  const gap = 9
  // Dots keep to the ground, not to the screen: the grid starts from the world's pixels.
  for (let x = -(left % gap); x < width; x += gap) {
    for (let y = -(top % gap); y < height; y += gap) context.fillRect(x, y, 1.6, 1.6)
  }
  context.restore()
}

/** Short strokes to one side along a line: a hedge or fence that breaks the wind. */
function paintTicks(frame: Frame, geometry: Geometry): void {
  if (geometry.type !== 'LineString') return
  const { context, palette } = frame
  const points = geometry.coordinates.map(frame.toCanvas)
  context.beginPath()
  for (let i = 1; i < points.length; i += 1) {
    const a = points[i - 1]!
    const b = points[i]!
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (length === 0) continue
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length]
    for (let along = 5; along < length; along += 10) {
      const [x, y] = [a.x + along * ux, a.y + along * uy]
      context.moveTo(x, y)
      context.lineTo(x - 6 * uy, y + 6 * ux)
    }
  }
  stroke(context, palette.ink2, 1.5)
}
