import { bloomWeight } from '#geo/bloom/bloom'
import type { BloomPair, Coverage, Group, StationInput } from '#geo/coverage/coverage'
import { type Field, fieldOf } from '#geo/coverage/field'
import { backgroundPull, decayLength, type Kernel, kernelOf } from '#geo/coverage/kernel'
import { bestRelease, flightCurve } from '#geo/flight/flight'
import type { Random } from '#geo/random'

/** Side of the square that plantings and stations lie in, m. */
export const side = 420

function grid(x: number, y: number, columns: number, rows: number, pitch: number): Float64Array {
  return Float64Array.from({ length: 2 * columns * rows }, (_, i) => {
    const point = i >> 1
    return i % 2 === 0 ? x + 4 * (point % columns) : y + pitch * Math.floor(point / columns)
  })
}

function bloom(full: number, days: number): BloomPair {
  const open = { start: full - 4, values: Float64Array.from({ length: days }, (_, i) => (days - i) / days) }
  return { open, weight: bloomWeight(open) }
}

const bees = [
  { lag: 8, spreadDays: 3, nestingLife: 18, effectiveness: 1, radius: 67, kernel: kernelOf(decayLength(67), 160) },
  { lag: 5, spreadDays: 2, nestingLife: 25, effectiveness: 0.7, radius: 31, kernel: kernelOf(decayLength(31), 90) },
] as const

/** Overlapping blocks, a hedge, one tree, a bed of forage, a planting without bloom; two bees with ranges that cut them. */
export function orchard(): { field: Field; groups: Group[]; blooms: BloomPair[] } {
  return {
    field: fieldOf([
      grid(0, 0, 30, 40, 1.67),
      grid(60, 30, 25, 30, 3.1),
      grid(300, 10, 2, 97, 4),
      Float64Array.of(210.5, 300.25),
      grid(150, 250, 20, 15, 2),
      grid(20, 350, 10, 4, 6),
    ]),
    groups: [
      { wanted: 0.4, blossom: 600, bloom: 0, isForage: false },
      { wanted: 0.25, blossom: 420, bloom: 1, isForage: false },
      { wanted: 0.9, blossom: 800, bloom: 1, isForage: false },
      { wanted: 1.5, blossom: 2000, bloom: 2, isForage: false },
      { wanted: 0, blossom: 90, bloom: 2, isForage: true },
      { wanted: 0.3, blossom: 100, bloom: null, isForage: false },
    ],
    blooms: [bloom(100, 14), bloom(108, 17), bloom(125, 30)],
  }
}

export function station(random: Random, blooms: readonly BloomPair[], kernel?: Kernel): StationInput {
  const bee = bees[random() < 0.6 ? 0 : 1]
  const females = random() < 0.1 ? 0 : Math.floor(1 + 300 * random())
  const own = kernel ?? bee.kernel
  return {
    x: side * random(),
    y: side * random(),
    kernel: own,
    radius: bee.radius,
    background: backgroundPull(3, own.alpha, own.range),
    effectiveness: bee.effectiveness,
    females,
    flight: flightCurve([{ day: 80 + Math.floor(30 * random()), females }], bee, 60, 200),
    best: blooms.map(({ weight }) => bestRelease(weight, bee)),
  }
}

/** The points where two coverages differ in any bit, and whether their totals are the same. */
export function differences(a: Coverage, b: Coverage): { points: number; totals: boolean } {
  let points = 0
  for (let i = 0; i < a.supplied.length; i += 1) if (!Object.is(a.supplied[i], b.supplied[i])) points += 1
  return { points, totals: JSON.stringify(a.totals()) === JSON.stringify(b.totals()) }
}
