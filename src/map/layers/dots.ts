import type { Frame } from './canvas-layer'
import { hatch } from './hatch'
import { eachSeen, type Run } from './seen'
import { rgbOf, type Squares, squaresOn } from './squares'

/**
 * Plants too small for a circle and a stroke each, and what their painting remembers: which step each pixel shows, so that
 * plants which fall on one pixel are filled once, and which squares of the hatching lie over plants that are short, so
 * that they are hatched once, over all dots.
 */
export type Dots = {
  /** Of the picture that they are for. */
  readonly size: string
  readonly squares: Squares
  readonly pixels: Uint8Array
  readonly hatched: Uint8Array
  readonly columns: number
}

const hatchGap = 7
const smallestDot = 1.5

/** An empty picture; `spare` is one that is no longer needed. Megabytes made anew at every painting would keep the collector busy. */
export function dotsOn({ width, height, ratio }: Frame, spare: Dots | null): Dots {
  const size = `${width} ${height} ${ratio}`
  if (spare?.size === size) {
    spare.squares.clear()
    spare.pixels.fill(0)
    spare.hatched.fill(0)
    return spare
  }
  const columns = Math.ceil(width / hatchGap) + 2
  return {
    size,
    squares: squaresOn({ width, height, ratio }),
    pixels: new Uint8Array((Math.ceil(width) + 1) * (Math.ceil(height) + 1)),
    hatched: new Uint8Array(columns * (Math.ceil(height / hatchGap) + 2)),
    columns,
  }
}

/** Plants of which nothing is known. */
export function addPlain(frame: Frame, unit: Float64Array, run: Run, { squares }: Dots): void {
  const { context, palette } = frame
  const size = Math.min(run.size, run.isRound ? 5 : run.size)
  const colour = rgbOf(context, run.isRound ? palette.ink : palette.line)
  eachSeen(frame, unit, run, (x, y) => squares.add(x, y, size, colour))
}

/** Closed blossom, where there is no room for an outline. */
export function addClosed(frame: Frame, unit: Float64Array, run: Run, { squares }: Dots): void {
  const dot = Math.min(run.size / 2, smallestDot)
  const colour = rgbOf(frame.context, frame.palette.ink2)
  eachSeen(frame, unit, run, (x, y) => squares.add(x, y, dot, colour))
}

type Shaded = { readonly classes: Uint8Array; readonly dots: Dots }

export function addShaded(frame: Frame, unit: Float64Array, run: Run, { classes, dots }: Shaded): void {
  const { context, palette, left, top, width, height } = frame
  const across = Math.ceil(width) + 1
  const [shiftX, shiftY] = [left % hatchGap, top % hatchGap]
  const colours = palette.cover.map(each => rgbOf(context, each))
  eachSeen(frame, unit, run, (x, y, i) => {
    const step = classes[i]!
    const colour = colours[step]
    if (colour === undefined) return
    if (x >= 0 && y >= 0 && x < width && y < height) {
      const pixel = Math.floor(y) * across + Math.floor(x)
      if (dots.pixels[pixel] === step + 1) return
      dots.pixels[pixel] = step + 1
    }
    dots.squares.add(x, y, run.size, colour)
    if (step >= 4) return
    const column = Math.floor((x + shiftX) / hatchGap)
    const row = Math.floor((y + shiftY) / hatchGap)
    dots.hatched[(row + 1) * dots.columns + column + 1] = 1
  })
}

/** Hatching over dots that are too small for a stroke each: strips of it run along rows that are short of bees. */
export function paintHatch(frame: Frame, { hatched, columns }: Dots): void {
  const { context, palette, left, top } = frame
  const pattern = hatch(context, palette.ink2, hatchGap)
  if (pattern === null || !hatched.includes(1)) return
  const [shiftX, shiftY] = [left % hatchGap, top % hatchGap]
  // The pattern keeps to the ground, not to the canvas, so that it stands still while the map is moved.
  pattern.setTransform(new DOMMatrix([1, 0, 0, 1, -shiftX, -shiftY]))
  context.fillStyle = pattern
  for (const { row, from, to } of stretches(hatched, columns)) {
    const [x, y] = [(from - 1) * hatchGap - shiftX, (row - 1) * hatchGap - shiftY]
    context.fillRect(x, y, (to - from) * hatchGap, hatchGap)
  }
}

/** Squares side by side are filled at once. */
export function stretches(
  marked: Uint8Array,
  columns: number,
): readonly { readonly row: number; readonly from: number; readonly to: number }[] {
  const found: { row: number; from: number; to: number }[] = []
  for (let at = 0; at < marked.length; at += 1) {
    if (marked[at] === 0) continue
    const [row, column] = [Math.floor(at / columns), at % columns]
    const last = found.at(-1)
    if (last?.row === row && last.to === column) last.to += 1
    else found.push({ row, from: column, to: column + 1 })
  }
  return found
}
