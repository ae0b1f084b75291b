import type { Frame } from './canvas-layer'

/** Points that are drawn alike, by their places in the list. */
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

export function countSeen(frame: Frame, unit: Float64Array, run: Run): number {
  let seen = 0
  eachSeen(frame, unit, run, () => {
    seen += 1
  })
  return seen
}
