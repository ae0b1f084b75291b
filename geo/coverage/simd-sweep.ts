import type { Field } from './field'
import type { Kernel } from './kernel'
import { scratchLength } from './runs'
import { type Allocate, type Place, PlainSweep } from './sweep'
import { asideLength, sweepProgram, tableLength } from './sweep-program'

/** As much of the WebAssembly interface as is used here: it belongs to the language's hosts, not to its library. */
type Memory = { readonly buffer: ArrayBuffer }
type Exports = Readonly<Record<'measure' | 'add' | 'sumTiles', (...values: number[]) => number>>
declare const WebAssembly: {
  Module: new (bytes: Uint8Array<ArrayBuffer>) => object
  Memory: new (size: { readonly initial: number; readonly maximum: number }) => Memory
  Instance: new (
    module: object,
    imports: { readonly host: { readonly memory: Memory } },
  ) => { readonly exports: Exports }
}

const pageSize = 2 ** 16
/** Bytes of a run's three numbers. */
const runSize = 12

/** `PlainSweep` in WebAssembly: the arrays stand in its memory, which is given out once and never grows. */
class SimdSweep extends PlainSweep {
  readonly #memory: Memory
  readonly #exports: Exports
  readonly #table: Float64Array
  #kernel: Kernel | null = null

  constructor(field: Field, module: object) {
    const tiles = field.tileStart.length - 1
    const doubles = tableLength + asideLength + 3 * field.x.length + scratchLength(field) + 3 * tiles
    // The last round of the last run may read three doubles beyond it.
    const pages = Math.ceil((8 * (doubles + 4) + 4 * (4 * tiles + 1) + tiles + 64) / pageSize)
    const memory = new WebAssembly.Memory({ initial: pages, maximum: pages })
    const allocate = inside(memory.buffer)
    const table = allocate.doubles(tableLength + asideLength)
    super(field, allocate)
    this.#memory = memory
    this.#table = table
    this.#exports = new WebAssembly.Instance(module, { host: { memory } }).exports
  }

  override get bytes(): number {
    return this.#memory.buffer.byteLength
  }

  override measure(count: number, place: Place, kernel: Kernel): void {
    if (!this.#hasTable(kernel)) {
      super.measure(count, place, kernel)
      return
    }
    const { runs, figures, x, y, decays } = this
    const { range, toNearest, c1, c2, c3 } = kernel
    this.#exports.measure(
      runs.byteOffset,
      runs.byteOffset + runSize * count,
      figures.byteOffset,
      x.byteOffset,
      y.byteOffset,
      decays.byteOffset,
      place.x,
      place.y,
      range * range,
      toNearest,
      c1,
      c2,
      c3,
    )
  }

  override add(count: number, shift: number): void {
    const { runs, figures, supplied, decays } = this
    this.#exports.add(
      runs.byteOffset,
      runs.byteOffset + runSize * count,
      figures.byteOffset,
      supplied.byteOffset,
      decays.byteOffset,
      shift,
    )
  }

  override sumTiles(tile: number, end: number, wanted: number): void {
    const { tileStart, isStale, tileTotals, supplied } = this
    this.#exports.sumTiles(
      tile,
      end,
      tileStart.byteOffset,
      isStale.byteOffset,
      tileTotals.byteOffset,
      supplied.byteOffset,
      wanted,
    )
  }

  /** Puts the kernel's table where the program looks; false where it is too long. */
  #hasTable(kernel: Kernel): boolean {
    if (kernel.table.length > tableLength) return false
    if (this.#kernel !== kernel) this.#table.set(kernel.table)
    this.#kernel = kernel
    return true
  }
}

/** Arrays one after another in one buffer. */
function inside(buffer: ArrayBuffer): Allocate {
  let at = 0
  const take = (length: number, align: number): number => {
    const start = Math.ceil(at / align) * align
    at = start + length
    return start
  }
  return {
    doubles: length => new Float64Array(buffer, take(8 * length, 16), length),
    integers: length => new Uint32Array(buffer, take(4 * length, 4), length),
    bytes: length => new Uint8Array(buffer, take(length, 1), length),
  }
}

/** undefined until asked for; null where the host has no WebAssembly with vectors, or forbids it. */
let compiled: object | null | undefined

/** The sweep for a field: by vectors where the host can, else in plain JavaScript. Both give the same bits. */
export function sweepOf(field: Field): PlainSweep {
  if (compiled === undefined) compiled = orNull(() => new WebAssembly.Module(sweepProgram()))
  const module = compiled
  // Hosts also limit how much memory they hand out this way.
  const sweep = module === null ? null : orNull(() => new SimdSweep(field, module))
  return sweep ?? new PlainSweep(field)
}

function orNull<T>(make: () => T): T | null {
  try {
    return make()
  } catch {
    return null
  }
}
