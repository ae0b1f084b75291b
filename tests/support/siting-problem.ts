import type { SitingProblem } from '#geo/siting/objective'

/** Service of one column to one point. */
export type Entry = { readonly point: number; readonly service: number }

/** A problem from lists: one column for each place, all of one kind, `count` of them to be chosen. */
export function sitingProblem(input: {
  readonly wanted: readonly number[]
  readonly weight?: readonly number[]
  readonly base?: readonly number[]
  readonly columns: readonly (readonly Entry[])[]
  readonly count: number
}): SitingProblem {
  const { wanted, columns, count } = input
  const start = new Uint32Array(columns.length + 1)
  columns.forEach((entries, column) => {
    start[column + 1] = start[column]! + entries.length
  })
  return {
    wanted: Float64Array.from(wanted),
    weight: input.weight === undefined ? new Float64Array(wanted.length).fill(1) : Float64Array.from(input.weight),
    base: input.base === undefined ? new Float64Array(wanted.length) : Float64Array.from(input.base),
    start,
    point: Uint32Array.from(columns.flatMap(entries => entries.map(({ point }) => point))),
    service: Float64Array.from(columns.flatMap(entries => entries.map(({ service }) => service))),
    kind: new Uint16Array(columns.length),
    count: [count],
  }
}
