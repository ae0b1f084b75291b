import { programmeText, type Solution, type Solver } from './solver'

/** What is used of the HiGHS solver, as its package for JavaScript offers it. */
export type Highs = {
  readonly constants: {
    readonly callbackType: { readonly mipInterrupt: 6 }
    readonly modelStatus: { readonly optimal: number; readonly infeasible: number }
  }
  createModel(source: { readonly format: 'lp'; readonly data: string }): HighsModel
}

type HighsModel = {
  readonly options: { set(name: string, value: boolean | number | string): unknown }
  readonly info: { get(name: string): number | bigint }
  run(callbacks: { 6(event: HighsEvent): undefined }): { readonly modelStatus: number }
  getSolution(): { readonly colValue: ArrayLike<number> }
  getColByName(name: string): number
  setSolution(solution: { readonly colValue: Float64Array }): unknown
  dispose(): void
}

type HighsEvent = {
  readonly data: { readonly mip_dual_bound?: number; readonly mip_primal_bound?: number }
  interrupt(): void
}

/** HiGHS as a solver. It blocks while it solves, so on a page it belongs into a worker. */
export function highsSolver(highs: Highs): Solver {
  return (problem, options) => {
    const model = highs.createModel({ format: 'lp', data: programmeText(problem) })
    try {
      const settings = {
        output_flag: false,
        time_limit: options.timeLimit,
        mip_rel_gap: 0,
        mip_abs_gap: options.gap ?? 1e-9,
      }
      for (const [name, value] of Object.entries(settings)) model.options.set(name, value)
      // The text's columns come back in the order in which it first names them, which is not the programme's.
      const position = problem.columns.map((_, column) => model.getColByName(`x${column}`))
      if (options.start !== undefined) {
        const colValue = new Float64Array(position.length)
        options.start.forEach((value, column) => {
          colValue[position[column]!] = value
        })
        model.setSolution({ colValue })
      }
      const { modelStatus } = model.run({
        6(event) {
          const { mip_dual_bound: bound, mip_primal_bound: objective } = event.data
          if (bound !== undefined && Number.isFinite(bound)) options.onProgress?.(bound, known(objective))
          if (options.shouldStop?.() === true) event.interrupt()
          return undefined
        },
      })
      return solutionOf(
        highs,
        model,
        modelStatus,
        position,
        problem.columns.some(({ isWhole }) => isWhole === true),
      )
    } finally {
      model.dispose()
    }
  }
}

function solutionOf(
  highs: Highs,
  model: HighsModel,
  status: number,
  position: readonly number[],
  isWhole: boolean,
): Solution {
  const { optimal, infeasible } = highs.constants.modelStatus
  if (status === infeasible) return { status: 'impossible', values: null, objective: null, bound: null }
  const feasible = 2
  const hasValues = Number(model.info.get('primal_solution_status')) === feasible
  const { colValue } = hasValues ? model.getSolution() : { colValue: [] }
  const objective = hasValues ? Number(model.info.get('objective_function_value')) : null
  const dual = isWhole ? known(Number(model.info.get('mip_dual_bound'))) : null
  return {
    status: status === optimal ? 'proven' : 'stopped',
    values: hasValues ? Float64Array.from(position, at => colValue[at]!) : null,
    objective,
    bound: isWhole ? dual : status === optimal ? objective : null,
  }
}

/** HiGHS says "nothing yet" with an infinite figure. */
function known(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) || Math.abs(value) >= 1e20 ? null : value
}
