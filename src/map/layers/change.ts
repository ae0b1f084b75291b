import type { PointCloud, PointCoverage } from '#geo/report/report'
import { pixelsPerMetre, unitPoints } from '../mercator'
import { changeClass } from '../style'
import { type BedLook, isFitted, paintBed } from './bed-cells'
import type { Frame } from './canvas-layer'
import { type Cover, coverPattern } from './hatch'
import { mostCircles, type PaintOptions, strokeEach } from './plants'
import { countSeen, eachSeen, type Run } from './seen'

/** A season point by point. */
export type SeasonPoints = { readonly cloud: PointCloud; readonly coverage: PointCoverage }

/** Beside the classes of change: points that stand, or bloom, in one season only. */
export const single = 255
/** Points below this size are squares without a shape of their own, pixels. */
const smallest = 6

/**
 * Every plant by what its coverage became from one season to the other. A gain points up and a loss down, and signs tell
 * much from little, so that the map reads without colour; what hardly changed is a pale disc.
 */
export function changePicture() {
  let seasons: readonly [SeasonPoints, SeasonPoints] | null = null
  let layers: readonly Layer[] = []
  return {
    setSeasons(then: SeasonPoints, now: SeasonPoints): void {
      const [before, after] = seasons ?? []
      const isKnown =
        before?.cloud === then.cloud &&
        before.coverage === then.coverage &&
        after?.cloud === now.cloud &&
        after.coverage === now.coverage
      if (isKnown) return
      seasons = [then, now]
      layers = layersOf(then, now)
    },
    paint(frame: Frame, options: Pick<PaintOptions, 'hidden' | 'outlineOf'>): void {
      for (const layer of layers) paintLayer(frame, layer, options)
    },
  }
}

type Layer = {
  readonly unit: Float64Array
  readonly classes: Uint8Array
  readonly plantings: readonly (PointCloud['plantings'][number] & { readonly lat: number })[]
}

/** The later season's points with their change, after the points that stand in the earlier one alone. */
export function layersOf(then: SeasonPoints, now: SeasonPoints): readonly [gone: Layer, there: Layer] {
  const before = new Map(then.cloud.plantings.map(planting => [planting.id, planting]))
  const after = new Set(now.cloud.plantings.map(({ id }) => id))
  const gone = then.cloud.plantings.filter(({ id }) => !after.has(id))
  const classes = new Uint8Array(now.cloud.lngLat.length / 2).fill(single)
  // Coverage of another set of points than is drawn says nothing about these.
  const isMatching = isWhole(then) && isWhole(now)
  for (const { id, start, end } of now.cloud.plantings) {
    const old = before.get(id)
    if (!isMatching || old === undefined || old.end - old.start !== end - start) continue
    for (let i = start; i < end; i += 1) {
      const [from, to] = [then.coverage[old.start + i - start]!, now.coverage[i]!]
      if (from >= 0 && to >= 0) classes[i] = changeClass(to - from)
    }
  }
  const placed = (cloud: PointCloud, plantings: PointCloud['plantings']) =>
    plantings.filter(({ start, end }) => end > start).map(each => ({ ...each, lat: cloud.lngLat[2 * each.start + 1]! }))
  return [
    {
      unit: unitPoints(then.cloud.lngLat),
      classes: new Uint8Array(then.cloud.lngLat.length / 2).fill(single),
      plantings: placed(then.cloud, gone),
    },
    { unit: unitPoints(now.cloud.lngLat), classes, plantings: placed(now.cloud, now.cloud.plantings) },
  ]
}

function isWhole({ cloud, coverage }: SeasonPoints): boolean {
  return coverage.length === cloud.lngLat.length / 2
}

function paintLayer(
  frame: Frame,
  { unit, classes, plantings }: Layer,
  { hidden, outlineOf }: Pick<PaintOptions, 'hidden' | 'outlineOf'>,
): void {
  for (const { id, start, end, size: metres, isBed, lat } of plantings) {
    if (hidden.has(id)) continue
    const size = Math.max(isBed ? 1 : 2.5, metres * pixelsPerMetre(lat, frame.worldSize))
    const run: Run = { from: start, to: end, size, isRound: !isBed }
    const outline = isBed && isFitted(run) ? outlineOf(id) : null
    if (outline !== null) {
      paintBed(frame, unit, { run, outline }, changedBed(frame, classes))
      paintSingle(frame, unit, classes, run)
      continue
    }
    const isShaped = !isBed && size >= smallest && countSeen(frame, unit, run) <= mostCircles
    for (let step = 0; step < frame.palette.change.length; step += 1) {
      paintStep(frame, unit, { classes, run, step, isShaped })
    }
    paintSigns(frame, unit, { classes, run, isShaped })
    paintSingle(frame, unit, classes, run)
  }
}

/** What lies over each step of change, so that large and small differ without colour: dense or wide hatching, dots. */
function coversOf({ palette }: Frame): readonly (Cover | null)[] {
  return [
    { colour: palette.paper, gap: 4 },
    { colour: palette.ink, gap: 8 },
    null,
    null,
    { colour: palette.ink, gap: 5, isDots: true },
  ]
}

function changedBed(frame: Frame, classes: Uint8Array): BedLook {
  const covers = coversOf(frame)
  return { colourOf: i => frame.palette.change[classes[i]!] ?? null, coverOf: i => covers[classes[i]!] ?? null }
}

type Marks = { readonly classes: Uint8Array; readonly run: Run; readonly isShaped: boolean }

function paintStep(
  frame: Frame,
  unit: Float64Array,
  { classes, run, step, isShaped }: Marks & { readonly step: number },
): void {
  const { context, palette } = frame
  // Small points that hardly changed are smaller still, and grey: their own pale shade would be lost on the paper.
  const isFaint = step === 2 && !isShaped && run.isRound
  const size = isFaint ? 0.6 * run.size : run.size
  const half = size / 2
  context.fillStyle = isFaint ? palette.ink2 : palette.change[step]!
  context.globalAlpha = isFaint ? 0.5 : 1
  eachSeen(frame, unit, run, (x, y, i) => {
    if (classes[i] !== step) return
    if (!isShaped) {
      context.fillRect(x - half, y - half, size, size)
      return
    }
    context.beginPath()
    shape(context, { x, y, half, step })
    context.fill()
  })
  context.globalAlpha = 1
  if (!isShaped) return
  strokeEach(frame, unit, run, palette.ink2, (pen, x, y, i) => {
    if (classes[i] === step) shape(pen, { x, y, half, step })
  })
}

type Shape = { readonly x: number; readonly y: number; readonly half: number; readonly step: number }

/** Up for a gain, down for a loss, a disc for neither. */
function shape(context: CanvasRenderingContext2D, { x, y, half, step }: Shape): void {
  if (step === 2) {
    const radius = 0.7 * half
    context.moveTo(x + radius, y)
    context.arc(x, y, radius, 0, 2 * Math.PI)
    return
  }
  const [tip, base] = step > 2 ? [y - half, y + 0.75 * half] : [y + half, y - 0.75 * half]
  context.moveTo(x, tip)
  context.lineTo(x + half, base)
  context.lineTo(x - half, base)
  context.closePath()
}

/** One stroke across a shape that lost little, two across one that lost much, a dot in one that gained much; small points take patterns. */
function paintSigns(frame: Frame, unit: Float64Array, { classes, run, isShaped }: Marks): void {
  const { context, palette } = frame
  const half = run.size / 2
  if (isShaped) {
    for (const step of [0, 1]) {
      // The darker step takes light strokes.
      strokeEach(frame, unit, run, step === 0 ? palette.paper : palette.ink, (pen, x, y, i) => {
        if (classes[i] !== step) return
        for (const shift of step === 0 ? [-0.3 * half, 0.3 * half] : [0]) {
          pen.moveTo(x - half / 2, y + half / 4 + shift)
          pen.lineTo(x + half / 2, y - 0.75 * half + shift)
        }
      })
    }
    context.fillStyle = palette.ink
    eachSeen(frame, unit, run, (x, y, i) => {
      if (classes[i] !== 4) return
      context.beginPath()
      context.arc(x, y + 0.15 * half, 0.22 * half, 0, 2 * Math.PI)
      context.fill()
    })
    return
  }
  coversOf(frame).forEach((cover, step) => {
    const pattern = cover && coverPattern(frame, cover)
    if (pattern === null) return
    context.fillStyle = pattern
    eachSeen(frame, unit, run, (x, y, i) => {
      if (classes[i] === step) context.fillRect(x - half, y - half, run.size, run.size)
    })
  })
}

/** What stands, or blooms, in one season only: a small open ring, neither gain nor loss. */
function paintSingle(frame: Frame, unit: Float64Array, classes: Uint8Array, run: Run): void {
  const radius = Math.max(1, Math.min(3, run.size / 3))
  strokeEach(frame, unit, run, frame.palette.ink2, (pen, x, y, i) => {
    if (classes[i] !== single) return
    pen.moveTo(x + radius, y)
    pen.arc(x, y, radius, 0, 2 * Math.PI)
  })
}
