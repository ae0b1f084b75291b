import type { Coverage, StationInput } from '../coverage/coverage'
import type { BeeId } from '../data/own'
import type { AllowedDays, Asked } from './allowed-days'
import { type Batch, bestOne, bestThree, bestTwo, type DayProblem, improved, servedBy, tidied } from './day-search'
import { flightsOf, servicesOf } from './day-service'
import { type ReachedCells, reachedCells } from './reached-cells'
import type { TimingGround } from './timing-ground'

/** Cells for single days and for the last steps, so that ordinary plans are counted plant by plant; and for pairs of days. */
const mostCells = 8000
const mostCellsOfPairs = 1200

/** The stations of one bee and the days they may be stocked on. */
export type BeeGroup = AllowedDays & { readonly bee: BeeId; readonly stations: readonly Asked[] }

/** Batches of each group, in the groups' order; days count in the group's own list. */
export type Schedules = readonly (readonly Batch[])[]

type Grain = {
  readonly cells: ReachedCells
  /** Service by the stations that are not asked about. */
  readonly others: Float64Array
  /** Service of each group: by day, and as the plan has it. */
  readonly byDay: readonly (readonly Float64Array[])[]
  readonly own: readonly Float64Array[]
}

/** Looks for release days of several bees at once: each bee's in turn, the others' as they are, until none gains. */
export class ScheduleSearch {
  readonly #groups: readonly BeeGroup[]
  readonly #fine: Grain
  readonly #coarse: Grain

  /** `coverage` holds the asked stations with one female each; `others` is what all other stations give each point. */
  constructor(ground: TimingGround, groups: readonly BeeGroup[], coverage: Coverage, others: Float64Array) {
    this.#groups = groups
    const inputs = coverage.stations
    const tables = serviceTables(ground, groups, coverage)
    const grain = (most: number): Grain => {
      const cells = reachedCells(ground, inputs, most)
      const sums = { cells, blooms: coverage.blooms.length }
      return {
        cells,
        others: cells.summed(others),
        byDay: groups.map(({ stations, days, waits }) =>
          days.map((_, d) => summed(sums, stations, tables.byDay, asked => waits.get(asked)![d]!)),
        ),
        own: groups.map(({ stations }) => summed(sums, stations, tables.own, () => 0)),
      }
    }
    this.#fine = grain(mostCells)
    this.#coarse = this.#fine.cells.wanted.length <= mostCellsOfPairs ? this.#fine : grain(mostCellsOfPairs)
  }

  /** Whether the stations reach anything that wants bees. */
  get isIdle(): boolean {
    return this.#fine.cells.wanted.length === 0
  }

  /** The best single days; bees whose turn has not come yet fly as the plan has them. */
  single(): Schedules {
    return this.#inTurn(
      this.#groups.map(() => []),
      1,
    )
  }

  /** The best schedules of at most so many batches found from `start` on, never below it. */
  more(start: Schedules, batches: 2 | 3): Schedules {
    return this.#inTurn(start, batches)
  }

  #inTurn(start: Schedules, batches: 1 | 2 | 3): Schedules {
    const schedules = start.map(each => each)
    for (let round = 0; round < 4; round += 1) {
      let isBetter = false
      for (let g = 0; g < this.#groups.length; g += 1) {
        const problem = this.#problem(this.#fine, schedules, g)
        const before = schedules[g]!.length > 0 ? servedBy(problem, schedules[g]!) : Number.NEGATIVE_INFINITY
        const found = this.#best(schedules, g, problem, batches)
        if (!(servedBy(problem, found) > before * (1 + 1e-12) || schedules[g]!.length === 0)) continue
        schedules[g] = found
        isBetter = true
      }
      if (!isBetter || this.#groups.length === 1) break
    }
    return schedules
  }

  #best(schedules: Schedules, group: number, problem: DayProblem, batches: 1 | 2 | 3): readonly Batch[] {
    if (batches === 1) return bestOne(problem).batches
    const rough = this.#problem(this.#coarse, schedules, group)
    const { batches: found } = batches === 2 ? bestTwo(rough) : bestThree(rough)
    return tidied(improved(problem, { batches: found, served: servedBy(problem, found) }).batches)
  }

  /** What is left to one group when all others keep their schedules. */
  #problem({ cells, others, byDay, own }: Grain, schedules: Schedules, group: number): DayProblem {
    const base = others.slice()
    schedules.forEach((batches, g) => {
      if (g === group) return
      const parts =
        batches.length > 0
          ? batches.map(({ day, share }) => [byDay[g]![day]!, share] as const)
          : [[own[g]!, 1] as const]
      for (const [service, share] of parts) for (let i = 0; i < base.length; i += 1) base[i]! += share * service[i]!
    })
    return { wanted: cells.wanted, base, byDay: byDay[group]! }
  }
}

/** Service tables (see `servicesOf`) of each asked station: of all it holds, by day, and as the plan has it. */
function serviceTables(ground: TimingGround, groups: readonly BeeGroup[], coverage: Coverage): ServiceTables {
  const byDay = new Map<Asked, Float64Array>()
  const own = new Map<Asked, Float64Array>()
  for (const { bee, stations, days } of groups) {
    const flights = flightsOf(ground, bee, days)
    for (const asked of stations) {
      const { input } = asked.supply
      byDay.set(
        asked,
        servicesOf(coverage, asked.index, input, flights).map(service => service * asked.females),
      )
      own.set(asked, servicesOf(coverage, asked.index, input, [input.flight]))
    }
  }
  return { byDay, own }
}

type ServiceTables = {
  readonly byDay: ReadonlyMap<Asked, Float64Array>
  readonly own: ReadonlyMap<Asked, Float64Array>
}

/** Service to every cell by a group's stations, each by the flight of its table that `flightOf` names. */
function summed(
  { cells, blooms }: { readonly cells: ReachedCells; readonly blooms: number },
  stations: readonly Asked[],
  tables: ReadonlyMap<Asked, Float64Array>,
  flightOf: (asked: Asked) => number,
): Float64Array {
  const sums = new Float64Array(cells.wanted.length)
  for (const asked of stations) {
    const table = tables.get(asked)!
    const first = flightOf(asked) * blooms
    const { cell, pull } = cells.reach[asked.index]!
    for (let i = 0; i < cell.length; i += 1) sums[cell[i]!]! += pull[i]! * table[first + cells.bloom[cell[i]!]!]!
  }
  return sums
}

/** A station with one nesting female, as `Coverage` measures ranges by. */
export function withOneFemale(input: StationInput): StationInput {
  return { ...input, females: 1 }
}
