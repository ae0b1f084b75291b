import { seededRandom } from '../random'
import { type Cut, type Fewest, fewestFemales, mostServed } from '../stocking/fewest'
import { spreadCost } from './target-bound'
import { openingCost, type TargetProblem } from './target-problem'
import { isClear, type TargetAnswer, wholeAnswer, withMore } from './whole-answer'

export type TargetOptions = {
  readonly seed?: number
  /** Choices of stations that may be priced. */
  readonly trials?: number
  /** Stations to begin from, beside those that a programme uses. */
  readonly start?: readonly number[]
  readonly shouldStop?: () => boolean
  readonly onProgress?: (cost: number, stations: readonly number[]) => void
}

/** A choice of stations with the least cost of stock that serves the needs from them. */
type Priced = { readonly stations: readonly number[]; readonly stock: Fewest; readonly cost: number }

/** While choices are compared, needs are met to this share of them: the last of it takes most of the cuts. */
const nearEnough = 1e-5

/** On large ground, which stations a programme uses is known long before their stock is: a matrix of so many entries is large. */
const roughly = 1e-3
const large = 2e4

/** Choices of which the whole answers are compared. */
const finalists = 8

/** Restarts that may pass without anything cheaper. */
const restarts = 15

/** Orders in which as many stations as may stand are tried before a target is given up. */
const packings = 40

/** How many of the stations worth most are tried in place of each that is open. */
const newcomers = 12

/**
 * The cheapest answer found: stations that a linear programme uses when their price is spread over their females (slope
 * scaling, Kim & Pardalos 1999), then dropping and exchanging as long as it pays, each choice priced exactly by the
 * programme of its own stock, then seeded restarts. null where spacing leaves no choice that is sufficient, or no stock
 * at all is.
 */
export function leastCost(problem: TargetProblem, options: TargetOptions = {}): TargetAnswer | null {
  const search = new TargetSearch(problem, options)
  search.run()
  // Whole units and the last of the needs may change the order of the best.
  let best: TargetAnswer | null = null
  const last = search.cheapest(finalists)
  for (const { stations } of last) {
    const answer = wholeAnswer(problem, stations)
    if (answer !== null && (best === null || answer.cost < best.cost)) best = answer
  }
  return best ?? (last[0] === undefined ? null : withMore(problem, last[0].stations))
}

class TargetSearch {
  readonly #problem: TargetProblem
  readonly #options: TargetOptions
  readonly #pool: Cut[] = []
  readonly #known = new Map<string, Priced | null>()
  #trials: number

  constructor(problem: TargetProblem, options: TargetOptions) {
    this.#problem = problem
    this.#options = options
    this.#trials = options.trials ?? Math.round(Math.min(1200, Math.max(60, 2e7 / (problem.services.point.length + 1))))
  }

  /** The cheapest choices that were priced, cheapest first. */
  cheapest(count: number): readonly Priced[] {
    const priced = [...this.#known.values()].filter(each => each !== null)
    return priced.sort((a, b) => a.cost - b.cost).slice(0, count)
  }

  run(): void {
    const random = seededRandom(this.#options.seed ?? 1)
    const { start } = this.#options
    let best = this.#first(start === undefined ? null : this.#price(start)) ?? this.#packed(random)
    if (best === null) return
    this.#options.onProgress?.(best.cost, best.stations)
    best = this.#improved(best)
    for (let idle = 0; idle < restarts && !this.#isOver; idle += 1) {
      const shaken = this.#shaken(best, random, (Math.max(0, idle) % 3) - 1)
      if (shaken === null) continue
      const next = this.#improved(shaken)
      if (next.cost < best.cost * (1 - 1e-9)) {
        best = next
        idle = -1
      }
    }
  }

  get #isOver(): boolean {
    return this.#trials <= 0 || this.#options.shouldStop?.() === true
  }

  /** Stations of a few rounds of slope scaling, the cheapest choice of them and of one to begin with. */
  #first(start: Priced | null): Priced | null {
    const { most } = this.#problem
    const all = most.flatMap((limit, s) => (limit > 0 ? [s] : []))
    let over: ArrayLike<number> = most
    let best = start
    for (let round = 0; round < 6; round += 1) {
      const used = this.#apartBy(all, spreadCost(this.#problem, over))
      if (used === null) return best
      const priced = this.#price(used.stations) ?? this.#completed(used.stations, used.stock)
      if (priced !== null && (best === null || priced.cost < best.cost)) {
        best = priced
        // Whoever stops now has an answer, if not yet a cheap one.
        this.#options.onProgress?.(best.cost, best.stations)
      }
      // One that was not used keeps the price it had: it may come back.
      const before = over
      const females = new Float64Array(most.length)
      used.columns.forEach((s, i) => {
        females[s] = used.stock.females[i]!
      })
      over = most.map((_, s) => (females[s]! > 1e-6 ? females[s]! : before[s]!))
    }
    return best
  }

  /** Stations that the programme uses at some cost; of those too near to each other only the fuller may be used again. */
  #apartBy(all: readonly number[], cost: readonly number[]) {
    const near = this.#problem.services.point.length > large ? roughly : nearEnough
    let columns = all
    let last: { stations: number[]; stock: Fewest; columns: readonly number[] } | null = null
    for (let round = 0; round < 25; round += 1) {
      const stock = fewestFemales(this.#problem, { cost, columns, pool: this.#pool, near })
      if (stock === null) return last
      const used = Array.from(columns.keys()).filter(i => stock.females[i]! > 1e-6)
      used.sort((a, b) => stock.females[b]! - stock.females[a]! || a - b)
      const stations = this.#apart(used.map(i => columns[i]!))
      last = { stations, stock, columns }
      if (stations.length === used.length) return last
      const losers = new Set(used.map(i => columns[i]!).filter(s => !stations.includes(s)))
      columns = columns.filter(s => !losers.has(s))
    }
    return last
  }

  /** Those of some stations, in their order, that are far enough from the ones before. */
  #apart(stations: readonly number[]): number[] {
    const taken: number[] = []
    for (const s of stations) if (this.#isClear(taken, s)) taken.push(s)
    return taken
  }

  #isClear(stations: readonly number[], s: number): boolean {
    return isClear(this.#problem, stations, s)
  }

  /** Adds the stations worth most until there is enough; null where no more may stand. */
  #completed(stations: readonly number[], { worth }: Fewest): Priced | null {
    const { most } = this.#problem
    const chosen = [...stations]
    const left = most.flatMap((limit, s) => (limit > 0 && !chosen.includes(s) ? [s] : []))
    left.sort((a, b) => worth[b]! * Math.min(most[b]!, 1e6) - worth[a]! * Math.min(most[a]!, 1e6) || a - b)
    for (const s of left) {
      if (!this.#isClear(chosen, s)) continue
      chosen.push(s)
      if (this.#isEnough(chosen)) return this.#price(chosen)
    }
    return null
  }

  /** Where spacing leaves those worth most insufficient: as many as may stand, in orders drawn at random. */
  #packed(random: () => number): Priced | null {
    const all = this.#problem.most.flatMap((limit, s) => (limit > 0 ? [s] : []))
    for (let attempt = 0; attempt < packings; attempt += 1) {
      const rank = new Map(all.map(s => [s, random()]))
      const stations = this.#apart([...all].sort((a, b) => rank.get(a)! - rank.get(b)!))
      if (this.#isEnough(stations)) return this.#price(stations)
    }
    return null
  }

  #isEnough(stations: readonly number[]): boolean {
    const most = this.#problem.most.map((limit, s) => (stations.includes(s) ? limit : 0))
    const served = mostServed({ ...this.#problem, most })
    return this.#problem.need.every((least, g) => served[g]! >= least * (1 - 1e-9))
  }

  #improved(from: Priced): Priced {
    let best = from
    for (let isBetter = true; isBetter && !this.#isOver; ) {
      const next = this.#dropped(best) ?? this.#exchanged(best) ?? this.#added(best)
      isBetter = next !== null
      if (next !== null) {
        best = next
        this.#options.onProgress?.(best.cost, best.stations)
      }
    }
    return best
  }

  #dropped(best: Priced): Priced | null {
    for (const s of this.#byFemales(best)) {
      const next = this.#tried(
        best.stations.filter(other => other !== s),
        best,
      )
      if (next !== null) return next
    }
    return null
  }

  #exchanged(best: Priced): Priced | null {
    const ranked = this.#ranked(best)
    for (const s of this.#byFemales(best)) {
      const others = best.stations.filter(other => other !== s)
      let tried = 0
      for (const newcomer of ranked) {
        if (tried >= newcomers || this.#isOver) break
        if (!this.#isClear(others, newcomer)) continue
        tried += 1
        const next = this.#tried([...others, newcomer], best)
        if (next !== null) return next
      }
    }
    return null
  }

  #added(best: Priced): Priced | null {
    for (const newcomer of this.#ranked(best).slice(0, newcomers)) {
      if (!this.#isClear(best.stations, newcomer)) continue
      const next = this.#tried([...best.stations, newcomer], best)
      if (next !== null) return next
    }
    return null
  }

  /** Stations not open, worth most for their cost first. */
  #ranked({ stations, stock }: Priced): number[] {
    const { most, cost } = this.#problem
    const value = most.map((_, s) => stock.worth[s]! - cost[s]!)
    return most
      .flatMap((limit, s) => (limit > 0 && !stations.includes(s) ? [s] : []))
      .sort((a, b) => value[b]! - value[a]! || a - b)
  }

  #byFemales({ stations, stock }: Priced): number[] {
    const order = Array.from(stations.keys()).sort((a, b) => stock.females[a]! - stock.females[b]! || a - b)
    return order.map(position => stations[position]!)
  }

  #tried(stations: readonly number[], best: Priced): Priced | null {
    if (this.#isOver) return null
    const priced = this.#price(stations, best.cost * (1 - 1e-9))
    return priced !== null && priced.cost < best.cost * (1 - 1e-9) ? priced : null
  }

  #price(stations: readonly number[], ceiling = Number.POSITIVE_INFINITY): Priced | null {
    const columns = [...stations].sort((a, b) => a - b)
    const key = columns.join(' ')
    const known = this.#known.get(key)
    if (known !== undefined) return known
    this.#trials -= 1
    const opening = openingCost(this.#problem, columns)
    const stock =
      opening >= ceiling
        ? null
        : fewestFemales(this.#problem, { columns, pool: this.#pool, ceiling: ceiling - opening, near: nearEnough })
    const priced = stock && { stations: columns, stock, cost: opening + stock.bound }
    // What was given up for its price is not known to be insufficient, but stays too dear: the best only gets cheaper.
    this.#known.set(key, priced)
    return priced
  }

  /** Some stations given up for others at random: one fewer, as many, or one more than there were. */
  #shaken(best: Priced, random: () => number, more: number): Priced | null {
    const ranked = this.#ranked(best).slice(0, 4 * newcomers)
    const stations = [...best.stations]
    for (let change = 0; change < 2 && stations.length > 0; change += 1) {
      stations.splice(Math.floor(random() * stations.length), 1)
    }
    for (let attempt = 0; attempt < 20 && stations.length < best.stations.length + more; attempt += 1) {
      const newcomer = ranked[Math.floor(random() * ranked.length)]
      if (newcomer === undefined) break
      if (!stations.includes(newcomer) && this.#isClear(stations, newcomer)) stations.push(newcomer)
    }
    return this.#price(stations)
  }
}
