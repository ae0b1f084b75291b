import type { StationInput } from '../coverage/coverage'
import { decaysOfTile, tileInDisc } from '../coverage/field'
import type { TimingGround } from './timing-ground'

/**
 * Points of plantings that some of a set of stations reach, gathered into cells: every point for itself, or on large
 * plans the points of one planting in one square. Sums over a cell are capped as a whole, which flatters a little.
 */
export type ReachedCells = {
  /** Females wanted, and bloom, of each cell. */
  readonly wanted: Float64Array
  readonly bloom: Uint32Array
  /** Of each station: the cells it reaches, and their blossom times distance decay. */
  readonly reach: readonly { readonly cell: Uint32Array; readonly pull: Float64Array }[]
  /** Sums of a figure of the field's points over the cells. */
  summed(ofPoints: Float64Array): Float64Array
}

const noCell = 0xffffffff

/** Cells for `stations`, at most about `most` of them: the squares grow until they are few enough. */
export function reachedCells(ground: TimingGround, stations: readonly StationInput[], most: number): ReachedCells {
  for (let side = 0; ; side = side === 0 ? 6 : side * 1.4) {
    const cells = cellsOf(ground, stations, side)
    // A planting of its own cannot be thinner than one cell, so that the squares need not grow for ever.
    if (cells.wanted.length <= most || side > 500) return cells
  }
}

function cellsOf({ field, demand }: TimingGround, stations: readonly StationInput[], side: number): ReachedCells {
  const ofPoint = new Uint32Array(field.x.length).fill(noCell)
  const keys = new Map<string, number>()
  const wanted: number[] = []
  const blooms: number[] = []
  const decays = new Float64Array(field.x.length)
  const cellAt = (ground: number, i: number): number => {
    if (ofPoint[i] !== noCell) return ofPoint[i]!
    const key = side > 0 ? `${ground} ${Math.floor(field.x[i]! / side)} ${Math.floor(field.y[i]! / side)}` : `${i}`
    let cell = keys.get(key)
    if (cell === undefined) {
      cell = wanted.length
      keys.set(key, cell)
      wanted.push(0)
      blooms.push(demand.grounds[ground]!.group.bloom!)
    }
    ofPoint[i] = cell
    wanted[cell]! += demand.grounds[ground]!.group.wanted
    return cell
  }
  const reach = stations.map(({ x, y, kernel }) => {
    const pulls = new Map<number, number>()
    demand.grounds.forEach(({ group }, g) => {
      if (group.isForage || group.bloom === null || !(group.wanted > 0 && group.blossom > 0)) return
      for (let tile = field.groupTile[g]!; tile < field.groupTile[g + 1]!; tile += 1) {
        const standing = tileInDisc(field, tile, x, y, kernel.range)
        if (standing === 0) continue
        decaysOfTile(field, tile, { x, y }, kernel, standing === 1, decays)
        for (let i = field.tileStart[tile]!; i < field.tileStart[tile + 1]!; i += 1) {
          if (!(decays[i]! > 0)) continue
          const cell = cellAt(g, i)
          pulls.set(cell, (pulls.get(cell) ?? 0) + group.blossom * decays[i]!)
        }
      }
    })
    return { cell: Uint32Array.from(pulls.keys()), pull: Float64Array.from(pulls.values()) }
  })
  return {
    wanted: Float64Array.from(wanted),
    bloom: Uint32Array.from(blooms),
    reach,
    summed(ofPoints) {
      const sums = new Float64Array(wanted.length)
      ofPoint.forEach((cell, i) => {
        if (cell !== noCell) sums[cell]! += ofPoints[i]!
      })
      return sums
    },
  }
}
