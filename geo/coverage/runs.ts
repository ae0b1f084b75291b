import type { Field } from './field'

/** Numbers of a run: its first point, the point after its last, and where its decays go in the scratch. */
const runNumbers = 3

/** Widens chords, so that no rounding of theirs loses a point on the edge; m. */
const margin = 1e-6

/**
 * Lists the tiles of `group` that a disc meets as runs of points, from number `run` of `runs` on; tiles side by
 * side are one run, and each run's decays begin at a multiple of four. Marks those tiles. Returns the number after the
 * last run.
 */
export function runsInDisc(
  field: Field,
  group: number,
  disc: { readonly x: number; readonly y: number; readonly radius: number },
  run: number,
  runs: Uint32Array,
  marks: Uint8Array,
): number {
  const { groupBox, groupRow, rowBox, rowTile, tileBox, tileStart } = field
  const { x, y, radius } = disc
  if (!isMet(groupBox, group, x, y, radius)) return run
  let next = runNumbers * run
  let after = -1
  for (let row = groupRow[group]!; row < groupRow[group + 1]!; row += 1) {
    const nearY = Math.max(rowBox[4 * row + 2]! - y, y - rowBox[4 * row + 3]!, 0)
    const square = radius * radius - nearY * nearY
    if (square < 0) continue
    const chord = Math.sqrt(square) + margin
    const end = rowTile[row + 1]!
    let tile = rowTile[row]!
    while (tile < end && tileBox[4 * tile + 1]! < x - chord) tile += 1
    const first = tile
    for (; tile < end && tileBox[4 * tile]! <= x + chord; tile += 1) marks[tile] = 1
    if (tile === first) continue
    if (first !== after) {
      runs[next] = tileStart[first]!
      runs[next + 2] = next === 0 ? 0 : scratchAfter(runs, next)
      next += runNumbers
    }
    runs[next - 2] = tileStart[tile]!
    after = tile
  }
  return next / runNumbers
}

/** First free multiple of four after the decays of the run before `next`. */
function scratchAfter(runs: Uint32Array, next: number): number {
  return runs[next - 1]! + ((runs[next - 2]! - runs[next - 3]! + 3) & ~3)
}

/** Room for the decays of every point, were every tile a run of its own. */
export function scratchLength(field: Field): number {
  return field.x.length + 4 * (field.tileStart.length - 1)
}

/** Whether a disc meets box number `index`; the edge counted in. */
export function isMet(boxes: Float64Array, index: number, x: number, y: number, radius: number): boolean {
  const nearX = Math.max(boxes[4 * index]! - x, x - boxes[4 * index + 1]!, 0)
  const nearY = Math.max(boxes[4 * index + 2]! - y, y - boxes[4 * index + 3]!, 0)
  return nearX * nearX + nearY * nearY <= radius * radius
}
