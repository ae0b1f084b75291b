import type { Field } from './field'
import type { Kernel } from './kernel'
import { scratchLength } from './runs'

/** Where arrays come from: zeroed, and living as long as whoever asked for them. */
export type Allocate = {
  doubles(length: number): Float64Array
  integers(length: number): Uint32Array
  bytes(length: number): Uint8Array
}

const plainArrays: Allocate = {
  doubles: length => new Float64Array(length),
  integers: length => new Uint32Array(length),
  bytes: length => new Uint8Array(length),
}

export type Place = { readonly x: number; readonly y: number }

/**
 * The inner loops of a coverage and the arrays they run over. A run is a stretch of points that lie side by side: three
 * numbers in `runs`, its first point, the point after its last, and where its decays go in the scratch (a multiple of
 * four). Sums keep four parts, so that the additions of one do not wait for another's.
 */
export class PlainSweep {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly tileStart: Uint32Array
  /** Service received by each point, E; blue orchard bee females. */
  readonly supplied: Float64Array
  readonly runs: Uint32Array
  /** A number per run: what `measure` finds, what `add` multiplies by. */
  readonly figures: Float64Array
  /** Per tile: sum of min(R, E), sum of E. */
  readonly tileTotals: Float64Array
  /** 1 where a tile's totals are not those of its points. */
  readonly isStale: Uint8Array
  protected readonly decays: Float64Array

  constructor(field: Field, allocate: Allocate = plainArrays) {
    const tiles = field.tileStart.length - 1
    this.x = allocate.doubles(field.x.length)
    this.y = allocate.doubles(field.x.length)
    this.supplied = allocate.doubles(field.x.length)
    this.decays = allocate.doubles(scratchLength(field))
    this.figures = allocate.doubles(tiles)
    this.tileTotals = allocate.doubles(2 * tiles)
    this.tileStart = allocate.integers(tiles + 1)
    this.runs = allocate.integers(3 * tiles)
    this.isStale = allocate.bytes(tiles)
    this.x.set(field.x)
    this.y.set(field.y)
    this.tileStart.set(field.tileStart)
    this.isStale.fill(1)
  }

  get bytes(): number {
    const { x, y, supplied, decays, tileTotals, tileStart, runs, figures, isStale } = this
    const arrays = [x, y, supplied, decays, tileTotals, tileStart, runs, figures, isStale]
    return arrays.reduce((bytes, array) => bytes + array.byteLength, 0)
  }

  /** Decay from one place to the points of the first `count` runs, kept in the scratch; each run's sum is its figure. */
  measure(count: number, place: Place, kernel: Kernel): void {
    const { runs, figures, decays } = this
    for (let run = 0; run < count; run += 1) {
      const from = runs[3 * run]!
      const to = runs[3 * run + 1]!
      const at = runs[3 * run + 2]!
      figures[run] = this.#measureRun(from, to, place, kernel, at - from)
      // Whoever adds four at a time must find nothing between this run's decays and the next one's.
      for (let i = at + to - from; (i & 3) !== 0; i += 1) decays[i] = 0
    }
  }

  /**
   * Adds the decays just measured, times their run's figure and rounded by `shift`, to what the points are supplied.
   * The same with the figures' signs turned takes exactly that away again.
   */
  add(count: number, shift: number): void {
    const { runs, figures, decays, supplied } = this
    for (let run = 0; run < count; run += 1) {
      const from = runs[3 * run]!
      const to = runs[3 * run + 1]!
      const offset = runs[3 * run + 2]! - from
      const factor = figures[run]!
      if (factor === 0) continue
      for (let i = from; i < to; i += 1) supplied[i]! += decays[i + offset]! * factor + shift - shift
    }
  }

  /** Brings the totals of the stale among tiles `tile` to `end` up to date, for points that want `wanted` each. */
  sumTiles(tile: number, end: number, wanted: number): void {
    const { supplied, tileStart, tileTotals, isStale } = this
    for (; tile < end; tile += 1) {
      if (isStale[tile] === 0) continue
      const from = tileStart[tile]!
      const whole = from + ((tileStart[tile + 1]! - from) & ~3)
      const all = [0, 0, 0, 0]
      const met = [0, 0, 0, 0]
      for (let i = from; i < whole; i += 1) {
        all[(i - from) & 3]! += supplied[i]!
        met[(i - from) & 3]! += Math.min(supplied[i]!, wanted)
      }
      let served = met[0]! + met[2]! + (met[1]! + met[3]!)
      let sum = all[0]! + all[2]! + (all[1]! + all[3]!)
      for (let i = whole; i < tileStart[tile + 1]!; i += 1) {
        sum += supplied[i]!
        served += Math.min(supplied[i]!, wanted)
      }
      tileTotals[2 * tile] = served
      tileTotals[2 * tile + 1] = sum
      isStale[tile] = 0
    }
  }

  /** Decays of one run, kept in the scratch `offset` on from the points' own places; their sum. */
  #measureRun(from: number, to: number, place: Place, kernel: Kernel, offset: number): number {
    const { x, y, decays } = this
    const { table, perMetre, toNearest, c1, c2, c3 } = kernel
    const px = place.x
    const py = place.y
    const limit = kernel.range * kernel.range
    let [sum0, sum1, sum2, sum3] = [0, 0, 0, 0]
    for (let i = from; i < to; i += 1) {
      const dx = x[i]! - px
      const dy = y[i]! - py
      const square = dx * dx + dy * dy
      let decay = 0
      if (square <= limit) {
        const distance = Math.sqrt(square)
        const nearest = distance + toNearest - toNearest
        const rest = nearest - distance
        decay = table[(nearest * perMetre) | 0]! * (1 + rest * (c1 + rest * (c2 + rest * c3)))
      }
      decays[i + offset] = decay
      // The four parts take turns.
      const sum = sum0 + decay
      sum0 = sum1
      sum1 = sum2
      sum2 = sum3
      sum3 = sum
    }
    const parts = [sum0, sum1, sum2, sum3]
    // Whose turn it was at first, after so many turns.
    const first = (from - to) & 3
    const part = (index: number) => parts[(first + index) & 3]!
    return part(0) + part(2) + (part(1) + part(3))
  }
}
