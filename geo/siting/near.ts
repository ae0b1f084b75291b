import type { Metres } from '../space/plane'

/** Positions sorted into squares, to ask what stands within a distance. */
export class Nearby {
  readonly #side: number
  readonly #cells = new Map<number, Metres[]>()

  /** `radius` is the farthest distance that will be asked for, m. */
  constructor(radius: number, positions: Iterable<Metres> = []) {
    this.#side = radius
    for (const position of positions) this.add(position)
  }

  add(position: Metres): void {
    const key = this.#key(Math.floor(position.x / this.#side), Math.floor(position.y / this.#side))
    const cell = this.#cells.get(key)
    if (cell === undefined) this.#cells.set(key, [position])
    else cell.push(position)
  }

  /** Whether anything stands nearer than `radius`, by no more than rounding. */
  has({ x, y }: Metres, radius: number): boolean {
    if (radius > this.#side) throw new RangeError(`nothing is known farther off than ${this.#side} m`)
    const limit = (radius - 1e-6) ** 2
    const column = Math.floor(x / this.#side)
    const row = Math.floor(y / this.#side)
    for (let i = column - 1; i <= column + 1; i += 1) {
      for (let j = row - 1; j <= row + 1; j += 1) {
        for (const other of this.#cells.get(this.#key(i, j)) ?? []) {
          if ((other.x - x) ** 2 + (other.y - y) ** 2 < limit) return true
        }
      }
    }
    return false
  }

  #key(column: number, row: number): number {
    return column * 4e6 + row
  }
}

/** Nearest position of a line to a place, m, and where along which piece. */
export function nearestOnLine(
  line: readonly Metres[],
  { x, y }: Metres,
): { readonly distance: number; readonly at: Metres } {
  let best = { distance: Number.POSITIVE_INFINITY, at: { x, y } }
  for (let i = 0; i < line.length; i += 1) {
    const a = line[Math.max(0, i - 1)]!
    const b = line[i]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const square = dx * dx + dy * dy
    const share = square > 0 ? Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square)) : 0
    const at = { x: a.x + share * dx, y: a.y + share * dy }
    const distance = Math.hypot(at.x - x, at.y - y)
    if (distance < best.distance) best = { distance, at }
  }
  return best
}
