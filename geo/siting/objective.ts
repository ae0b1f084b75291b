/**
 * A question of siting as a plain matrix, apart from orchards: points that each want so much and are served by columns,
 * a column being a station of one kind at one place. The value of a choice is the sum over points of
 * `weight x min(wanted, base + service of the chosen columns)`: it never falls as columns are added, and each adds less
 * the more there are (monotone and submodular).
 */
export type SitingProblem = {
  /** What a point can make use of; service beyond it counts for nothing. */
  readonly wanted: Float64Array
  /** Worth of one unit served at a point. */
  readonly weight: Float64Array
  /** Service that a point has whatever is chosen. */
  readonly base: Float64Array
  /** First entry of each column in `point` and `service`; one more than there are columns. */
  readonly start: Uint32Array
  readonly point: Uint32Array
  readonly service: Float64Array
  /** Which kind of station a column is. */
  readonly kind: Uint16Array
  /** How many of each kind are to be chosen. */
  readonly count: readonly number[]
  /** For each column, those that may not be chosen beside it: at the same place or too near. Both sides name each other. */
  readonly clashes?: readonly ArrayLike<number>[]
}

/** How many columns a problem has. */
export function columnsOf(problem: SitingProblem): number {
  return problem.start.length - 1
}

/** The value of a set of columns, summed afresh. */
export function worthOf(problem: SitingProblem, chosen: Iterable<number>): number {
  return new Served(problem, chosen).value
}

/** Which columns may still be added to a choice: their kind is wanted and nothing chosen clashes with them. */
export class Openings {
  readonly #problem: SitingProblem
  readonly #left: number[]
  readonly #blocked: Uint16Array

  constructor(problem: SitingProblem, chosen: Iterable<number> = []) {
    this.#problem = problem
    this.#left = [...problem.count]
    this.#blocked = new Uint16Array(columnsOf(problem))
    for (const column of chosen) this.take(column)
  }

  isOpen(column: number): boolean {
    return this.#blocked[column] === 0 && this.#left[this.#problem.kind[column]!]! > 0
  }

  take(column: number): void {
    this.#change(column, 1)
  }

  free(column: number): void {
    this.#change(column, -1)
  }

  #change(column: number, by: 1 | -1): void {
    this.#left[this.#problem.kind[column]!]! -= by
    this.#blocked[column]! += by
    for (const other of Array.from(this.#problem.clashes?.[column] ?? [])) this.#blocked[other]! += by
  }
}

/** Value with every point served in full: no choice can be worth more. */
export function fullValue({ wanted, weight }: SitingProblem): number {
  let sum = 0
  for (let i = 0; i < wanted.length; i += 1) sum += weight[i]! * wanted[i]!
  return sum
}

/** What each point receives from a set of columns that changes by one column at a time. */
export class Served {
  readonly problem: SitingProblem
  readonly received: Float64Array

  constructor(problem: SitingProblem, chosen: Iterable<number> = []) {
    this.problem = problem
    this.received = problem.base.slice()
    for (const column of chosen) this.add(column)
  }

  get value(): number {
    const { wanted, weight } = this.problem
    let sum = 0
    for (let i = 0; i < wanted.length; i += 1) sum += weight[i]! * Math.min(wanted[i]!, this.received[i]!)
    return sum
  }

  add(column: number): void {
    this.change(column, 1)
  }

  /** Leaves rounding of the last bit behind: start afresh after many. */
  remove(column: number): void {
    this.change(column, -1)
  }

  /** What adding a column would be worth. */
  gain(column: number): number {
    const { wanted, weight, start, point, service } = this.problem
    const { received } = this
    let sum = 0
    for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
      const i = point[entry]!
      const room = wanted[i]! - received[i]!
      if (room > 0) sum += weight[i]! * Math.min(service[entry]!, room)
    }
    return sum
  }

  /** What taking a chosen column away would cost. */
  loss(column: number): number {
    const { wanted, weight, start, point, service } = this.problem
    const { received } = this
    let sum = 0
    for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
      const i = point[entry]!
      const after = wanted[i]! - received[i]! + service[entry]!
      if (after > 0) sum += weight[i]! * Math.min(service[entry]!, after)
    }
    return sum
  }

  /** What `times` a column more (or less) would be worth. */
  gainOf(column: number, times: number): number {
    const { wanted, weight, start, point, service } = this.problem
    const { received } = this
    let sum = 0
    for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
      const i = point[entry]!
      const before = received[i]!
      sum += weight[i]! * (Math.min(wanted[i]!, before + times * service[entry]!) - Math.min(wanted[i]!, before))
    }
    return sum
  }

  /** Adds `times` a column. */
  change(column: number, times: number): void {
    const { start, point, service } = this.problem
    for (let entry = start[column]!, end = start[column + 1]!; entry < end; entry += 1) {
      this.received[point[entry]!]! += times * service[entry]!
    }
  }
}
