import type { ServiceMatrix } from './service'
import { CoverProgramme } from './simplex'

/** Stations, points and what each group of points is to be served, apart from orchards. */
export type StockProblem = {
  /** Service of one female: a column for each station. */
  readonly services: ServiceMatrix
  readonly wanted: Float64Array
  readonly base: Float64Array
  /** Group (planting) of each point, 0 to `groups` - 1. */
  readonly group: Uint32Array
  readonly groups: number
  /** Females to be served in each group, each point counted up to what it wants. */
  readonly need: Float64Array
  /** Most females at each station; may be infinite. */
  readonly most: readonly number[]
  /** Cost of a female at each station. */
  readonly cost: readonly number[]
}

/** Served females by group, each point up to what it wants. */
export function servedBy(problem: StockProblem, females: ArrayLike<number>): Float64Array {
  const received = receivedBy(problem, females)
  const served = new Float64Array(problem.groups)
  for (let i = 0; i < received.length; i += 1) {
    served[problem.group[i]!]! += Math.min(problem.wanted[i]!, received[i]!)
  }
  return served
}

/** The most that each group can be served, with every station full; where a station has no limit, as far as it reaches. */
export function mostServed(problem: StockProblem): Float64Array {
  const { services, wanted, base, group, groups, most } = problem
  const received = base.slice()
  most.forEach((limit, station) => {
    if (!(limit > 0)) return
    for (let entry = services.start[station]!; entry < services.start[station + 1]!; entry += 1) {
      const i = services.point[entry]!
      received[i] = Number.isFinite(limit) ? received[i]! + limit * services.service[entry]! : Number.POSITIVE_INFINITY
    }
  })
  const served = new Float64Array(groups)
  received.forEach((value, i) => {
    served[group[i]!]! += Math.min(wanted[i]!, value)
  })
  return served
}

/** A group is served once it is this near, as a share of what it needs. */
const nearEnough = 1e-7

/** A linear sum that every sufficient stock reaches: `factors` of all stations by their females is at least `least`. */
export type Cut = { readonly group: number; readonly factors: Float64Array; readonly least: number }

export type Fewest = {
  /** Females at each of the columns asked about. */
  readonly females: Float64Array
  /** Cost of the programme: no stock of these columns that meets the needs costs less. */
  readonly bound: number
  /** The same with service added up over a planting and not cut at each plant: the plain programme. */
  readonly plain: number
  /** Worth of each column of the problem, in or out, at the prices of the programme: its cost is worth paying below this. */
  readonly worth: Float64Array
}

export type FewestOptions = {
  /** Columns that may be used; all unless told. */
  readonly columns?: readonly number[]
  /** Cost of a female at each column of the problem, in place of its own. */
  readonly cost?: readonly number[]
  /** Cuts of earlier calls on the same problem: they hold whatever columns are used. New ones are added. */
  readonly pool?: Cut[]
  /** A group counts as served once it is this near, as a share of what it needs. */
  readonly near?: number
  /** Give up (null) once the cost exceeds this. */
  readonly ceiling?: number
}

/** Rounds of cuts; what they leave open is closed when whole units are topped up. */
const rounds = 400

/**
 * Least-cost stock that serves every group what it needs; null where no stock does. What a group is served is the least
 * of many linear sums (for any set of points: what these want, and what the others receive), so the linear programme
 * begins with service added up over each planting and gets the sum that is broken most until none is
 * (Kelley 1960, cutting planes).
 */
export function fewestFemales(problem: StockProblem, options: FewestOptions = {}): Fewest | null {
  const { columns = problem.most.map((_, column) => column), cost = problem.cost, pool = [] } = options
  const { ceiling = Number.POSITIVE_INFINITY, near = nearEnough } = options
  const programme = new CoverProgramme(
    columns.map(column => cost[column]!),
    columns.map(column => problem.most[column]!),
  )
  const used = new Set<Cut>()
  const use = (cut: Cut) => {
    const factors = new Float64Array(columns.length)
    for (let i = 0; i < factors.length; i += 1) factors[i] = cut.factors[columns[i]!]!
    programme.addRow(factors, cut.least)
    used.add(cut)
  }
  if (pool.length === 0) {
    const none = new Uint8Array(problem.wanted.length)
    for (let g = 0; g < problem.groups; g += 1) if (problem.need[g]! > 0) pool.push(cutOf(problem, g, none))
  }
  for (const cut of firstOf(pool, problem.groups)) use(cut)
  let plain: number | null = null
  for (let round = 0; round < rounds; round += 1) {
    if (!programme.solve()) return null
    plain ??= programme.cost
    if (programme.cost > ceiling) return null
    const females = spread(programme.values, columns, problem.most.length)
    const cuts = brokenCuts(problem, { females, columns, near }, pool, used)
    if (cuts.length === 0) break
    for (const cut of cuts) use(cut)
  }
  const worth = new Float64Array(problem.most.length)
  const rows = [...used]
  programme.prices.forEach((price, row) => {
    if (price > 0)
      for (let column = 0; column < worth.length; column += 1) worth[column]! += price * rows[row]!.factors[column]!
  })
  return { females: programme.values, bound: programme.cost, plain: plain ?? 0, worth }
}

/** The first cut of every group: its service added up. */
function firstOf(pool: readonly Cut[], groups: number): Cut[] {
  return Array.from({ length: groups }, (_, g) => pool.find(({ group }) => group === g)).filter(
    cut => cut !== undefined,
  )
}

/** For every group that is short, the known cut that is broken most, else a new one. */
function brokenCuts(
  problem: StockProblem,
  {
    females,
    columns,
    near,
  }: { readonly females: Float64Array; readonly columns: readonly number[]; readonly near: number },
  pool: Cut[],
  used: ReadonlySet<Cut>,
): Cut[] {
  const received = receivedBy(problem, females)
  const served = new Float64Array(problem.groups)
  const isFull = new Uint8Array(received.length)
  received.forEach((value, i) => {
    isFull[i] = value >= problem.wanted[i]! ? 1 : 0
    served[problem.group[i]!]! += Math.min(value, problem.wanted[i]!)
  })
  const cuts: Cut[] = []
  const stocked = columns.filter(column => females[column]! > 0)
  for (let g = 0; g < problem.groups; g += 1) {
    const short = problem.need[g]! * (1 - near) - served[g]!
    if (short <= 0) continue
    let best: Cut | null = null
    // A known cut does nearly as well as the one made for this stock, and costs nothing to make.
    let broken = 0.5 * short
    for (const cut of pool) {
      if (cut.group !== g || used.has(cut)) continue
      let by = cut.least
      for (const column of stocked) by -= cut.factors[column]! * females[column]!
      if (by > broken) {
        best = cut
        broken = by
      }
    }
    if (best === null) {
      best = cutOf(problem, g, isFull)
      pool.push(best)
    }
    cuts.push(best)
  }
  return cuts
}

/** Of a group, points that are full count what they want, the others what they receive. */
function cutOf(problem: StockProblem, group: number, isFull: Uint8Array): Cut {
  const { services, wanted, base } = problem
  let least = problem.need[group]!
  for (let i = 0; i < wanted.length; i += 1) {
    if (problem.group[i] === group) least -= isFull[i] === 1 ? wanted[i]! : base[i]!
  }
  const factors = new Float64Array(problem.most.length)
  for (let station = 0; station < factors.length; station += 1) {
    let sum = 0
    for (let entry = services.start[station]!; entry < services.start[station + 1]!; entry += 1) {
      const i = services.point[entry]!
      if (problem.group[i] === group && isFull[i] === 0) sum += services.service[entry]!
    }
    factors[station] = sum
  }
  return { group, factors, least }
}

function spread(values: Float64Array, columns: readonly number[], length: number): Float64Array {
  const all = new Float64Array(length)
  columns.forEach((column, i) => {
    all[column] = values[i]!
  })
  return all
}

function receivedBy({ services, base }: StockProblem, females: ArrayLike<number>): Float64Array {
  const received = base.slice()
  for (let station = 0; station < females.length; station += 1) {
    const count = females[station]!
    if (count === 0) continue
    for (let entry = services.start[station]!; entry < services.start[station + 1]!; entry += 1) {
      received[services.point[entry]!]! += count * services.service[entry]!
    }
  }
  return received
}

/**
 * Whole units for stock that meets the needs: rounded down, then one unit at a time where it does most for what is
 * still short at its price, then every unit taken back that is not needed. `unit` is the females of one unit at each
 * station. null where the limits do not hold enough.
 */
export function wholeUnits(
  problem: StockProblem,
  females: ArrayLike<number>,
  unit: readonly number[],
): number[] | null {
  const { most, cost } = problem
  const limits = most.map((limit, s) => Math.floor(limit / unit[s]! + 1e-9))
  const units = unit.map((each, s) => Math.min(limits[s]!, Math.floor(females[s]! / each + 1e-9)))
  const state = new Shortfall(
    problem,
    units.map((count, s) => count * unit[s]!),
  )
  while (state.short > 0) {
    let best = -1
    let bestGain = 0
    for (let s = 0; s < units.length; s += 1) {
      if (units[s]! >= limits[s]!) continue
      const gain = (state.short - state.shortAfter(s, unit[s]!)) / (cost[s]! * unit[s]!)
      if (gain > bestGain) {
        best = s
        bestGain = gain
      }
    }
    if (best < 0) return null
    units[best]! += 1
    state.add(best, unit[best]!)
  }
  const dearest = Array.from(units.keys()).sort((a, b) => cost[b]! * unit[b]! - cost[a]! * unit[a]! || a - b)
  for (const s of dearest) {
    while (units[s]! > 0 && state.shortAfter(s, -unit[s]!) === 0) {
      units[s]! -= 1
      state.add(s, -unit[s]!)
    }
  }
  return units
}

/** What groups are still short of, kept up as stock changes at one station at a time. */
class Shortfall {
  readonly #problem: StockProblem
  readonly #received: Float64Array
  readonly #served: Float64Array

  constructor(problem: StockProblem, females: readonly number[]) {
    this.#problem = problem
    this.#received = receivedBy(problem, females)
    this.#served = servedBy(problem, females)
  }

  get short(): number {
    return this.#shortOf(this.#served)
  }

  shortAfter(station: number, females: number): number {
    const served = this.#served.slice()
    this.#change(station, females, served, false)
    return this.#shortOf(served)
  }

  add(station: number, females: number): void {
    this.#change(station, females, this.#served, true)
  }

  #change(station: number, females: number, served: Float64Array, isKept: boolean): void {
    const { services, wanted, group } = this.#problem
    for (let entry = services.start[station]!; entry < services.start[station + 1]!; entry += 1) {
      const i = services.point[entry]!
      const before = this.#received[i]!
      const after = before + females * services.service[entry]!
      served[group[i]!]! += Math.min(wanted[i]!, after) - Math.min(wanted[i]!, before)
      if (isKept) this.#received[i] = after
    }
  }

  #shortOf(served: Float64Array): number {
    return this.#problem.need.reduce((sum, least, g) => sum + Math.max(0, least * (1 - nearEnough) - served[g]!), 0)
  }
}
