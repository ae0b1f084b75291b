import { columnsOf, fullValue, type SitingProblem } from './objective'

/** So much of a column. */
export type Part = { readonly column: number; readonly amount: number }

export type BoundOptions = {
  /** Value of the best choice known: the closer, the better the steps. */
  readonly best: number
  /** Columns of that choice: the multipliers start from them. */
  readonly chosen?: readonly number[]
  readonly steps?: number
  /**
   * The columns, and how much of each, that are worth most of all that may be chosen, or of something larger; without,
   * as many whole columns of each kind as are to be chosen. Any share of a column must then be a share of its service.
   */
  readonly pick?: (worth: Float64Array) => readonly Part[]
  readonly shouldStop?: () => boolean
}

/**
 * A value that no choice can exceed, by Lagrangian relaxation of the link between what a point counts and what it
 * receives. For any multipliers u in [0, 1] the value is at most
 * `sum weight (1 - u) wanted + sum weight u base + the largest sums of weight u service, as many as are to be chosen`,
 * with service cut to what a point still wants. Multipliers move by the volume algorithm (Barahona & Anbil 2000); the
 * least bound seen is kept, so the answer holds however early the steps end.
 */
export function upperBound(problem: SitingProblem, { best, chosen = [], ...rest }: BoundOptions): number {
  const { steps = Math.min(150, Math.max(50, Math.round(usualWork / Math.max(1, problem.point.length)))) } = rest
  const relaxed = new Relaxed(problem, rest.pick)
  let centre = relaxed.startFrom(chosen)
  let current = relaxed.evaluate(centre)
  let least = current.bound
  const share = new Float64Array(columnsOf(problem))
  for (const { column, amount } of current.parts) share[column] = amount
  let scale = 0.6
  let idle = 0
  for (let step = 0; step < steps; step += 1) {
    if (least <= best * (1 + 1e-9) || scale < 1e-3 || rest.shouldStop?.() === true) break
    const direction = relaxed.slack(share)
    const norm = direction.reduce((sum, value) => sum + value * value, 0)
    if (norm === 0) break
    const length = (scale * Math.max(current.bound - best, 1e-6 * Math.abs(best))) / norm
    const next = new Float64Array(centre.length)
    for (let i = 0; i < next.length; i += 1) next[i] = Math.min(1, Math.max(0, centre[i]! + length * direction[i]!))
    const evaluated = relaxed.evaluate(next)
    for (let column = 0; column < share.length; column += 1) share[column]! *= 1 - mixing
    for (const { column, amount } of evaluated.parts) share[column]! += mixing * amount
    least = Math.min(least, evaluated.bound)
    if (evaluated.bound < current.bound) {
      centre = next
      current = evaluated
      idle = 0
      scale = Math.min(1.5, scale * 1.1)
    } else {
      idle += 1
      if (idle >= 4) {
        scale *= 0.66
        idle = 0
      }
    }
  }
  return Math.min(least, fullValue(problem))
}

/** Entries of the matrix that the steps may read, unless that makes too few of them. */
const usualWork = 2e7

/** Share of the newest columns in the running mean of columns, from which directions are taken. */
const mixing = 0.15

class Relaxed {
  readonly #problem: SitingProblem
  /** What a point still wants beyond its base, and the worth of it. */
  readonly #room: Float64Array
  readonly #given: number
  readonly #service: Float64Array

  readonly #pick: (worth: Float64Array) => readonly Part[]

  constructor(problem: SitingProblem, pick?: BoundOptions['pick']) {
    const { wanted, weight, base, point, service, kind, count } = problem
    this.#problem = problem
    this.#room = wanted.map((most, i) => Math.max(0, most - base[i]!))
    this.#given = wanted.reduce((sum, most, i) => sum + weight[i]! * Math.min(most, base[i]!), 0)
    // What a point cannot use is no service of a whole column; of a share of one it may be.
    this.#service = pick ? service : service.map((value, entry) => Math.min(value, this.#room[point[entry]!]!))
    const ofKind = count.map((_, k) => Array.from(kind.keys()).filter(column => kind[column] === k))
    this.#pick =
      pick ??
      (worth =>
        ofKind.flatMap((of, k) =>
          of
            .sort((a, b) => worth[b]! - worth[a]! || a - b)
            .slice(0, count[k]!)
            .map(column => ({ column, amount: 1 })),
        ))
  }

  /** 1 where the choice leaves a point short, 0 where it has more than it wants. */
  startFrom(chosen: readonly number[]): Float64Array {
    const received = new Float64Array(this.#room.length)
    for (const column of chosen) this.#addTo(received, column, 1)
    return this.#room.map((room, i) => (received[i]! < room ? 1 : 0))
  }

  /** The bound that multipliers `u` give, and the columns that make it up. */
  evaluate(u: Float64Array): { readonly bound: number; readonly parts: readonly Part[] } {
    const { weight, start, point } = this.#problem
    const price = u.map((value, i) => value * weight[i]!)
    const worth = new Float64Array(start.length - 1)
    for (let column = 0; column < worth.length; column += 1) {
      let sum = 0
      for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
        sum += price[point[entry]!]! * this.#service[entry]!
      }
      worth[column] = sum
    }
    const parts = this.#pick(worth)
    let bound = this.#given
    for (let i = 0; i < u.length; i += 1) bound += weight[i]! * (1 - u[i]!) * this.#room[i]!
    for (const { column, amount } of parts) bound += amount * worth[column]!
    return { bound, parts }
  }

  /** What points still want after a mean of columns; the way in which the multipliers should move. */
  slack(share: Float64Array): Float64Array {
    const slack = this.#room.slice()
    share.forEach((part, column) => {
      if (part > 1e-6) this.#addTo(slack, column, -part)
    })
    return slack.map((value, i) => value * this.#problem.weight[i]!)
  }

  #addTo(sums: Float64Array, column: number, times: number): void {
    const { start, point } = this.#problem
    for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
      sums[point[entry]!]! += times * this.#service[entry]!
    }
  }
}
