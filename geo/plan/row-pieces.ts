import { cut, isOnTheWay } from '../space/lines'
import type { Metres } from '../space/plane'
import { plantsInRow } from '../space/sample'
import { distance, lineLength } from '../space/shape'

/** A row as far as its plants go: line in the plan's plane, metres between plants, or a count that stands evenly. */
export type RowLine = {
  readonly line: readonly Metres[]
  readonly spacing: number
  readonly count?: number | undefined
}
export type Piece = { readonly line: readonly Metres[]; readonly count: number | undefined }

/** Positions are kept to a tenth of a millimetre: a row runs on this far past its last plant, so that it holds it; m. */
const spare = 0.01
/** More than rounding moves an end by: a row that ends this far before its next plant does not get it; m. */
const hair = 0.0006
/** A line shorter than this is hard to take hold of, m. */
const tenth = 0.1
/** Corners this near to the straight way came of cutting there; m. */
const straight = 0.002

export function plantsOf({ line, spacing, count }: RowLine): number {
  return count ?? plantsInRow(lineLength(line), spacing)
}

/** Metres from plant to plant. */
export function stepOf(row: RowLine): number {
  if (row.count === undefined) return row.spacing
  return row.count > 1 ? lineLength(row.line) / (row.count - 1) : row.spacing
}

/**
 * Plants `first` to `last` (from 0) as a row of their own; each stays where it is. A single plant is a stub of half a
 * step with the plant at its beginning. With `isToNext` the row keeps the bends before the next plant, so that it can be
 * joined on again.
 */
export function pieceOf(
  row: RowLine,
  first: number,
  last: number,
  { isToNext = false }: { readonly isToNext?: boolean } = {},
): Piece {
  const all = plantsOf(row)
  const length = lineLength(row.line)
  const step = stepOf(row)
  const from = first * step
  // The rest of the line past its last plant goes with the last piece, but never so far that rounding plants one more.
  const isEnd = last === all - 1
  const end = row.count === undefined ? Math.min(length, last * step + row.spacing - hair) : length
  if (first === last) {
    // Shorter than the spacing that counts for it from now on: it must not hold a second one.
    const stub = Math.min(step, row.spacing) / 2
    if (!isEnd) return { line: cut(row.line, from, from + stub), count: undefined }
    if (end - from < tenth) return { line: cut(row.line, from - stub, from).toReversed(), count: undefined }
    return { line: cut(row.line, from, end), count: undefined }
  }
  if (row.count !== undefined) {
    return { line: cut(row.line, from, isEnd ? length : last * step), count: last - first + 1 }
  }
  if (isEnd) return { line: cut(row.line, from, Math.max(end, last * step + hair)), count: undefined }
  const bend = isToNext ? lastBend(row.line, last * step, (last + 1) * step - 2 * spare) : 0
  return { line: cut(row.line, from, Math.max(bend, last * step) + spare), count: undefined }
}

/** Distance along a line of its last corner between two distances; 0 where there is none. */
function lastBend(line: readonly Metres[], after: number, before: number): number {
  let passed = 0
  let last = 0
  for (let i = 1; i < line.length - 1; i += 1) {
    passed += distance(line[i - 1]!, line[i]!)
    if (passed > after && passed < before) last = passed
  }
  return last
}

/** A copy beside a row, which holds as many plants: a line that ends on its last plant gets the spare that it needs. */
export function roomy({ line, spacing, count }: RowLine): readonly Metres[] {
  const length = lineLength(line)
  const past = length - Math.round(length / spacing) * spacing
  // One that ends further before its next plant than rounding could take off does not get that plant.
  return count === undefined && past > -hair / 2 && past < spare / 2 ? cut(line, 0, length - past + spare / 2) : line
}

/** Two rows as one, joined where they are nearest to each other, in the direction of the first. */
export function joined(a: RowLine, b: RowLine): Piece {
  const [head, tail] = [a.line[0]!, a.line.at(-1)!]
  const [from, to] = [b.line[0]!, b.line.at(-1)!]
  const ways = [
    { gap: distance(tail, from), parts: [a.line, b.line] as const },
    { gap: distance(tail, to), parts: [a.line, b.line.toReversed()] as const },
    { gap: distance(to, head), parts: [b.line, a.line] as const },
    { gap: distance(from, head), parts: [b.line.toReversed(), a.line] as const },
  ]
  const [before, after] = ways.reduce((best, way) => (way.gap < best.gap ? way : best)).parts
  const line = [...withoutEnd(before, after[0]!), ...withoutEnd(after.toReversed(), before.at(-1)!).toReversed()]
  const isCounted = a.count !== undefined || b.count !== undefined
  return { line, count: isCounted ? plantsOf(a) + plantsOf(b) : undefined }
}

/** The line without its last corner where the way on runs straight through it. */
function withoutEnd(line: readonly Metres[], next: Metres): readonly Metres[] {
  return line.length > 1 && isOnTheWay(line.at(-2)!, line.at(-1)!, next, straight) ? line.slice(0, -1) : line
}
