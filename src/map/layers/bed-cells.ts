import type { Geometry } from '#geo/plan/plan'
import type { Frame } from './canvas-layer'
import { type Cover, coverPattern } from './hatch'
import { eachSeen, type Run } from './seen'
import { trace } from './trace'

export type BedLook = {
  /** Colour of a cell; null leaves it bare. */
  readonly colourOf: (i: number) => string | null
  /** What lies over a cell; null leaves it plain. */
  readonly coverOf: (i: number) => Cover | null
}

/** Cells are laid from one corner, so an edge may cut off the middle of the next: shades run on over such ground, in cells across. */
const runOn = [4, 2.4, 1.5, 1]
/** From this size on a cell can be told from its neighbours, pixels. */
const smallestCell = 6
/** A bed of so few cells is filled whole at any size that can be seen. */
const fewCells = 64
const smallestOfFew = 2

/** Whether the edge of a bed can be seen apart from its cells, so that they must fit it. */
export function isFitted({ from, to, size }: Run): boolean {
  return size >= (to - from <= fewCells ? smallestOfFew : smallestCell)
}

/** The cells of a bed, cut to its outline, none of which stays bare where its cells end short of an edge. */
export function paintBed(
  frame: Frame,
  unit: Float64Array,
  { run, outline }: { run: Run; outline: Geometry },
  look: BedLook,
): void {
  const { context } = frame
  context.save()
  trace(frame, outline)
  context.clip('evenodd')
  const colour = alikeIn(run, look.colourOf)
  if (colour === undefined) paintCells(frame, unit, run, look.colourOf, runOn)
  else fillWhole(frame, outline, colour)
  const patternOf = (cover: Cover | null) => cover && coverPattern(frame, cover)
  const cover = alikeIn(run, look.coverOf)
  if (cover === undefined) paintCells(frame, unit, run, i => patternOf(look.coverOf(i)), [1])
  else fillWhole(frame, outline, patternOf(cover))
  context.restore()
}

/** What all cells have in common; undefined where they differ. */
function alikeIn<T>({ from, to }: Run, of: (i: number) => T): T | undefined {
  const first = of(from)
  for (let i = from + 1; i < to; i += 1) if (of(i) !== first) return undefined
  return first
}

function fillWhole(frame: Frame, outline: Geometry, fill: string | CanvasPattern | null): void {
  if (fill === null) return
  trace(frame, outline)
  frame.context.fillStyle = fill
  frame.context.fill('evenodd')
}

function paintCells(
  frame: Frame,
  unit: Float64Array,
  run: Run,
  fillOf: (i: number) => string | CanvasPattern | null,
  sizes: readonly number[],
): void {
  const { context } = frame
  for (const times of sizes) {
    const size = run.size * times
    eachSeen(frame, unit, { ...run, size }, (x, y, i) => {
      const fill = fillOf(i)
      if (fill === null) return
      context.fillStyle = fill
      context.fillRect(x - size / 2, y - size / 2, size, size)
    })
  }
}
