import { activeShare } from '../flight/flight'
import type { DailyCurve } from '../time/curve'
import type { Coverage } from './coverage'
import { decaysOfTile, tileInDisc } from './field'

/** One thing put right at a time, everything else as planned. */
export const remedies = ['distance', 'timing', 'numbers', 'competition'] as const
export type Remedy = (typeof remedies)[number]

/** Coverage gained by each remedy, and the one that names the limit. */
export type Limits = {
  readonly gains: Readonly<Record<Remedy, number>>
  readonly limit: Remedy | 'unserved' | 'none'
}

/** What a station's bees would be on `days` had they been released on the best day for one bloom. */
export type BestFlight = (station: number, bloom: number) => DailyCurve

/** A remedy counts as the limit only where it would gain more than this. */
const leastGain = 0.02
/** Gains nearer than this are one and the same. */
const sameGain = 1e-9

/**
 * What holds each planting back (section 7 of the model): its coverage with the nests standing in it, with flight at
 * the best time for it, with twice the bees, and with no blossom but the plantings'. null for groups that want nothing
 * or do not bloom.
 */
export function limitsOf(coverage: Coverage, bestFlight: BestFlight): (Limits | null)[] {
  const { groups, stations } = coverage
  const stocked = stations.map((station, index) => ({ station, index })).filter(({ station }) => station.females > 0)
  const pulls = stocked.map(({ index }) => ({
    planned: coverage.pullOf(index),
    alone: coverage.pullOf(index, { background: 0, withForage: false }),
  }))
  const scratch = new Float64Array(coverage.field.x.length)
  return groups.map((group, g) => {
    const { bloom, wanted, blossom } = group
    if (group.isForage || bloom === null || !(wanted > 0)) return null
    const received = new Received(coverage, g, scratch)
    stocked.forEach(({ station, index }, s) => {
      const inRange = received.measure(station)
      if (inRange === 0) return
      const pull = pulls[s]!
      const { open } = coverage.blooms[bloom]!
      const closer = shifted(pull.planned, open, blossom * (inRange - coverage.decaysOf(index, g)))
      const per = (flight: DailyCurve, days: DailyCurve) => blossom * coverage.serviceOf(station, bloom, flight, days)
      const planned = per(station.flight, pull.planned)
      received.add(
        planned,
        per(station.flight, closer),
        per(bestFlight(index, bloom), pull.planned),
        per(station.flight, pull.alone),
      )
    })
    return received.isServed ? received.limits(wanted) : { gains: noGains, limit: 'unserved' }
  })
}

const noGains = { distance: 0, timing: 0, numbers: 0, competition: 0 }

/** A curve of the same days with `blossom` of one bloom added. */
function shifted(pull: DailyCurve, open: DailyCurve, blossom: number): DailyCurve {
  const values = pull.values.slice()
  for (let i = 0; i < open.values.length; i += 1) values[open.start + i - pull.start]! += blossom * open.values[i]!
  return { start: pull.start, values }
}

/** Flight of all of a station's females released on `day`: F a(t - day) over the given days. */
export function flightFrom(
  day: number,
  females: number,
  bee: { readonly lag: number; readonly spreadDays: number; readonly nestingLife: number },
  days: { readonly start: number; readonly length: number },
): DailyCurve {
  const share = activeShare(bee, days.start + days.length - day)
  const values = new Float64Array(days.length)
  for (let i = 0; i < values.length; i += 1) values[i] = females * (share[days.start + i - day] ?? 0)
  return { start: days.start, values }
}

/** Service to the points of one group, as planned and under each remedy that needs its own sum. */
class Received {
  readonly #coverage: Coverage
  readonly #first: number
  readonly #tiles: readonly [from: number, to: number]
  readonly #decays: Float64Array
  readonly #isNear: Uint8Array
  readonly #planned: Float64Array
  readonly #closer: Float64Array
  readonly #timed: Float64Array
  readonly #alone: Float64Array
  isServed = false

  constructor(coverage: Coverage, group: number, scratch: Float64Array) {
    const { groupStart, groupTile } = coverage.field
    this.#coverage = coverage
    this.#first = groupStart[group]!
    this.#tiles = [groupTile[group]!, groupTile[group + 1]!]
    const points = groupStart[group + 1]! - this.#first
    this.#decays = scratch
    this.#isNear = new Uint8Array(points)
    this.#planned = new Float64Array(points)
    this.#closer = new Float64Array(points)
    this.#timed = new Float64Array(points)
    this.#alone = new Float64Array(points)
  }

  /** Measures the group's points from a station; how many are in its range. */
  measure(station: Coverage['stations'][number]): number {
    const { field } = this.#coverage
    let inRange = 0
    for (let tile = this.#tiles[0]; tile < this.#tiles[1]; tile += 1) {
      const standing = tileInDisc(field, tile, station.x, station.y, station.kernel.range)
      const from = field.tileStart[tile]!
      const to = field.tileStart[tile + 1]!
      if (standing === 0) this.#decays.fill(0, from, to)
      else decaysOfTile(field, tile, station, station.kernel, standing === 1, this.#decays)
      for (let i = from; i < to; i += 1) {
        const near = this.#decays[i]! > 0 ? 1 : 0
        this.#isNear[i - this.#first] = near
        inRange += near
      }
    }
    if (inRange > 0) this.isServed = true
    return inRange
  }

  add(planned: number, closer: number, timed: number, alone: number): void {
    for (let i = 0; i < this.#planned.length; i += 1) {
      if (this.#isNear[i] === 0) continue
      const decay = this.#decays[this.#first + i]!
      this.#planned[i]! += planned * decay
      this.#closer[i]! += closer
      this.#timed[i]! += timed * decay
      this.#alone[i]! += alone * decay
    }
  }

  limits(wanted: number): Limits {
    const planned = met(this.#planned, wanted, 1).coverage
    const outcomes = {
      distance: met(this.#closer, wanted, 1),
      timing: met(this.#timed, wanted, 1),
      numbers: met(this.#planned, wanted, 2),
      competition: met(this.#alone, wanted, 1),
    }
    const gains = Object.fromEntries(
      remedies.map(remedy => [remedy, outcomes[remedy].coverage - planned]),
    ) as Limits['gains']
    const largest = Math.max(...remedies.map(remedy => gains[remedy]))
    if (!(largest > leastGain)) return { gains, limit: 'none' }
    const tied = remedies.filter(remedy => largest - gains[remedy] <= sameGain)
    const limit = tied.reduce((best, remedy) => (outcomes[remedy].service > outcomes[best].service ? remedy : best))
    return { gains, limit }
  }
}

/** Coverage of points that want `wanted` each, and their uncapped service, with every service taken `times`. */
function met(service: Float64Array, wanted: number, times: number): { coverage: number; service: number } {
  let served = 0
  let all = 0
  for (const once of service) {
    const received = times * once
    all += received
    served += Math.min(received, wanted)
  }
  return { coverage: Math.min(1, served / (wanted * service.length)), service: all }
}
