import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { upperBound } from '#geo/siting/bound'
import { greedy } from '#geo/siting/greedy'
import { type SitingProblem, worthOf } from '#geo/siting/objective'
import { prove } from '#geo/siting/programme'
import { search } from '#geo/siting/search'
import { highsSolver } from '#geo/stocking/highs-solver'
import { choices, type KernelName, kernels, randomInstance } from '../support/siting-instances'
import { type Entry, sitingProblem } from '../support/siting-problem'
import { pmed1 } from './pmed1'

/** Twelve places on a grid of 4 x 3, 50 m apart, with weights 1 to 12 row by row. */
const grid = Array.from({ length: 12 }, (_, i) => ({ x: 50 * (i % 4), y: 50 * Math.floor(i / 4), weight: i + 1 }))
const distances = grid.map(a => grid.map(b => Math.hypot(a.x - b.x, a.y - b.y)))

function covering(sets: readonly (readonly number[])[], weight: readonly number[], count: number): SitingProblem {
  const columns = sets.map(set => set.map(point => ({ point, service: 1 })))
  return sitingProblem({ wanted: weight.map(() => 1), weight, columns, count })
}

/** A row of 121 plants a metre apart, which are also its sites. */
const line = Array.from({ length: 121 }, (_, i) => ({ x: i, y: 0, weight: 1 }))

/**
 * p-median as covering: a point at distances d1 < d2 < … from the places counts d2 - d1 if a place of the first ring is
 * chosen, d3 - d2 if one of the first two is, and so on; what is left of the farthest distance is the sum to travel.
 */
function median(count: number, places = grid): { readonly problem: SitingProblem; readonly farthest: number } {
  const between = places.map(a => places.map(b => Math.hypot(a.x - b.x, a.y - b.y)))
  return medianOf(
    count,
    between,
    places.map(({ weight }) => weight),
  )
}

function medianOf(count: number, between: readonly (readonly number[])[], weights: readonly number[]) {
  const weight: number[] = []
  const columns: Entry[][] = between.map(() => [])
  let farthest = 0
  between.forEach((from, i) => {
    const rings = [...new Set(from)].sort((a, b) => a - b)
    farthest += weights[i]! * rings.at(-1)!
    rings.slice(1).forEach((far, ring) => {
      const near = rings[ring]!
      from.forEach((distance, site) => {
        if (distance <= near) columns[site]!.push({ point: weight.length, service: 1 })
      })
      weight.push(weights[i]! * (far - near))
    })
  })
  return { problem: sitingProblem({ wanted: weight.map(() => 1), weight, columns, count }), farthest }
}

/** Chance of cover 1 - prod(1 - k) as covering: one point for every set of places that may reach a plant. */
function chances(count: number): SitingProblem {
  const weight: number[] = []
  const columns: Entry[][] = grid.map(() => [])
  distances.forEach((from, i) => {
    const k = from.map(distance => Math.exp(-distance / 100))
    for (let set = 0; set < 4096; set += 1) {
      const chance = k.reduce((product, value, site) => product * ((set >> site) & 1 ? value : 1 - value), 1)
      if (chance === 0) continue
      for (let site = 0; site < 12; site += 1) {
        if ((set >> site) & 1) columns[site]!.push({ point: weight.length, service: 1 })
      }
      weight.push(grid[i]!.weight * chance)
    }
  })
  return sitingProblem({ wanted: weight.map(() => 1), weight, columns, count })
}

describe('small exact cases, by exhaustive search', () => {
  it.each([
    [1, 4997.9329760722],
    [2, 3327.4888238242],
    [3, 2674.2640687119],
    [4, 2124.2640687119],
  ])('p-median of the grid, p = %i', (count, optimum) => {
    const { problem, farthest } = median(count)
    expect(farthest - search(problem).value).toBeCloseTo(optimum, 9)
  })

  it('two stations of a row stand at a quarter and three quarters of it', () => {
    const { problem } = median(2, line)
    const [first, second] = [...search(problem).chosen].sort((a, b) => a - b)
    // Of 121 plants one half has 60: its middle plants are equally good.
    expect([29, 30]).toContain(first)
    expect([90, 91]).toContain(second)
  })

  it.each([
    [1, 40],
    [2, 67],
    [3, 76],
  ])('most weight within 50 m of %i places', (count, optimum) => {
    const sets = distances.map(from => from.flatMap((distance, i) => (distance <= 50 ? [i] : [])))
    const weight = grid.map(point => point.weight)
    expect(search(covering(sets, weight, count)).value).toBe(optimum)
  })

  it.each([
    [50, 4],
    [75, 2],
    [100, 2],
  ])('fewest places that cover all within %i m', (radius, fewest) => {
    const sets = distances.map(from => from.flatMap((distance, i) => (distance <= radius ? [i] : [])))
    const weight = grid.map(() => 1)
    expect(search(covering(sets, weight, fewest)).value).toBe(12)
    expect(search(covering(sets, weight, fewest - 1)).value).toBeLessThan(12)
  })

  it.each([
    [1, 43.7461616886, 43.7461616886],
    [2, 61.9952022027, 61.7315571664],
    [3, 70.3784596114, 70.1001416181],
  ])('chance of cover from %i places: the best, and what greedy comes to', (count, best, byGreedy) => {
    const problem = chances(count)
    expect(worthOf(problem, greedy(problem))).toBeCloseTo(byGreedy, 9)
    const found = search(problem)
    expect(found.value).toBeCloseTo(best, 9)
    if (count === 2) expect([...found.chosen].sort((a, b) => a - b)).toEqual([6, 9])
  })

  it('greedy walks into the trap of the one large set; search finds the two that cover all', () => {
    const sets = [
      [0, 1, 2, 3, 4, 5, 6, 7],
      [0, 1, 2, 3, 8, 9],
      [4, 5, 6, 7, 10, 11],
    ]
    const problem = covering(
      sets,
      grid.map(() => 1),
      2,
    )
    expect(worthOf(problem, greedy(problem))).toBe(10)
    expect(search(problem)).toEqual({ chosen: expect.arrayContaining([1, 2]), value: 12 })
  })
})

describe('a published instance, pmed1 of the OR-Library', () => {
  const between = Array.from({ length: pmed1.places }, (_, i) =>
    Array.from({ length: pmed1.places }, (__, j) => (i === j ? 0 : Number.POSITIVE_INFINITY)),
  )
  for (const [from, to, length] of pmed1.roads) {
    between[from]![to] = length
    between[to]![from] = length
  }
  // Shortest ways (Floyd & Warshall).
  for (let k = 0; k < pmed1.places; k += 1)
    for (const from of between)
      for (let j = 0; j < from.length; j += 1) from[j] = Math.min(from[j]!, from[k]! + between[k]![j]!)

  it('has 5819 as the least sum of ways, which the search finds and the bound does not pass', () => {
    const { problem, farthest } = medianOf(
      pmed1.chosen,
      between,
      between.map(() => 1),
    )
    const { chosen, value } = search(problem)
    expect(farthest - value).toBe(5819)
    const nearest = between.map(from => Math.min(...chosen.map(site => from[site]!)))
    expect(nearest.reduce((sum, way) => sum + way, 0)).toBe(5819)
    expect(farthest - upperBound(problem, { best: value, chosen })).toBeLessThanOrEqual(5819)
  })

  it('has 127 as the least longest way from five places (Pullan 2008)', () => {
    const within = (radius: number) =>
      covering(
        between.map(from => from.flatMap((way, i) => (way <= radius ? [i] : []))),
        between.map(() => 1),
        pmed1.chosen,
      )
    expect(search(within(127), { patience: 1000 }).value).toBe(100)
    expect(search(within(126), { patience: 1000 }).value).toBeLessThan(100)
  })
})

describe('against HiGHS as a general solver', async () => {
  const solver = highsSolver(await loadHighs())
  const cases = (Object.keys(kernels) as KernelName[]).flatMap(kernel =>
    [21, 22].map(seed => ({ kernel, seed, points: 80, sites: 25, count: 4 })),
  )

  it.each(cases)('finds what the solver proves ($kernel, seed $seed)', async options => {
    const problem = randomInstance(options)
    const proof = await prove(problem, solver, { timeLimit: 60 })
    const optimum = worthOf(problem, proof.chosen!)
    const found = search(problem)
    expect(proof.isProven).toBe(true)
    expect(proof.bound).toBeCloseTo(optimum, 6)
    expect(found.value).toBeLessThanOrEqual(optimum * (1 + 1e-7))
    expect(found.value).toBeGreaterThanOrEqual(optimum * (1 - 0.001))
    const bound = upperBound(problem, { best: found.value, chosen: found.chosen })
    expect(bound).toBeGreaterThanOrEqual(optimum * (1 - 1e-9))
    expect(bound).toBeLessThanOrEqual(optimum * 1.02)
  })

  it('proves the best of every choice, with clashes and two kinds', async () => {
    const one = randomInstance({ points: 40, sites: 10, kernel: 'typical', seed: 5, count: 3 })
    const kind = Uint16Array.from(one.kind, (_, column) => (column < 5 ? 0 : 1))
    const clashes = kind.map((_, column) => (column + 5) % 10)
    const problem = { ...one, kind, count: [2, 1], clashes: Array.from(clashes, other => [other]) }
    let best = 0
    for (const choice of choices(10, 3)) {
      const isAllowed =
        choice.filter(column => column < 5).length === 2 && choice.every(column => !choice.includes((column + 5) % 10))
      if (isAllowed) best = Math.max(best, worthOf(problem, choice))
    }
    const proof = await prove(problem, solver, { timeLimit: 60 })
    expect(worthOf(problem, proof.chosen!)).toBeCloseTo(best, 6)
    expect(search(problem).value).toBeCloseTo(best, 9)
  })

  it('keeps a bound that holds when it is stopped', async () => {
    const problem = randomInstance({ points: 300, sites: 80, kernel: 'near', seed: 9 })
    const bounds: number[] = []
    const proof = await prove(problem, solver, {
      timeLimit: 60,
      onProgress: bound => bounds.push(bound),
      shouldStop: () => bounds.length > 0,
    })
    expect(proof.isProven).toBe(false)
    expect(proof.bound).toBeGreaterThanOrEqual(search(problem).value)
  })
})
