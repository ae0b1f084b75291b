import { seededRandom } from '#geo/random'
import type { SitingProblem } from '#geo/siting/objective'
import type { TargetProblem } from '#geo/siting/target-problem'
import { sitingProblem } from './siting-problem'

/** How service falls with distance: as bees fly, over three lengths, and two forms of location science. */
export const kernels = {
  near: (distance: number) => Math.exp(-distance / 25),
  typical: (distance: number) => Math.exp(-distance / 40),
  far: (distance: number) => Math.exp(-distance / 70),
  disc: (distance: number) => (distance <= 90 ? 1 : 0),
  cone: (distance: number) => Math.max(0, 1 - distance / 150),
} as const
export type KernelName = keyof typeof kernels

/**
 * Points in rows of three blocks on a square of 300 m, sites anywhere on it. A station of 60 females shares them among
 * points and blossom nearby in proportion to the kernel; `count` stations bring less than all points want.
 */
export function randomInstance(options: {
  readonly points: number
  readonly sites: number
  readonly kernel: KernelName
  readonly seed: number
  readonly count?: number
}): SitingProblem {
  const { points, sites, kernel, seed, count = 6 } = options
  const random = seededRandom(seed)
  const side = 300
  const corners = Array.from({ length: 3 }, () => [random() * 180, random() * 180, 60 + random() * 60] as const)
  const place = Array.from({ length: points }, (_, i) => {
    const [x, y, size] = corners[i % corners.length]!
    return [x + Math.round(random() * 12) * (size / 12), y + random() * size] as const
  })
  const wanted = place.map(() => ((0.5 + random()) * 600) / points)
  const area = (300 * 300) / points
  const columns = Array.from({ length: sites }, () => {
    const at = [random() * side, random() * side] as const
    const decays = place.map(([x, y]) => kernels[kernel](Math.hypot(x - at[0], y - at[1])))
    const sum = decays.reduce((total, decay) => total + decay, 0)
    const background = 1000 / area
    return decays.flatMap((decay, point) =>
      decay > 1e-4 ? [{ point, service: (60 * decay) / (sum + background) }] : [],
    )
  })
  return sitingProblem({ wanted, columns, count })
}

/** Every choice of `count` of `items` things. */
export function* choices(items: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield []
    return
  }
  for (let first = from; first <= items - count; first += 1) {
    for (const rest of choices(items, count - 1, first + 1)) yield [first, ...rest]
  }
}

/** The points of a random instance as four plantings that each want 0.9 of theirs, from stations of up to 60 females. */
export function randomTarget(options: Parameters<typeof randomInstance>[0]): TargetProblem {
  const { start, point, service, wanted } = randomInstance(options)
  const sites = start.length - 1
  const group = Uint32Array.from(wanted, (_, i) => i % 3)
  const sums = [0, 1, 2].map(g => wanted.reduce((sum, each, i) => sum + (group[i] === g ? each : 0), 0))
  return {
    services: { start, point, service: service.map(value => value / 60) },
    wanted,
    base: new Float64Array(wanted.length),
    group,
    groups: 3,
    need: Float64Array.from(sums, sum => 0.6 * sum),
    most: Array.from({ length: sites }, () => 120),
    cost: Array.from({ length: sites }, () => 1),
    opening: Array.from({ length: sites }, () => 40),
    unit: Array.from({ length: sites }, () => 1),
  }
}
