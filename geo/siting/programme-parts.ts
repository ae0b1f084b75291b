import type { LinearProgramme } from '../stocking/solver'
import type { SitingProblem } from './objective'

type Term = { readonly column: number; readonly factor: number }

/** What points count, as part of a programme: a column for each that still wants something, and the row that bounds it. */
export type CappedPoints = {
  readonly columns: LinearProgramme['columns']
  /** A point counts no more than what serves it. */
  readonly rows: LinearProgramme['rows']
  /** What the points count before anything is chosen; the programme's worth comes on top. */
  readonly given: number
}

/**
 * The points of a problem, whose columns begin at `first`. `served` says by what column and how much of it a point is
 * served that a column of the problem serves by `service` and that still wants `room`.
 */
export function cappedPoints(
  { wanted, weight, base, start, point, service }: SitingProblem,
  first: number,
  served: (column: number, service: number, room: number) => Term,
): CappedPoints {
  const room = wanted.map((most, i) => Math.max(0, most - base[i]!))
  const open = Array.from(room.keys()).filter(i => room[i]! > 0 && weight[i]! > 0)
  const rowOf = new Map(open.map((i, row) => [i, row]))
  const rows = open.map((_, row) => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [{ column: first + row, factor: 1 }],
  }))
  for (let column = 0; column < start.length - 1; column += 1) {
    for (let entry = start[column]!; entry < start[column + 1]!; entry += 1) {
      const row = rowOf.get(point[entry]!)
      if (row === undefined || service[entry]! === 0) continue
      const { column: by, factor } = served(column, service[entry]!, room[point[entry]!]!)
      rows[row]!.terms.push({ column: by, factor: -factor })
    }
  }
  return {
    columns: open.map(i => ({ cost: weight[i]!, low: 0, high: room[i]! })),
    rows,
    given: wanted.reduce((sum, most, i) => sum + weight[i]! * Math.min(most, base[i]!), 0),
  }
}

/** Of two columns that stand too near each other one is chosen at the most. */
export function apartRows({ clashes }: SitingProblem): LinearProgramme['rows'] {
  return (clashes ?? []).flatMap((others, column) =>
    Array.from(others)
      .filter(other => other > column)
      .map(other => ({ low: 0, high: 1, terms: [column, other].map(each => ({ column: each, factor: 1 })) })),
  )
}
