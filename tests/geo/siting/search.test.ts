import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { upperBound } from '#geo/siting/bound'
import { exchange } from '#geo/siting/exchange'
import { greedy } from '#geo/siting/greedy'
import { fullValue, Served, type SitingProblem, worthOf } from '#geo/siting/objective'
import { search } from '#geo/siting/search'
import { choices, type KernelName, kernels, randomInstance } from '../../support/siting-instances'
import { sitingProblem } from '../../support/siting-problem'

/** Small problems with whole numbers, so that equal choices tie exactly. */
const problems = fc
  .record({
    points: fc.integer({ min: 1, max: 12 }),
    sites: fc.integer({ min: 1, max: 9 }),
    count: fc.integer({ min: 1, max: 4 }),
  })
  .chain(({ points, sites, count }) =>
    fc.record({
      wanted: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: points, maxLength: points }),
      weight: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: points, maxLength: points }),
      base: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: points, maxLength: points }),
      service: fc.array(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: points, maxLength: points }), {
        minLength: sites,
        maxLength: sites,
      }),
      count: fc.constant(Math.min(count, sites)),
    }),
  )
  .map(({ service, ...rest }) =>
    sitingProblem({ ...rest, columns: service.map(row => row.map((value, point) => ({ point, service: value }))) }),
  )

function best(problem: SitingProblem): number {
  const sites = problem.start.length - 1
  let most = Number.NEGATIVE_INFINITY
  for (const choice of choices(sites, problem.count[0]!)) most = Math.max(most, worthOf(problem, choice))
  return most
}

describe('greedy, exchange, search and bound against every choice', () => {
  it('greedy never falls under 1 - 1/e of what can be added; exchange and search never under greedy', () => {
    fc.assert(
      fc.property(problems, problem => {
        const most = best(problem)
        const given = worthOf(problem, [])
        const first = worthOf(problem, greedy(problem))
        const exchanged = exchange(problem, greedy(problem)).value
        const searched = search(problem).value
        expect(first - given).toBeGreaterThanOrEqual((1 - 1 / Math.E) * (most - given) - 1e-9)
        expect(exchanged).toBeGreaterThanOrEqual(first - 1e-9)
        expect(searched).toBeGreaterThanOrEqual(exchanged - 1e-9)
        expect(searched).toBeLessThanOrEqual(most + 1e-9)
      }),
      { seed: 3, numRuns: 300 },
    )
  })

  it('search finds the best choice of small problems', () => {
    fc.assert(
      fc.property(problems, problem => {
        expect(search(problem).value).toBeCloseTo(best(problem), 9)
      }),
      { seed: 4, numRuns: 300 },
    )
  })

  it('the bound is never under the best choice, however few its steps and whatever it starts from', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 60 }), fc.boolean(), (problem, steps, isGuided) => {
        const { chosen, value } = search(problem)
        const bound = upperBound(problem, { best: value, steps, ...(isGuided && { chosen }) })
        expect(bound).toBeGreaterThanOrEqual(best(problem) - 1e-9)
        expect(bound).toBeLessThanOrEqual(fullValue(problem) + 1e-9)
      }),
      { seed: 5, numRuns: 300 },
    )
  })

  it('each column adds less the more there are', () => {
    fc.assert(
      fc.property(problems, problem => {
        const sites = problem.start.length - 1
        const served = new Served(problem)
        const gains = Array.from({ length: sites }, (_, column) => served.gain(column))
        served.add(0)
        gains.forEach((gain, column) => {
          expect(served.gain(column)).toBeLessThanOrEqual(gain + 1e-12)
        })
        expect(served.loss(0)).toBeCloseTo(gains[0]!, 12)
        served.remove(0)
        expect(served.value).toBeCloseTo(worthOf(problem, []), 12)
      }),
      { seed: 6, numRuns: 100 },
    )
  })
})

describe('search', () => {
  it.each(Object.keys(kernels) as KernelName[])('gives the same answer for the same seed (%s)', kernel => {
    const problem = randomInstance({ points: 120, sites: 40, kernel, seed: 11 })
    const first = search(problem, { seed: 5 })
    expect(search(problem, { seed: 5 })).toEqual(first)
    expect(first.value).toBeCloseTo(worthOf(problem, first.chosen), 9)
    expect(new Set(first.chosen).size).toBe(6)
  })

  it('keeps what is fixed, and chooses as many of each kind as are asked for', () => {
    const one = randomInstance({ points: 60, sites: 20, kernel: 'typical', seed: 2, count: 4 })
    const kind = Uint16Array.from(one.kind, (_, column) => column % 2)
    const { chosen } = search({ ...one, kind, count: [3, 1] }, { fixed: [6] })
    expect(chosen).toContain(6)
    expect(chosen.filter(column => kind[column] === 0)).toHaveLength(3)
    expect(chosen.filter(column => kind[column] === 1)).toHaveLength(1)
  })

  it('never chooses two that clash', () => {
    const one = randomInstance({ points: 60, sites: 20, kernel: 'typical', seed: 2, count: 5 })
    // A ring: every place clashes with the next.
    const clashes = Array.from({ length: 20 }, (_, column) => [(column + 1) % 20, (column + 19) % 20])
    const { chosen } = search({ ...one, clashes })
    expect(chosen).toHaveLength(5)
    for (const column of chosen) for (const other of clashes[column]!) expect(chosen).not.toContain(other)
  })

  it('stops when asked, with a whole choice', () => {
    const problem = randomInstance({ points: 60, sites: 20, kernel: 'near', seed: 2 })
    let asked = 0
    const { chosen } = search(problem, {
      shouldStop: () => {
        asked += 1
        return asked > 2
      },
    })
    expect(asked).toBe(3)
    expect(chosen).toHaveLength(6)
  })
})
