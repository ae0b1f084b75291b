/**
 * A linear programme, perhaps with whole-number columns: the least (or greatest) `cost x` with every column and row
 * within its limits. Infinite limits are none.
 */
export type LinearProgramme = {
  readonly sense: 'least' | 'greatest'
  readonly columns: readonly {
    readonly cost: number
    readonly low: number
    readonly high: number
    readonly isWhole?: boolean
  }[]
  readonly rows: readonly {
    readonly low: number
    readonly high: number
    readonly terms: readonly { readonly column: number; readonly factor: number }[]
  }[]
}

/** What a solver found in the time it had. */
export type Solution = {
  /** `stopped`: out of time or stopped by hand; `bound` then still holds. */
  readonly status: 'proven' | 'stopped' | 'impossible'
  /** Values of the columns; null where no solution was found. */
  readonly values: Float64Array | null
  readonly objective: number | null
  /** No solution can do better than this; null where nothing is known. */
  readonly bound: number | null
}

export type SolverOptions = {
  /** Seconds. */
  readonly timeLimit: number
  /** A solution to start from. */
  readonly start?: Float64Array
  /** May the gap between objective and bound stay this wide, in units of the objective? 0 unless told. */
  readonly gap?: number
  readonly onProgress?: (bound: number, objective: number | null) => void
  readonly shouldStop?: () => boolean
}

/** A general solver, handed in by whoever has one. */
export type Solver = (problem: LinearProgramme, options: SolverOptions) => Solution | Promise<Solution>

/** The programme in LP text, columns x0, x1, … and rows r0, r1, …; every figure to its last digit. */
export function programmeText({ sense, columns, rows }: LinearProgramme): string {
  const lines = [sense === 'least' ? 'Minimize' : 'Maximize', ' cost:']
  columns.forEach(({ cost }, column) => {
    if (cost !== 0) lines.push(term(cost, column))
  })
  if (columns.every(({ cost }) => cost === 0)) lines.push(' 0 x0')
  lines.push('Subject To')
  rows.forEach(({ low, high, terms }, row) => {
    const sum = terms.map(({ factor, column }) => term(factor, column)).join('\n')
    if (low === high) lines.push(` r${row}:`, sum, ` = ${low}`)
    else {
      if (low > Number.NEGATIVE_INFINITY) lines.push(` r${row}:`, sum, ` >= ${low}`)
      if (high < Number.POSITIVE_INFINITY) lines.push(` s${row}:`, sum, ` <= ${high}`)
    }
  })
  lines.push('Bounds')
  columns.forEach(({ low, high }, column) => {
    lines.push(` ${limit(low)} <= x${column} <= ${limit(high)}`)
  })
  const whole = columns.flatMap(({ isWhole }, column) => (isWhole === true ? [` x${column}`] : []))
  if (whole.length > 0) lines.push('General', ...whole)
  lines.push('End', '')
  return lines.join('\n')
}

function term(factor: number, column: number): string {
  return ` ${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${column}`
}

function limit(value: number): string {
  if (Number.isFinite(value)) return String(value)
  return value > 0 ? '+inf' : '-inf'
}
