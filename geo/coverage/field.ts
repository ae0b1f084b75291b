import type { Points } from '../space/sample'
import { type Kernel, taylor1, taylor2, taylor3 } from './kernel'

/**
 * Demand points as struct of arrays. The points of a planting are alike in what they want and carry, so a point is
 * only its place and what it receives: no objects per plant. Each planting's points are sorted into cells, and a tile
 * is the run of one planting's points in one cell: a station reads whole tiles as contiguous runs.
 */
export type Field = {
  /** Metres in the plan's plane, sorted by planting and cell. */
  readonly x: Float64Array
  readonly y: Float64Array
  /** Position of each sorted point in its planting's own order. */
  readonly order: Uint32Array
  /** First point of each group (planting or forage area); one more entry than there are groups. */
  readonly groupStart: Uint32Array
  /** First tile of each group; one more entry than there are groups. */
  readonly groupTile: Uint32Array
  /** First point of each tile; one more entry than there are tiles. */
  readonly tileStart: Uint32Array
  /** Boxes of the tiles: minX, maxX, minY, maxY, … */
  readonly tileBox: Float64Array
}

/** Cells of this side hold 50 to 150 plants of an orchard: long enough runs, short enough to skip; m. */
const cell = 32

export function fieldOf(groups: readonly Points[]): Field {
  const total = groups.reduce((sum, points) => sum + points.length / 2, 0)
  const x = new Float64Array(total)
  const y = new Float64Array(total)
  const order = new Uint32Array(total)
  const groupStart = new Uint32Array(groups.length + 1)
  const groupTile = new Uint32Array(groups.length + 1)
  const tileStart: number[] = []
  const tileBox: number[] = []
  let at = 0
  groups.forEach((points, group) => {
    for (const run of sortIntoCells(points)) {
      tileStart.push(at)
      let minX = Number.POSITIVE_INFINITY
      let maxX = Number.NEGATIVE_INFINITY
      let minY = Number.POSITIVE_INFINITY
      let maxY = Number.NEGATIVE_INFINITY
      for (const point of run) {
        const px = points[2 * point]!
        const py = points[2 * point + 1]!
        x[at] = px
        y[at] = py
        order[at] = point
        at += 1
        minX = Math.min(minX, px)
        maxX = Math.max(maxX, px)
        minY = Math.min(minY, py)
        maxY = Math.max(maxY, py)
      }
      tileBox.push(minX, maxX, minY, maxY)
    }
    groupStart[group + 1] = at
    groupTile[group + 1] = tileStart.length
  })
  tileStart.push(at)
  return {
    x,
    y,
    order,
    groupStart,
    groupTile,
    tileStart: Uint32Array.from(tileStart),
    tileBox: Float64Array.from(tileBox),
  }
}

/** Indices of a planting's points cell by cell (counting sort); within a cell they keep their order. */
function sortIntoCells(points: Points): Uint32Array[] {
  const count = points.length / 2
  if (count === 0) return []
  let minX = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (let i = 0; i < count; i += 1) {
    const px = points[2 * i]!
    const py = points[2 * i + 1]!
    if (px < minX) minX = px
    if (px > maxX) maxX = px
    if (py < minY) minY = py
    if (py > maxY) maxY = py
  }
  // Never more cells than points, however far apart the points lie.
  const side = Math.max(cell, Math.sqrt(((maxX - minX + 1) * (maxY - minY + 1)) / count))
  const columns = Math.floor((maxX - minX) / side) + 1
  const rows = Math.floor((maxY - minY) / side) + 1
  const cellOf = new Uint32Array(count)
  const ends = new Uint32Array(columns * rows + 1)
  for (let i = 0; i < count; i += 1) {
    const column = Math.floor((points[2 * i]! - minX) / side)
    const row = Math.floor((points[2 * i + 1]! - minY) / side)
    cellOf[i] = row * columns + column
    ends[cellOf[i]! + 1]! += 1
  }
  for (let c = 1; c < ends.length; c += 1) ends[c]! += ends[c - 1]!
  const next = ends.slice()
  const sorted = new Uint32Array(count)
  for (let i = 0; i < count; i += 1) {
    const c = cellOf[i]!
    sorted[next[c]!] = i
    next[c]! += 1
  }
  const runs: Uint32Array[] = []
  for (let c = 0; c + 1 < ends.length; c += 1) {
    if (ends[c + 1]! > ends[c]!) runs.push(sorted.subarray(ends[c]!, ends[c + 1]!))
  }
  return runs
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
  const { table, perMetre, range } = kernel
  const px = place.x
  const py = place.y
  const from = tileStart[tile]!
  const to = tileStart[tile + 1]!
  let sum = 0
  if (isCut) {
    const limit = range * range
    for (let i = from; i < to; i += 1) {
      const dx = x[i]! - px
      const dy = y[i]! - py
      const square = dx * dx + dy * dy
      if (square > limit) {
        decays[i] = 0
        continue
      }
      const position = Math.sqrt(square) * perMetre
      const j = (position + 0.5) | 0
      const f = j - position
      const k = table[j]! * (1 + f * (taylor1 + f * (taylor2 + f * taylor3)))
      decays[i] = k
      sum += k
    }
    return sum
  }
  // Two at a time with sums of their own: the additions of one do not wait for the other's.
  let other = 0
  let i = from
  for (; i + 1 < to; i += 2) {
    const dx0 = x[i]! - px
    const dy0 = y[i]! - py
    const dx1 = x[i + 1]! - px
    const dy1 = y[i + 1]! - py
    const position0 = Math.sqrt(dx0 * dx0 + dy0 * dy0) * perMetre
    const position1 = Math.sqrt(dx1 * dx1 + dy1 * dy1) * perMetre
    const j0 = (position0 + 0.5) | 0
    const j1 = (position1 + 0.5) | 0
    const f0 = j0 - position0
    const f1 = j1 - position1
    const k0 = table[j0]! * (1 + f0 * (taylor1 + f0 * (taylor2 + f0 * taylor3)))
    const k1 = table[j1]! * (1 + f1 * (taylor1 + f1 * (taylor2 + f1 * taylor3)))
    decays[i] = k0
    decays[i + 1] = k1
    sum += k0
    other += k1
  }
  if (i < to) {
    const dx = x[i]! - px
    const dy = y[i]! - py
    const position = Math.sqrt(dx * dx + dy * dy) * perMetre
    const j = (position + 0.5) | 0
    const f = j - position
    const k = table[j]! * (1 + f * (taylor1 + f * (taylor2 + f * taylor3)))
    decays[i] = k
    sum += k
  }
  return sum + other
}

/**
 * Adds `by` to the count of every point of `group` within `radius` of a place (edge counted in) and marks the tiles
 * that hold such points.
 */
export function countNear(
  field: Field,
  group: number,
  place: { readonly x: number; readonly y: number; readonly radius: number },
  by: 1 | -1,
  counts: Uint16Array,
  marks: Uint8Array,
): void {
  const { x, y, tileStart, groupTile } = field
  const limit = place.radius * place.radius
  for (let tile = groupTile[group]!; tile < groupTile[group + 1]!; tile += 1) {
    const standing = tileInDisc(field, tile, place.x, place.y, place.radius)
    if (standing === 0) continue
    marks[tile] = 1
    for (let i = tileStart[tile]!; i < tileStart[tile + 1]!; i += 1) {
      const dx = x[i]! - place.x
      const dy = y[i]! - place.y
      if (standing === 2 || dx * dx + dy * dy <= limit) counts[i]! += by
    }
  }
}
