/** A figure nearer to a limit than this keeps it; rows are scaled to about 1. */
const tolerance = 1e-9
/** A factor smaller than this is no pivot. */
const leastPivot = 1e-9

/**
 * The least `cost x` with `0 <= x <= most` and rows `a x >= least`, rows added one by one. Costs are above 0, so x = 0
 * is dual feasible and every row is met by the dual simplex from where the last one left off (bounded, dense: a few
 * hundred columns and rows).
 */
export class CoverProgramme {
  readonly #columns: number
  readonly #most: Float64Array
  /** Variables: the columns, then one slack for each row. Those not in the basis sit at 0 or at their limit. */
  readonly #outside: number[]
  readonly #atLimit: boolean[]
  readonly #reduced: Float64Array
  readonly #basic: { variable: number; constant: number; factors: Float64Array }[] = []
  readonly #scales: number[] = []
  #base = 0

  constructor(cost: readonly number[], most: readonly number[]) {
    if (cost.some(each => !(each > 0))) throw new RangeError('every column must cost something')
    this.#columns = cost.length
    this.#most = Float64Array.from(most)
    this.#outside = cost.map((_, column) => column)
    this.#atLimit = cost.map(() => false)
    this.#reduced = Float64Array.from(cost)
  }

  /** Asks for `factors x >= least`. */
  addRow(factors: Float64Array, least: number): void {
    let largest = 1e-300
    for (let column = 0; column < factors.length; column += 1) largest = Math.max(largest, Math.abs(factors[column]!))
    const scale = 1 / largest
    const row = {
      variable: this.#columns + this.#scales.length,
      constant: -least * scale,
      factors: new Float64Array(this.#columns),
    }
    this.#scales.push(scale)
    for (let position = 0; position < this.#columns; position += 1) {
      const column = this.#outside[position]!
      if (column < this.#columns) row.factors[position]! += factors[column]! * scale
    }
    for (const { variable, constant, factors: inside } of this.#basic) {
      const factor = variable < this.#columns ? factors[variable]! * scale : 0
      if (factor === 0) continue
      row.constant += factor * constant
      for (let j = 0; j < inside.length; j += 1) row.factors[j]! += factor * inside[j]!
    }
    this.#basic.push(row)
  }

  /** Meets all rows at least cost; false where no x can. */
  solve(): boolean {
    for (let step = 0; step < 50_000; step += 1) {
      const leaving = this.#farthestOut()
      if (leaving === null) return true
      if (!this.#pivot(leaving.row, leaving.isBelow)) return false
    }
    throw new RangeError(`no end of the simplex on ${this.#scales.length} rows and ${this.#columns} columns`)
  }

  get values(): Float64Array {
    const values = new Float64Array(this.#columns)
    this.#outside.forEach((variable, position) => {
      if (variable < this.#columns) values[variable] = this.#outsideValue(position)
    })
    for (const row of this.#basic) {
      if (row.variable < this.#columns) values[row.variable] = Math.max(0, this.#valueOf(row))
    }
    return values
  }

  /** Price of each row: what the cost would rise by if one more were asked for. */
  get prices(): Float64Array {
    const prices = new Float64Array(this.#scales.length)
    this.#outside.forEach((variable, position) => {
      const row = variable - this.#columns
      if (row >= 0) prices[row] = Math.max(0, this.#reduced[position]!) * this.#scales[row]!
    })
    return prices
  }

  get cost(): number {
    return this.#outside.reduce(
      (sum, _, position) => sum + this.#reduced[position]! * this.#outsideValue(position),
      this.#base,
    )
  }

  #mostOf(variable: number): number {
    return variable < this.#columns ? this.#most[variable]! : Number.POSITIVE_INFINITY
  }

  #outsideValue(position: number): number {
    return this.#atLimit[position] ? this.#mostOf(this.#outside[position]!) : 0
  }

  #valueOf({ constant, factors }: { readonly constant: number; readonly factors: Float64Array }): number {
    let value = constant
    for (let j = 0; j < factors.length; j += 1) {
      if (this.#atLimit[j]) value += factors[j]! * this.#mostOf(this.#outside[j]!)
    }
    return value
  }

  #farthestOut(): { readonly row: number; readonly isBelow: boolean } | null {
    let farthest = tolerance
    let found: { row: number; isBelow: boolean } | null = null
    this.#basic.forEach((each, row) => {
      const value = this.#valueOf(each)
      const most = this.#mostOf(each.variable)
      const scale = most < Number.POSITIVE_INFINITY ? Math.max(1, most) : 1
      if (-value / scale > farthest) {
        farthest = -value / scale
        found = { row, isBelow: true }
      } else if ((value - most) / scale > farthest) {
        farthest = (value - most) / scale
        found = { row, isBelow: false }
      }
    })
    return found
  }

  /** Brings a basic variable back to the limit it passed; the one that takes its place costs least for it. */
  #pivot(row: number, isBelow: boolean): boolean {
    const leaving = this.#basic[row]!
    const { factors } = leaving
    let entering = -1
    let least = Number.POSITIVE_INFINITY
    for (let j = 0; j < factors.length; j += 1) {
      const factor = factors[j]!
      // What sits at 0 can only rise, what sits at its limit can only fall.
      const helps = isBelow === this.#atLimit[j] ? -factor : factor
      if (!(helps > leastPivot)) continue
      const price = Math.abs(this.#reduced[j]!) / helps
      if (price < least - 1e-15 || (price < least + 1e-15 && helps > Math.abs(factors[entering] ?? 0))) {
        least = price
        entering = j
      }
    }
    if (entering < 0) return false
    const pivot = factors[entering]!
    const variable = this.#outside[entering]!
    // The row solved for the entering variable.
    const constant = -leaving.constant / pivot
    const solved = new Float64Array(factors.length)
    for (let j = 0; j < factors.length; j += 1) solved[j] = j === entering ? 1 / pivot : -factors[j]! / pivot
    for (const other of this.#basic) {
      if (other === leaving) continue
      const factor = other.factors[entering]!
      if (factor === 0) continue
      other.constant += factor * constant
      for (let j = 0; j < solved.length; j += 1) {
        other.factors[j] = j === entering ? factor * solved[j]! : other.factors[j]! + factor * solved[j]!
      }
    }
    const price = this.#reduced[entering]!
    this.#base += price * constant
    for (let j = 0; j < solved.length; j += 1) {
      this.#reduced[j] = j === entering ? price * solved[j]! : this.#reduced[j]! + price * solved[j]!
    }
    this.#outside[entering] = leaving.variable
    this.#atLimit[entering] = !isBelow
    leaving.variable = variable
    leaving.constant = constant
    leaving.factors = solved
    return true
  }
}
