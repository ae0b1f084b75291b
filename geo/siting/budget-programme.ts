import type { LinearProgramme } from '../stocking/solver'
import type { Means } from './budget-means'
import { columnsOf, type SitingProblem } from './objective'

/**
 * A budget as a mixed-integer programme: whether each column of the problem is chosen, then the females at each of the
 * first `sites` columns (a new station there), then what each point counts. Females need not be whole and males and
 * tubes are not rounded up, so what it comes to is a ceiling for whole cocoons. Columns of the problem serve by one
 * female for a new station, in full for one that moves.
 */
export function budgetProgramme(
  problem: SitingProblem,
  sites: number,
  { most, unit, limits }: Pick<Means, 'most' | 'unit' | 'limits'>,
): { readonly programme: LinearProgramme; readonly given: number } {
  const { wanted, weight, base, start, point, service, kind, clashes } = problem
  const columns = columnsOf(problem)
  const room = wanted.map((limit, i) => Math.max(0, limit - base[i]!))
  const open = Array.from(room.keys()).filter(i => room[i]! > 0 && weight[i]! > 0)
  const rowOf = new Map(open.map((i, row) => [i, row]))
  const first = columns + sites
  const counted = open.map((_, row) => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [{ column: first + row, factor: 1 }],
  }))
  for (let column = 0; column < columns; column += 1) {
    for (let entry = start[column]!; entry < start[column + 1]!; entry += 1) {
      const row = rowOf.get(point[entry]!)
      if (row === undefined || service[entry]! === 0) continue
      const isFresh = column < sites
      const value = isFresh ? service[entry]! : Math.min(service[entry]!, room[point[entry]!]!)
      counted[row]!.terms.push({ column: isFresh ? columns + column : column, factor: -value })
    }
  }
  const full = most * unit
  const places = Array.from({ length: sites }, (_, site) => site)
  const stocked = places.map(site => ({
    low: Number.NEGATIVE_INFINITY,
    high: 0,
    terms: [
      { column: columns + site, factor: 1 },
      { column: site, factor: -full },
    ],
  }))
  const spent = limits.map(({ opening, perFemale, most: high }) => ({
    low: Number.NEGATIVE_INFINITY,
    high,
    terms: places
      .flatMap(site => [
        { column: site, factor: opening[site]! },
        { column: columns + site, factor: perFemale },
      ])
      .filter(({ factor }) => factor !== 0),
  }))
  const all = Array.from({ length: columns }, (_, column) => column)
  const kinds = [...new Set(kind)].filter(k => k > 0)
  const moving = kinds.map(k => ({
    low: 0,
    high: 1,
    terms: all.filter(column => kind[column] === k).map(column => ({ column, factor: 1 })),
  }))
  const apart = all.flatMap(column =>
    Array.from(clashes?.[column] ?? [])
      .filter(other => other > column)
      .map(other => ({ low: 0, high: 1, terms: [column, other].map(each => ({ column: each, factor: 1 })) })),
  )
  const programme: LinearProgramme = {
    sense: 'greatest',
    columns: [
      ...all.map(() => ({ cost: 0, low: 0, high: 1, isWhole: true })),
      ...places.map(() => ({ cost: 0, low: 0, high: full })),
      ...open.map(i => ({ cost: weight[i]!, low: 0, high: room[i]! })),
    ],
    rows: [...counted, ...stocked, ...spent.filter(({ terms }) => terms.length > 0), ...moving, ...apart],
  }
  const given = wanted.reduce((sum, limit, i) => sum + weight[i]! * Math.min(limit, base[i]!), 0)
  return { programme, given }
}

/** The columns of the problem that a solution of the programme chooses. */
export function placesIn(problem: SitingProblem, sites: number, values: ArrayLike<number>): number[] {
  const columns = columnsOf(problem)
  return Array.from({ length: columns }, (_, column) => column).filter(
    column => values[column]! > 0.5 && (column >= sites || values[columns + column]! > 1e-6),
  )
}
