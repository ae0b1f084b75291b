import type { Points } from '../space/sample'
import { type Kernel, lookUp } from './kernel'

/**
 * Demand points as struct of arrays. The points of a planting are alike in what they want and carry, so a point is
 * only its place and what it receives: no objects per plant. Each planting's points are sorted into cells, row by row,
 * and a tile is the run of one planting's points in one cell: a station reads whole tiles as contiguous runs, and
 * passes over plantings and rows of tiles that it does not reach. Boxes are minX, maxX, minY, maxY, … in metres.
 */
export type Field = {
  /** Metres in the plan's plane, sorted by planting and cell. */
  readonly x: Float64Array
  readonly y: Float64Array
  /** Position of each sorted point in its planting's own order. */
  readonly order: Uint32Array
  /** First point, tile and row of each group (planting or forage area); one more entry than there are groups. */
  readonly groupStart: Uint32Array
  readonly groupTile: Uint32Array
  readonly groupRow: Uint32Array
  readonly groupBox: Float64Array
  /** First tile of each row of tiles; one more entry than there are rows. */
  readonly rowTile: Uint32Array
  readonly rowBox: Float64Array
  /** First point of each tile; one more entry than there are tiles. */
  readonly tileStart: Uint32Array
  readonly tileBox: Float64Array
}

/** Cells of this side hold 50 to 150 plants of an orchard: long enough runs, short enough to skip; m. */
const cell = 32

export function fieldOf(groups: readonly Points[]): Field {
  const total = groups.reduce((sum, points) => sum + points.length / 2, 0)
  const x = new Float64Array(total)
  const y = new Float64Array(total)
  const order = new Uint32Array(total)
  const groupStart = [0]
  const groupTile = [0]
  const groupRow = [0]
  const rowTile = [0]
  const tileStart = [0]
  const tileBox: number[] = []
  let at = 0
  for (const points of groups) {
    const { sorted, ends, columns } = sortIntoCells(points)
    const first = at
    for (let c = 0; c < ends.length; c += 1) {
      const end = first + ends[c]!
      if (end > at) tileStart.push(end)
      for (; at < end; at += 1) {
        const point = sorted[at - first]!
        x[at] = points[2 * point]!
        y[at] = points[2 * point + 1]!
        order[at] = point
      }
      const isRowDone = (c + 1) % columns === 0
      if (isRowDone && tileStart.length - 1 > rowTile.at(-1)!) rowTile.push(tileStart.length - 1)
    }
    groupStart.push(at)
    groupTile.push(tileStart.length - 1)
    groupRow.push(rowTile.length - 1)
  }
  for (let tile = 0; tile + 1 < tileStart.length; tile += 1) {
    const box = emptyBox()
    for (let i = tileStart[tile]!; i < tileStart[tile + 1]!; i += 1) widen(box, x[i]!, y[i]!)
    tileBox.push(...box)
  }
  const rowBox = hulls(rowTile, tileBox)
  return {
    x,
    y,
    order,
    groupStart: Uint32Array.from(groupStart),
    groupTile: Uint32Array.from(groupTile),
    groupRow: Uint32Array.from(groupRow),
    groupBox: Float64Array.from(hulls(groupRow, rowBox)),
    rowTile: Uint32Array.from(rowTile),
    rowBox: Float64Array.from(rowBox),
    tileStart: Uint32Array.from(tileStart),
    tileBox: Float64Array.from(tileBox),
  }
}

/** The boxes round each stretch of boxes from one start to the next. */
function hulls(starts: readonly number[], boxes: readonly number[]): number[] {
  const round: number[] = []
  for (let i = 0; i + 1 < starts.length; i += 1) {
    const box = emptyBox()
    for (let j = starts[i]!; j < starts[i + 1]!; j += 1) {
      widen(box, boxes[4 * j]!, boxes[4 * j + 2]!)
      widen(box, boxes[4 * j + 1]!, boxes[4 * j + 3]!)
    }
    round.push(...box)
  }
  return round
}

type Box = [minX: number, maxX: number, minY: number, maxY: number]

/** Holds nothing, meets nothing. */
function emptyBox(): Box {
  return [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
}

function widen(box: Box, x: number, y: number): void {
  if (x < box[0]) box[0] = x
  if (x > box[1]) box[1] = x
  if (y < box[2]) box[2] = y
  if (y > box[3]) box[3] = y
}

/**
 * Indices of a planting's points cell by cell (counting sort) and where each cell's end; cells go row by row. Within a
 * cell points keep their order.
 */
function sortIntoCells(points: Points): { sorted: Uint32Array; ends: Uint32Array; columns: number } {
  const count = points.length / 2
  if (count === 0) return { sorted: new Uint32Array(0), ends: new Uint32Array(0), columns: 1 }
  const box = emptyBox()
  for (let i = 0; i < count; i += 1) widen(box, points[2 * i]!, points[2 * i + 1]!)
  const [minX, maxX, minY, maxY] = box
  // Never more cells than points, however far apart the points lie.
  const side = Math.max(cell, Math.sqrt(((maxX - minX + 1) * (maxY - minY + 1)) / count))
  const columns = Math.floor((maxX - minX) / side) + 1
  const rows = Math.floor((maxY - minY) / side) + 1
  const cellOf = new Uint32Array(count)
  const ends = new Uint32Array(columns * rows)
  for (let i = 0; i < count; i += 1) {
    const column = Math.floor((points[2 * i]! - minX) / side)
    const row = Math.floor((points[2 * i + 1]! - minY) / side)
    cellOf[i] = row * columns + column
    ends[cellOf[i]!]! += 1
  }
  for (let c = 1; c < ends.length; c += 1) ends[c]! += ends[c - 1]!
  const next = ends.slice()
  const sorted = new Uint32Array(count)
  for (let i = count - 1; i >= 0; i -= 1) {
    const c = cellOf[i]!
    next[c]! -= 1
    sorted[next[c]!] = i
  }
  return { sorted, ends, columns }
}

/** Where a tile stands to a disc: 0 = all of it outside, 1 = cut by the edge, 2 = all of it inside (edge counted in). */
export function tileInDisc(field: Field, tile: number, x: number, y: number, radius: number): 0 | 1 | 2 {
  const box = field.tileBox
  const left = box[4 * tile]! - x
  const right = x - box[4 * tile + 1]!
  const below = box[4 * tile + 2]! - y
  const above = y - box[4 * tile + 3]!
  const nearX = Math.max(left, right, 0)
  const nearY = Math.max(below, above, 0)
  const limit = radius * radius
  if (nearX * nearX + nearY * nearY > limit) return 0
  const farX = Math.max(-left, -right)
  const farY = Math.max(-below, -above)
  return farX * farX + farY * farY <= limit ? 2 : 1
}

/**
 * Distance decay from one place to the points of one tile, written to `decays` at the points' own positions.
 * Returns their sum. `isCut`: the tile straddles the edge of the range, so every point is tested against it.
 */
export function decaysOfTile(
  field: Field,
  tile: number,
  place: { readonly x: number; readonly y: number },
  kernel: Kernel,
  isCut: boolean,
  decays: Float64Array,
): number {
  const { x, y, tileStart } = field
  const limit = isCut ? kernel.range * kernel.range : Number.POSITIVE_INFINITY
  let sum = 0
  for (let i = tileStart[tile]!; i < tileStart[tile + 1]!; i += 1) {
    const dx = x[i]! - place.x
    const dy = y[i]! - place.y
    const square = dx * dx + dy * dy
    const decay = square <= limit ? lookUp(kernel, Math.sqrt(square)) : 0
    decays[i] = decay
    sum += decay
  }
  return sum
}
