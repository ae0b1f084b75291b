import fc from 'fast-check'
import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { fewestFemales, mostServed, type StockProblem, servedBy, wholeUnits } from '#geo/stocking/fewest'
import { highsSolver } from '#geo/stocking/highs-solver'
import { CoverProgramme } from '#geo/stocking/simplex'
import type { LinearProgramme } from '#geo/stocking/solver'

const solver = highsSolver(await loadHighs())

function matrix(columns: readonly (readonly number[])[]) {
  const points = columns[0]?.length ?? 0
  return {
    start: Uint32Array.from({ length: columns.length + 1 }, (_, s) => s * points),
    point: Uint32Array.from(columns.flatMap(column => column.map((_, i) => i))),
    service: Float64Array.from(columns.flat()),
  }
}

describe('the simplex for covering', () => {
  const figure = fc.integer({ min: 0, max: 9 })
  const programmes = fc
    .record({ rows: fc.integer({ min: 1, max: 8 }), columns: fc.integer({ min: 1, max: 8 }) })
    .chain(({ rows, columns }) =>
      fc.record({
        cost: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: columns, maxLength: columns }),
        most: fc.array(fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constant(Number.POSITIVE_INFINITY)), {
          minLength: columns,
          maxLength: columns,
        }),
        factors: fc.array(fc.array(figure, { minLength: columns, maxLength: columns }), {
          minLength: rows,
          maxLength: rows,
        }),
        least: fc.array(fc.integer({ min: -3, max: 30 }), { minLength: rows, maxLength: rows }),
      }),
    )

  it('agrees with HiGHS, row by row as rows are added', async () => {
    await fc.assert(
      fc.asyncProperty(programmes, async ({ cost, most, factors, least }) => {
        const own = new CoverProgramme(cost, most)
        for (let rows = 1; rows <= factors.length; rows += 1) {
          own.addRow(Float64Array.from(factors[rows - 1]!), least[rows - 1]!)
          const isMet = own.solve()
          const programme: LinearProgramme = {
            sense: 'least',
            columns: cost.map((each, column) => ({ cost: each, low: 0, high: most[column]! })),
            rows: factors.slice(0, rows).map((row, r) => ({
              low: least[r]!,
              high: Number.POSITIVE_INFINITY,
              terms: row.map((factor, column) => ({ column, factor })),
            })),
          }
          const theirs = await solver(programme, { timeLimit: 10 })
          expect(isMet).toBe(theirs.status === 'proven')
          if (!isMet) return
          expect(own.cost).toBeCloseTo(theirs.objective!, 6)
          const values = own.values
          expect(values.reduce((sum, value, column) => sum + value * cost[column]!, 0)).toBeCloseTo(own.cost, 6)
          values.forEach((value, column) => {
            expect(value).toBeLessThanOrEqual(most[column]! + 1e-6)
          })
        }
      }),
      { seed: 8, numRuns: 80 },
    )
  })
})

/** Two plantings, two stations: the first serves planting A 0.5 a female and B 0.1, the second A 0.1 and B 0.4. */
const byHand: StockProblem = {
  services: matrix([
    [0.5, 0.1],
    [0.1, 0.4],
  ]),
  wanted: Float64Array.of(30, 20),
  base: Float64Array.of(0, 0),
  group: Uint32Array.of(0, 1),
  groups: 2,
  need: Float64Array.of(27, 18),
  most: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  cost: [1, 1],
}

describe('fewest females', () => {
  it('is what two stations need by hand: 0.5 a + 0.1 b = 27 and 0.1 a + 0.4 b = 18', () => {
    const { females, bound } = fewestFemales(byHand)!
    // b = (18 x 0.5 - 27 x 0.1) / (0.5 x 0.4 - 0.1 x 0.1) = 6.3 / 0.19; a = (27 - 0.1 b) / 0.5
    expect(females[1]).toBeCloseTo(6.3 / 0.19, 6)
    expect(females[0]).toBeCloseTo((27 - 0.63 / 0.19) / 0.5, 6)
    expect(bound).toBeCloseTo(females[0]! + females[1]!, 6)
  })

  it('fills the second station when the first is full', () => {
    const { females } = fewestFemales({ ...byHand, most: [20, Number.POSITIVE_INFINITY] })!
    expect(females[0]).toBeCloseTo(20, 6)
    expect(females[1]).toBeCloseTo(170, 6)
    expect(fewestFemales({ ...byHand, most: [20, 20] })).toBeNull()
    expect([...mostServed({ ...byHand, most: [20, 20] })]).toEqual([12, 10])
  })

  it('counts at each plant no more than it wants, and agrees with HiGHS on the programme with every plant', async () => {
    const numbers = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 6, maxLength: 6 })
    const problems = fc.record({
      wanted: numbers,
      services: fc.array(numbers, { minLength: 3, maxLength: 3 }),
      share: fc.constantFrom(0.5, 0.9, 1),
    })
    await fc.assert(
      fc.asyncProperty(problems, async ({ wanted, services, share }) => {
        const group = Uint32Array.of(0, 0, 0, 1, 1, 1)
        const needed = [0, 1].map(g => share * wanted.reduce((sum, each, i) => sum + (group[i] === g ? each : 0), 0))
        const problem: StockProblem = {
          services: matrix(services.map(column => column.map(value => value / 10))),
          wanted: Float64Array.from(wanted),
          base: new Float64Array(6),
          group,
          groups: 2,
          need: Float64Array.from(needed),
          most: [40, 40, 40],
          cost: [1, 1, 1],
        }
        const programme: LinearProgramme = {
          sense: 'least',
          columns: [
            ...problem.cost.map(() => ({ cost: 1, low: 0, high: 40 })),
            ...wanted.map(most => ({ cost: 0, low: 0, high: most })),
          ],
          rows: [
            ...wanted.map((_, i) => ({
              low: Number.NEGATIVE_INFINITY,
              high: 0,
              terms: [
                { column: 3 + i, factor: 1 },
                ...services.map((column, s) => ({ column: s, factor: -column[i]! / 10 })),
              ],
            })),
            ...needed.map((low, g) => ({
              low,
              high: Number.POSITIVE_INFINITY,
              terms: wanted.flatMap((_, i) => (group[i] === g ? [{ column: 3 + i, factor: 1 }] : [])),
            })),
          ],
        }
        const theirs = await solver(programme, { timeLimit: 10 })
        const own = fewestFemales(problem)
        expect(own === null).toBe(theirs.status === 'impossible')
        if (own === null) return
        expect(own.bound).toBeCloseTo(theirs.objective!, 4)
        expect(own.plain).toBeLessThanOrEqual(own.bound + 1e-6)
        servedBy(problem, own.females).forEach((served, g) => {
          expect(served).toBeGreaterThanOrEqual(needed[g]! * (1 - 1e-6))
        })
      }),
      { seed: 9, numRuns: 60 },
    )
  })

  it('in whole units is as little as any whole stock that does', () => {
    const units = wholeUnits(byHand, fewestFemales(byHand)!.females, [1, 1])!
    let least = Number.POSITIVE_INFINITY
    for (let a = 0; a < 200; a += 1) {
      for (let b = 0; b < 200; b += 1) {
        const [first, second] = servedBy(byHand, [a, b])
        if (first! >= 27 && second! >= 18) least = Math.min(least, a + b)
      }
    }
    expect(units[0]! + units[1]!).toBe(least)
    expect(wholeUnits({ ...byHand, most: [50, 31] }, [50, 31], [1, 1])).toBeNull()
  })
})
