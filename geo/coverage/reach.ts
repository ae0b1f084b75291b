import { type Field, tileInDisc } from './field'
import { isMet } from './runs'

export type Disc = { readonly x: number; readonly y: number; readonly radius: number }

/**
 * How many points lie within at least one of a set of discs, group by group, kept while discs come and go. Most tiles
 * lie wholly in some disc or meet none, and counting such discs by tile settles them; only the points of the others are
 * asked one by one, and only when the sum is.
 */
export class Reach {
  readonly #field: Field
  readonly #discs = new Set<Disc>()
  /** Discs that hold a tile whole, and discs that cut it. */
  readonly #whole: Uint16Array
  readonly #cut: Uint16Array
  readonly #counts: Uint32Array
  readonly #isStale: Uint8Array

  constructor(field: Field) {
    const tiles = field.tileStart.length - 1
    this.#field = field
    this.#whole = new Uint16Array(tiles)
    this.#cut = new Uint16Array(tiles)
    this.#counts = new Uint32Array(tiles)
    this.#isStale = new Uint8Array(tiles)
  }

  get bytes(): number {
    return [this.#whole, this.#cut, this.#counts, this.#isStale].reduce((bytes, array) => bytes + array.byteLength, 0)
  }

  clear(): void {
    this.#discs.clear()
    for (const counts of [this.#whole, this.#cut, this.#counts, this.#isStale]) counts.fill(0)
  }

  add(disc: Disc): void {
    this.#discs.add(disc)
    this.#count(disc, 1)
  }

  remove(disc: Disc): void {
    if (this.#discs.delete(disc)) this.#count(disc, -1)
  }

  /** Points of a group that lie in a disc, edges counted in. */
  reachedOf(group: number): number {
    const { groupTile } = this.#field
    let reached = 0
    for (let tile = groupTile[group]!; tile < groupTile[group + 1]!; tile += 1) {
      if (this.#isStale[tile] === 1) {
        this.#counts[tile] = this.#reachedIn(tile)
        this.#isStale[tile] = 0
      }
      reached += this.#counts[tile]!
    }
    return reached
  }

  #count({ x, y, radius }: Disc, by: 1 | -1): void {
    const { groupBox, groupRow, rowBox, rowTile } = this.#field
    for (let group = 0; group + 1 < groupRow.length; group += 1) {
      if (!isMet(groupBox, group, x, y, radius)) continue
      for (let row = groupRow[group]!; row < groupRow[group + 1]!; row += 1) {
        if (!isMet(rowBox, row, x, y, radius)) continue
        for (let tile = rowTile[row]!; tile < rowTile[row + 1]!; tile += 1) {
          const standing = tileInDisc(this.#field, tile, x, y, radius)
          if (standing === 0) continue
          if (standing === 2) this.#whole[tile]! += by
          else this.#cut[tile]! += by
          this.#isStale[tile] = 1
        }
      }
    }
  }

  #reachedIn(tile: number): number {
    const { x, y, tileStart, tileBox } = this.#field
    const from = tileStart[tile]!
    const to = tileStart[tile + 1]!
    if (this.#whole[tile]! > 0) return to - from
    if (this.#cut[tile] === 0) return 0
    const discs = [...this.#discs].filter(disc => isMet(tileBox, tile, disc.x, disc.y, disc.radius))
    let reached = 0
    for (let i = from; i < to; i += 1) {
      if (discs.some(disc => (x[i]! - disc.x) ** 2 + (y[i]! - disc.y) ** 2 <= disc.radius ** 2)) reached += 1
    }
    return reached
  }
}
