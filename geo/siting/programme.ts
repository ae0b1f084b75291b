import type { LinearProgramme, Solver, SolverOptions } from '../stocking/solver'
import { columnsOf, type SitingProblem } from './objective'
import { apartRows, cappedPoints } from './programme-parts'

/** The question of siting as a mixed-integer programme: first a yes or no for each column, then what each point counts. */
function sitingProgramme(problem: SitingProblem): {
  readonly programme: LinearProgramme
  readonly given: number
} {
  const { kind, count } = problem
  const columns = columnsOf(problem)
  const points = cappedPoints(problem, columns, (column, service, room) => ({
    column,
    // Service cut to what the point still wants: the same for yes or no, and tighter in between.
    factor: Math.min(service, room),
  }))
  const all = Array.from({ length: columns }, (_, column) => column)
  const kinds = count.map((most, k) => {
    const terms = all.filter(column => kind[column] === k).map(column => ({ column, factor: 1 }))
    return { low: 0, high: most, terms }
  })
  const programme: LinearProgramme = {
    sense: 'greatest',
    columns: [...all.map(() => ({ cost: 0, low: 0, high: 1, isWhole: true })), ...points.columns],
    rows: [...points.rows, ...kinds.filter(({ terms }) => terms.length > 0), ...apartRows(problem)],
  }
  return { programme, given: points.given }
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
