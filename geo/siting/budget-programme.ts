import type { LinearProgramme } from '../stocking/solver'
import type { Means } from './budget-means'
import { columnsOf, type SitingProblem } from './objective'
import { apartRows, cappedPoints } from './programme-parts'

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
  const { kind } = problem
  const columns = columnsOf(problem)
  const points = cappedPoints(problem, columns + sites, (column, service, room) =>
    column < sites ? { column: columns + column, factor: service } : { column, factor: Math.min(service, room) },
  )
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
  const programme: LinearProgramme = {
    sense: 'greatest',
    columns: [
      ...all.map(() => ({ cost: 0, low: 0, high: 1, isWhole: true })),
      ...places.map(() => ({ cost: 0, low: 0, high: full })),
      ...points.columns,
    ],
    rows: [
      ...points.rows,
      ...stocked,
      ...spent.filter(({ terms }) => terms.length > 0),
      ...moving,
      ...apartRows(problem),
    ],
  }
  return { programme, given: points.given }
}

/** The columns of the problem that a solution of the programme chooses. */
export function placesIn(problem: SitingProblem, sites: number, values: ArrayLike<number>): number[] {
  const columns = columnsOf(problem)
  return Array.from({ length: columns }, (_, column) => column).filter(
    column => values[column]! > 0.5 && (column >= sites || values[columns + column]! > 1e-6),
  )
}
