import type { Metres } from './plane'
import { centroid, distance, extentOf, isInside, lineLength, polygonArea, type Ring } from './shape'

/** Demand points as x, y, x, y, … in metres, in the order in which the planting has them. */
export type Points = Float64Array

/** Side of the square cells that beds and forage areas are cut into, m. */
export const cellSide = 2

/** "Below" means below by more than this, so that a point on an edge does not hang on the last bit; m. */
const tolerance = 1e-6

/** Plants along a row: at `spacing` from its first vertex, or `count` of them evenly from first to last. */
export function rowPoints(line: readonly Metres[], options: { spacing: number; count?: number | undefined }): Points {
  const length = lineLength(line)
  const { spacing, count } = options
  if (count === undefined) {
    return along(line, plantsInRow(length, spacing), i => i * spacing)
  }
  if (count === 1) return along(line, 1, () => length / 2)
  return along(line, count, i => (i * length) / (count - 1))
}

/** How many plants a row of `length` metres holds at `spacing`. */
export function plantsInRow(length: number, spacing: number): number {
  return Math.floor(length / spacing + 1e-6) + 1
}

/** Points at `count` distances along a line; a distance past the end lies on the last vertex. */
function along(line: readonly Metres[], count: number, distanceOf: (i: number) => number): Points {
  const points = new Float64Array(2 * count)
  let segment = 1
  let passed = 0
  let length = line.length > 1 ? distance(line[0]!, line[1]!) : 0
  for (let i = 0; i < count; i += 1) {
    const target = distanceOf(i)
    while (segment < line.length - 1 && target > passed + length) {
      passed += length
      segment += 1
      length = distance(line[segment - 1]!, line[segment]!)
    }
    const a = line[Math.min(segment, line.length) - 1]!
    const b = line[segment] ?? a
    const share = length > 0 ? Math.min(1, (target - passed) / length) : 0
    points[2 * i] = a.x + share * (b.x - a.x)
    points[2 * i + 1] = a.y + share * (b.y - a.y)
  }
  return points
}

export type BlockOptions = {
  /** Metres in the row, metres between rows. */
  readonly spacing: number
  readonly rowSpacing: number
  /** Degrees clockwise from true north along the rows. */
  readonly bearing: number
}

/** Plants of a block: rows parallel to `bearing`, clipped to the polygon, plants half a spacing in from each end. */
export function blockPoints(rings: readonly Ring[], options: BlockOptions): Points {
  const { spacing } = options
  const { cos, sin } = directionOf(options)
  const points: number[] = []
  eachPiece(rings, options, (across, from, to) => {
    for (let m = 0; ; m += 1) {
      const y = from + spacing * (m + 0.5)
      if (!(y < to - tolerance)) break
      points.push(across * cos + y * sin, y * cos - across * sin)
    }
  })
  return Float64Array.from(points)
}

/** A row of a block, or one piece of it where the outline cuts it; `row` counts from 0 across the block. */
export type BlockRow = { readonly row: number; readonly plants: readonly Metres[] }

/** The same plants as `blockPoints`, in the same order, row by row; pieces without a plant are left out. */
export function blockRows(rings: readonly Ring[], options: BlockOptions): readonly BlockRow[] {
  const { spacing } = options
  const { cos, sin } = directionOf(options)
  const rows: BlockRow[] = []
  eachPiece(rings, options, (across, from, to, row) => {
    const plants: Metres[] = []
    for (let m = 0; ; m += 1) {
      const y = from + spacing * (m + 0.5)
      if (!(y < to - tolerance)) break
      plants.push({ x: across * cos + y * sin, y: y * cos - across * sin })
    }
    if (plants.length > 0) rows.push({ row, plants })
  })
  return rows
}

function directionOf({ bearing }: BlockOptions): { readonly cos: number; readonly sin: number } {
  const angle = (bearing * Math.PI) / 180
  return { cos: Math.cos(angle), sin: Math.sin(angle) }
}

/** Tells of every piece of every row: where it lies across, from where to where along, and which row it is. */
function eachPiece(
  rings: readonly Ring[],
  options: BlockOptions,
  tell: (across: number, from: number, to: number, row: number) => void,
): void {
  const { rowSpacing } = options
  const { cos, sin } = directionOf(options)
  const turned = rings.map(ring => ring.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos })))
  const { minX, maxX } = extentOf(turned.flat())
  for (let j = 0; ; j += 1) {
    const across = minX + rowSpacing * (j + 0.5)
    if (!(across < maxX - tolerance)) break
    const crossings = crossingsAt(turned, across)
    for (let piece = 0; piece + 1 < crossings.length; piece += 2)
      tell(across, crossings[piece]!, crossings[piece + 1]!, j)
  }
}

/** Where the line at `across` cuts the rings, ascending; pieces inside lie between the first and second, third and fourth … */
function crossingsAt(rings: readonly Ring[], across: number): number[] {
  const crossings: number[] = []
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i += 1) {
      const a = ring[i - 1]!
      const b = ring[i]!
      // Half-open, so that a line through a shared corner counts it once.
      if (a.x <= across !== b.x <= across) crossings.push(a.y + ((across - a.x) / (b.x - a.x)) * (b.y - a.y))
    }
  }
  return crossings.sort((a, b) => a - b)
}

/** Square cells of a bed or forage area, and the area each stands for so that they add up to the polygon's, m2. */
export function cellPoints(rings: readonly Ring[]): { readonly points: Points; readonly cellArea: number } {
  const { minX, maxX, minY, maxY } = extentOf(rings.flat())
  const points: number[] = []
  for (let i = 0; minX + cellSide * (i + 0.5) < maxX; i += 1) {
    for (let j = 0; minY + cellSide * (j + 0.5) < maxY; j += 1) {
      const centre = { x: minX + cellSide * (i + 0.5), y: minY + cellSide * (j + 0.5) }
      if (isInside(rings, centre)) points.push(centre.x, centre.y)
    }
  }
  if (points.length === 0) {
    const middle = centroid(rings)
    points.push(middle.x, middle.y)
  }
  return { points: Float64Array.from(points), cellArea: polygonArea(rings) / (points.length / 2) }
}
