import type { Geometry } from '#geo/plan/plan'
import { closedWork } from '#geo/report/day'
import type { PointCloud, PointCoverage } from '#geo/report/report'
import { pixelsPerMetre, unitPoints } from '../mercator'
import { coverClass } from '../style'
import { type BedLook, isFitted, paintBed } from './bed-cells'
import type { Frame } from './canvas-layer'
import { addClosed, addPlain, addShaded, type Dots, dotsOn, paintHatch } from './dots'
import { countSeen, eachSeen, type Run } from './seen'

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
  paint(frame: Frame, options: PaintOptions): void
}

export type PaintOptions = {
  readonly isShaded: boolean
  readonly hidden: ReadonlySet<string>
  /** Outline of a thing by its id; null where there is none. */
  readonly outlineOf: (id: string) => Geometry | null
}

export function plantPicture(): PlantPicture {
  let cloud: PointCloud | null = null
  let unit: Float64Array = new Float64Array(0)
  let coverage: PointCoverage | null = null
  let classes: Uint8Array = new Uint8Array(0)
  const lastKnown = new Map<string, Uint8Array>()
  let dots: Dots | null = null
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
    paint(frame, { isShaded, hidden, outlineOf }) {
      if (cloud === null) return
      dots = dotsOn(frame, dots)
      const now = dots
      const larger: (() => void)[] = []
      for (const planting of cloud.plantings) {
        if (hidden.has(planting.id) || planting.end === planting.start) continue
        const lat = cloud.lngLat[2 * planting.start + 1]!
        const size = Math.max(planting.isBed ? 1 : 2.5, planting.size * pixelsPerMetre(lat, frame.worldSize))
        const run = { from: planting.start, to: planting.end, size, isRound: !planting.isBed }
        const first = classes[planting.start]
        const outline = planting.isBed && isFitted(run) && first !== closed ? outlineOf(planting.id) : null
        if (outline !== null) {
          const look = isShaded && first !== unknown ? shadedBed(frame, classes) : plainBed(frame)
          larger.push(() => paintBed(frame, unit, { run, outline }, look))
          continue
        }
        if (!isShaded || first === unknown) addPlain(frame, unit, run, now)
        else if (first === closed) {
          if (isRing(frame, unit, run)) larger.push(() => paintRings(frame, unit, run))
          else addClosed(frame, unit, run, now)
        } else if (size < smallest) addShaded(frame, unit, run, { classes, dots: now })
        else larger.push(() => paintShaded(frame, unit, classes, run))
      }
      // Pixels take the place of what is under them: all else comes over them.
      now.squares.put(frame.context)
      for (const paintLarger of larger) paintLarger()
      paintHatch(frame, now)
    },
  }
}

function plainBed({ palette }: Frame): BedLook {
  return { colourOf: () => palette.line, coverOf: () => null }
}

const hatchGap = 7

/** Cells by their step, hatched where they are short; the darker steps take light hatching. */
function shadedBed({ palette }: Frame, classes: Uint8Array): BedLook {
  const onDark = { colour: palette.paper, gap: hatchGap }
  const onLight = { colour: palette.ink2, gap: hatchGap }
  return {
    colourOf: i => palette.cover[classes[i]!] ?? null,
    coverOf: i => (classes[i]! >= 4 ? null : classes[i]! >= 3 ? onDark : onLight),
  }
}

function classOf(share: number): number {
  if (share >= 0) return coverClass(share)
  return share === closedWork ? closed : unknown
}

/** Closed blossom is an empty outline, where there is room for one. */
function isRing(frame: Frame, unit: Float64Array, run: Run): boolean {
  return run.isRound && run.size >= smallest && countSeen(frame, unit, run) <= mostCircles
}

function paintRings(frame: Frame, unit: Float64Array, run: Run): void {
  const { size } = run
  strokeEach(frame, unit, run, frame.palette.ink2, (context, x, y) => {
    context.moveTo(x + size / 2, y)
    context.arc(x, y, size / 2, 0, 2 * Math.PI)
  })
}

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
