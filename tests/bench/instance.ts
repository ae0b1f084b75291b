import { bloomWeight } from '#geo/bloom/bloom'
import type { BloomPair, Group, StationInput } from '#geo/coverage/coverage'
import { type Field, fieldOf } from '#geo/coverage/field'
import { backgroundPull, decayLength, kernelOf } from '#geo/coverage/kernel'
import { bestRelease, flightCurve } from '#geo/flight/flight'
import { seededRandom } from '#geo/random'

export type Size = { readonly name: string; readonly plants: number; readonly stations: number; readonly crops: number }

export const sizes = {
  small: { name: '2,000 x 10', plants: 2_000, stations: 10, crops: 6 },
  medium: { name: '20,000 x 100', plants: 20_000, stations: 100, crops: 8 },
  large: { name: '200,000 x 1,000', plants: 200_000, stations: 1_000, crops: 12 },
  huge: { name: '1,000,000 x 10,000', plants: 1_000_000, stations: 10_000, crops: 20 },
} as const satisfies Record<string, Size>

export type Instance = {
  readonly size: Size
  /** The points of each group, x and y in turn, and the same as a field. */
  readonly strips: readonly Float64Array[]
  readonly field: Field
  readonly groups: readonly Group[]
  readonly blooms: readonly BloomPair[]
  readonly stations: readonly StationInput[]
  /** Side of the square of land, m. */
  readonly side: number
}

/** Plants stand 4 m x 1.67 m in blocks that fill 45 % of a square; stations on a jittered grid over all of it. */
export function instanceOf(size: Size): Instance {
  const random = seededRandom(size.plants)
  const side = Math.sqrt((size.plants * 4 * 1.67) / 0.45)
  const strips = Array.from({ length: size.crops }, (_, i) => strip(i, size, side))
  const blooms = Array.from({ length: size.crops }, (_, i) => bloom(80 + 6 * i))
  const groups = strips.map((_, i) => ({ wanted: 0.4, blossom: 600, bloom: i, isForage: false }))
  const bee = { lag: 8, spreadDays: 3, nestingLife: 18 }
  const alpha = decayLength(67)
  const kernel = kernelOf(alpha, 300)
  const best = blooms.map(({ weight }) => bestRelease(weight, bee))
  const across = Math.ceil(Math.sqrt(size.stations))
  const pitch = side / across
  const stations = Array.from({ length: size.stations }, (_, i) => ({
    x: ((i % across) + 0.25 + 0.5 * random()) * pitch,
    y: (Math.floor(i / across) + 0.25 + 0.5 * random()) * pitch,
    kernel,
    radius: 67,
    background: backgroundPull(3, alpha, 300),
    effectiveness: 1,
    females: 60,
    flight: flightCurve([{ day: 75 + Math.floor(40 * random()), females: 60 }], bee, 60, 240),
    best,
  }))
  return { size, strips, field: fieldOf(strips), groups, blooms, stations, side }
}

/** One crop's strip across the land: a band of rows with a bare band beside it. */
function strip(index: number, size: Size, side: number): Float64Array {
  const count = Math.floor(size.plants / size.crops) + (index < size.plants % size.crops ? 1 : 0)
  const perRow = Math.floor(side / 1.67)
  const points = new Float64Array(2 * count)
  for (let i = 0; i < count; i += 1) {
    points[2 * i] = (index * side) / size.crops + 4 * Math.floor(i / perRow)
    points[2 * i + 1] = 1.67 * (i % perRow)
  }
  return points
}

function bloom(full: number): BloomPair {
  const values = Float64Array.from({ length: 14 }, (_, i) => (i < 5 ? (i + 1) / 5 : (14 - i) / 9))
  const open = { start: full - 4, values }
  return { open, weight: bloomWeight(open) }
}
