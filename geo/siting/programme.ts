import type { LinearProgramme, Solver, SolverOptions } from '../stocking/solver'
import { columnsOf, type SitingProblem } from './objective'

/** The question of siting as a mixed-integer programme: first a yes or no for each column, then what each point counts. */
export function sitingProgramme(problem: SitingProblem): {
  readonly programme: LinearProgramme
  readonly given: number
} {
  const { wanted, weight, base, start, point, service, kind, count, clashes } = problem
  const columns = columnsOf(problem)
  const room = wanted.map((most, i) => Math.max(0, most - base[i]!))
  const open = Array.from(room.keys()).filter(i => room[i]! > 0 && weight[i]! > 0)
  const rowOf = new Map(open.map((i, row) => [i, row]))
  const rows = open.map((_, row) => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [{ column: columns + row, factor: 1 }],
  }))
  for (let column = 0; column < columns; column += 1) {
    for (let entry = start[column]!; entry < start[column + 1]!; entry += 1) {
      const row = rowOf.get(point[entry]!)
      if (row === undefined || service[entry]! === 0) continue
      // Service cut to what the point still wants: the same for yes or no, and tighter in between.
      rows[row]!.terms.push({ column, factor: -Math.min(service[entry]!, room[point[entry]!]!) })
    }
  }
  const all = Array.from({ length: columns }, (_, column) => column)
  const kinds = count.map((most, k) => {
    const terms = all.filter(column => kind[column] === k).map(column => ({ column, factor: 1 }))
    return { low: 0, high: most, terms }
  })
  const apart = all.flatMap(column =>
    Array.from(clashes?.[column] ?? [])
      .filter(other => other > column)
      .map(other => ({ low: 0, high: 1, terms: [column, other].map(each => ({ column: each, factor: 1 })) })),
  )
  const programme: LinearProgramme = {
    sense: 'greatest',
    columns: [
      ...all.map(() => ({ cost: 0, low: 0, high: 1, isWhole: true })),
      ...open.map(i => ({ cost: weight[i]!, low: 0, high: room[i]! })),
    ],
    rows: [...rows, ...kinds.filter(({ terms }) => terms.length > 0), ...apart],
  }
  const given = wanted.reduce((sum, most, i) => sum + weight[i]! * Math.min(most, base[i]!), 0)
  return { programme, given }
}

export type Proof = {
  /** The solver's choice; null where it found none. */
  readonly chosen: readonly number[] | null
  /** No choice is worth more. */
  readonly bound: number | null
  readonly isProven: boolean
}

/** Asks a general solver for the best choice there is. What it says is only a choice: its worth is summed afresh by the caller. */
export async function prove(problem: SitingProblem, solver: Solver, options: SolverOptions): Promise<Proof> {
  const { programme, given } = sitingProgramme(problem)
  const onProgress = options.onProgress
  const solution = await solver(programme, {
    ...options,
    ...(onProgress && {
      onProgress: (bound: number, objective: number | null) =>
        onProgress(bound + given, objective === null ? null : objective + given),
    }),
  })
  const { values, bound, status } = solution
  const columns = columnsOf(problem)
  return {
    chosen: values && Array.from({ length: columns }, (_, column) => column).filter(column => values[column]! > 0.5),
    bound: bound === null ? null : bound + given,
    isProven: status === 'proven',
  }
}
