import { closedWork } from '#geo/report/day'
import type { PointCloud, PointCoverage } from '#geo/report/report'
import { pixelsPerMetre, unitPoints } from '../mercator'
import { coverClass } from '../style'
import type { Frame } from './canvas-layer'
import { hatch } from './hatch'

/** Plants below this size are dots too small for a stroke of hatching or an outline, pixels. */
const smallest = 6

/** A class for plants whose coverage is not known yet: drawn as plain dots. */
const unknown = 255
/** And for those whose blossom is closed on the day that is shown. */
const closed = 254

/** More plants in view than this are drawn as squares: a circle each would stall the map. */
export const mostCircles = 4000

/** Everything that is drawn of the plants, projected once and classed once. */
export type PlantPicture = {
  setCloud(cloud: PointCloud | null): void
  /** Coverage of the season, or the work of a day, point by point. */
  setCoverage(coverage: PointCoverage | null): void
  paint(frame: Frame, options: { readonly isShaded: boolean; readonly hidden: ReadonlySet<string> }): void
}

export function plantPicture(): PlantPicture {
  let cloud: PointCloud | null = null
  let unit: Float64Array = new Float64Array(0)
  let coverage: PointCoverage | null = null
  let classes: Uint8Array = new Uint8Array(0)
  const lastKnown = new Map<string, Uint8Array>()
  const classify = (): void => {
    if (cloud === null) return
    const points = unit.length / 2
    if (classes.length !== points) classes = new Uint8Array(points)
    const isMatching = coverage !== null && coverage.length === points
    for (const { id, start, end } of cloud.plantings) {
      if (isMatching) {
        for (let i = start; i < end; i += 1) classes[i] = classOf(coverage![i]!)
        lastKnown.set(id, classes.slice(start, end))
        continue
      }
      // Coverage of another set of plants than is shown: what has not changed keeps its shade until the new one comes.
      const known = lastKnown.get(id)
      if (known !== undefined && known.length === end - start) classes.set(known, start)
      else classes.fill(unknown, start, end)
    }
  }
  return {
    setCloud(next) {
      if (next === cloud) return
      cloud = next
      unit = next === null ? new Float64Array(0) : unitPoints(next.lngLat)
      classify()
    },
    setCoverage(next) {
      if (next === coverage) return
      coverage = next
      classify()
    },
    paint(frame, { isShaded, hidden }) {
      if (cloud === null) return
      const dots = dotsOf(frame)
      for (const planting of cloud.plantings) {
        if (hidden.has(planting.id) || planting.end === planting.start) continue
        const lat = cloud.lngLat[2 * planting.start + 1]!
        const size = Math.max(planting.isBed ? 1 : 2.5, planting.size * pixelsPerMetre(lat, frame.worldSize))
        const run = { from: planting.start, to: planting.end, size, isRound: !planting.isBed }
        const first = classes[planting.start]
        if (!isShaded || first === unknown) paintPlain(frame, unit, run)
        else if (first === closed) paintClosed(frame, unit, run)
        else if (size < smallest) paintDots(frame, unit, classes, { run, dots })
        else paintShaded(frame, unit, classes, run)
      }
      paintHatch(frame, dots)
    },
  }
}

function classOf(share: number): number {
  if (share >= 0) return coverClass(share)
  return share === closedWork ? closed : unknown
}

export type Run = { readonly from: number; readonly to: number; readonly size: number; readonly isRound: boolean }

/** Calls `draw` with the middle of every point of a run that can be seen. */
export function eachSeen(
  frame: Frame,
  unit: Float64Array,
  run: Run,
  draw: (x: number, y: number, i: number) => void,
): void {
  const { worldSize, left, top, width, height } = frame
  const half = run.size / 2
  for (let i = run.from; i < run.to; i += 1) {
    const x = unit[2 * i]! * worldSize - left
    const y = unit[2 * i + 1]! * worldSize - top
    if (x > -half && y > -half && x < width + half && y < height + half) draw(x, y, i)
  }
}

function paintPlain(frame: Frame, unit: Float64Array, run: Run): void {
  const { context, palette } = frame
  const size = Math.min(run.size, run.isRound ? 5 : run.size)
  context.fillStyle = run.isRound ? palette.ink : palette.line
  eachSeen(frame, unit, run, (x, y) => context.fillRect(x - size / 2, y - size / 2, size, size))
}

/** Closed blossom: an empty outline, or where there is no room for one a small dot. */
function paintClosed(frame: Frame, unit: Float64Array, run: Run): void {
  const { palette } = frame
  const { size } = run
  if (run.isRound && size >= smallest && countSeen(frame, unit, run) <= mostCircles) {
    strokeEach(frame, unit, run, palette.ink2, (context, x, y) => {
      context.moveTo(x + size / 2, y)
      context.arc(x, y, size / 2, 0, 2 * Math.PI)
    })
    return
  }
  frame.context.fillStyle = palette.ink2
  const dot = Math.min(size / 2, smallestDot)
  eachSeen(frame, unit, run, (x, y) => frame.context.fillRect(x - dot / 2, y - dot / 2, dot, dot))
}

const smallestDot = 1.5

function paintShaded(frame: Frame, unit: Float64Array, classes: Uint8Array, run: Run): void {
  const { context, palette } = frame
  const { size } = run
  const isRound = run.isRound && countSeen(frame, unit, run) <= mostCircles
  for (let step = 0; step < palette.cover.length; step += 1) {
    context.fillStyle = palette.cover[step]!
    eachSeen(frame, unit, run, (x, y, i) => {
      if (classes[i] !== step) return
      if (!isRound) {
        context.fillRect(x - size / 2, y - size / 2, size, size)
        return
      }
      context.beginPath()
      context.arc(x, y, size / 2, 0, 2 * Math.PI)
      context.fill()
    })
  }
  paintEdges(frame, unit, classes, { ...run, isRound })
}

export function countSeen(frame: Frame, unit: Float64Array, run: Run): number {
  let seen = 0
  eachSeen(frame, unit, run, () => {
    seen += 1
  })
  return seen
}

/**
 * What a painting remembers of its dots: which step each pixel shows, so that plants which fall on one pixel are filled
 * once, and which squares of the hatching lie over plants that are short, so that they are hatched once, over all dots.
 */
type Dots = { readonly pixels: Uint8Array; readonly squares: Uint8Array; readonly columns: number }

function dotsOf({ width, height }: Frame): Dots {
  const columns = Math.ceil(width / hatchGap) + 2
  return {
    pixels: new Uint8Array((Math.ceil(width) + 1) * (Math.ceil(height) + 1)),
    squares: new Uint8Array(columns * (Math.ceil(height / hatchGap) + 2)),
    columns,
  }
}

/** Plants too small for a circle and a stroke each. */
function paintDots(
  frame: Frame,
  unit: Float64Array,
  classes: Uint8Array,
  { run, dots }: { readonly run: Run; readonly dots: Dots },
): void {
  const { context, palette, left, top, width, height } = frame
  const { size } = run
  const across = Math.ceil(width) + 1
  const [shiftX, shiftY] = [left % hatchGap, top % hatchGap]
  let filled = -1
  eachSeen(frame, unit, run, (x, y, i) => {
    const step = classes[i]!
    if (step >= palette.cover.length) return
    if (x >= 0 && y >= 0 && x < width && y < height) {
      const pixel = Math.floor(y) * across + Math.floor(x)
      if (dots.pixels[pixel] === step + 1) return
      dots.pixels[pixel] = step + 1
    }
    if (step !== filled) {
      context.fillStyle = palette.cover[step]!
      filled = step
    }
    context.fillRect(x - size / 2, y - size / 2, size, size)
    if (step >= 4) return
    const column = Math.floor((x + shiftX) / hatchGap)
    const row = Math.floor((y + shiftY) / hatchGap)
    dots.squares[(row + 1) * dots.columns + column + 1] = 1
  })
}

/** Hatching over dots that are too small for a stroke each: strips of it run along rows that are short of bees. */
function paintHatch(frame: Frame, { squares, columns }: Dots): void {
  const { context, palette, left, top } = frame
  const pattern = hatch(context, palette.ink2, hatchGap)
  if (pattern === null || !squares.includes(1)) return
  // The pattern keeps to the ground, not to the canvas, so that it stands still while the map is moved.
  pattern.setTransform(new DOMMatrix([1, 0, 0, 1, -(left % hatchGap), -(top % hatchGap)]))
  context.fillStyle = pattern
  const [shiftX, shiftY] = [left % hatchGap, top % hatchGap]
  for (const [square, isShort] of squares.entries()) {
    if (isShort === 0) continue
    const column = (square % columns) - 1
    const row = Math.floor(square / columns) - 1
    context.fillRect(column * hatchGap - shiftX, row * hatchGap - shiftY, hatchGap, hatchGap)
  }
}

const hatchGap = 7

/** An outline, so that light steps stand out from the paper, and a stroke across every plant that is short. */
function paintEdges(frame: Frame, unit: Float64Array, classes: Uint8Array, run: Run): void {
  const { palette } = frame
  const half = run.size / 2
  const reach = run.isRound ? half * Math.SQRT1_2 : half
  if (run.isRound) {
    strokeEach(frame, unit, run, palette.ink2, (context, x, y) => {
      context.moveTo(x + half, y)
      context.arc(x, y, half, 0, 2 * Math.PI)
    })
  }
  // The darker steps take a light stroke.
  for (const isDark of [false, true]) {
    strokeEach(frame, unit, run, isDark ? palette.paper : palette.ink2, (context, x, y, i) => {
      if (classes[i]! >= 4 || classes[i]! >= 3 !== isDark) return
      context.moveTo(x - reach, y + reach)
      context.lineTo(x + reach, y - reach)
    })
  }
}

/** One path of many thousand pieces is far slower to stroke than many short ones. */
const piecesAtOnce = 40

export function strokeEach(
  frame: Frame,
  unit: Float64Array,
  run: Run,
  colour: string,
  draw: (context: CanvasRenderingContext2D, x: number, y: number, i: number) => void,
): void {
  const { context } = frame
  let pieces = 0
  context.strokeStyle = colour
  context.lineWidth = 1
  context.beginPath()
  eachSeen(frame, unit, run, (x, y, i) => {
    draw(context, x, y, i)
    pieces += 1
    if (pieces % piecesAtOnce !== 0) return
    context.stroke()
    context.beginPath()
  })
  context.stroke()
}
