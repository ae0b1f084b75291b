import { readFileSync } from 'node:fs'
import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { acceptSuggestion } from '#geo/siting/accept'
import { coverageCurve } from '#geo/siting/curve'
import { leastCost } from '#geo/siting/least-cost'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import type { Suggestion } from '#geo/siting/suggestion'
import { leastCostBound } from '#geo/siting/target-bound'
import { targetProgramme } from '#geo/siting/target-programme'
import { servedBy } from '#geo/stocking/fewest'
import { highsSolver } from '#geo/stocking/highs-solver'
import { block, marks, planOf, station } from '../../support/orchard'
import { randomTarget } from '../../support/siting-instances'

const solver = highsSolver(await loadHighs())
const prices = { station: 40, femaleCocoon: 1.2, maleCocoon: 0.3, tube: 0.2 }

async function answer(plan: Plan, options: SuggestOptions, year = 2026): Promise<Suggestion> {
  const outcome = await suggest(plan, year, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

function scenario(name: string): Plan {
  const outcome = readPlan(readFileSync(`scenarios/${name}.plan.geojson`, 'utf8'))
  if (!outcome.ok) throw new Error(name)
  return outcome.value
}

const orchard = planOf({
  features: [...marks, block('west', [-90, -30, -10, 30]), block('east', [30, -30, 90, 30]), station('old', -50, 0)],
  stock: { old: [{ date: '2026-04-06', females: 80, males: 144 }] },
})

describe('a target', () => {
  it('is reached in every planting by the true coverage, at a cost that the bound comes close to', async () => {
    const found = await answer(orchard, { question: { kind: 'target', coverage: 0.9 }, prices })
    const report = evaluate(acceptSuggestion(orchard, found).apply(orchard), 2026)
    if (!report.ok) throw new Error('no report')
    for (const { coverage } of report.value.plantings) expect(coverage).toBeGreaterThanOrEqual(0.9 - 1e-6)
    expect(found.reached).toBe(true)
    expect(found.cost).toBeGreaterThanOrEqual(found.bound.cost! * (1 - 1e-6))
    expect(found.cost).toBeLessThan(found.bound.cost! * 1.1)
    expect(found.bound.coverage).toBeNull()
  })

  it('costs nothing where it is met already', async () => {
    const found = await answer(orchard, { question: { kind: 'target', coverage: 0 }, prices })
    expect(found).toMatchObject({ reached: true, cost: 0, stations: [] })
  })

  it('tells which plantings are out of reach of every place', async () => {
    const own = { ...station('c', -50, 40), properties: { kind: 'candidate' as const } }
    const plan = { ...orchard, features: [...orchard.features, own] as Plan['features'] }
    const found = await answer(plan, { question: { kind: 'target', coverage: 0.9 }, prices })
    expect(found.reached).toBe(false)
    const told = found.cautions.find(({ kind }) => kind === 'out-of-reach')
    expect(told).toMatchObject({ plantings: expect.arrayContaining([expect.objectContaining({ id: 'east' })]) })
  })

  it.each(['typical', 'far'] as const)(
    'is near the optimum that HiGHS proves, and never under its bound (%s)',
    async kernel => {
      const problem = randomTarget({ points: 60, sites: 15, kernel, seed: 4 })
      const proof = await solver(targetProgramme(problem), { timeLimit: 60, gap: 0.99 })
      const found = leastCost(problem)!
      expect(proof.status).toBe('proven')
      expect(found.cost).toBeGreaterThanOrEqual(proof.objective! - 1e-6)
      expect(found.cost).toBeLessThanOrEqual(proof.objective! * 1.005)
      expect(leastCostBound(problem)).toBeLessThanOrEqual(proof.objective! + 1e-6)
      const females = new Float64Array(problem.most.length)
      found.stations.forEach((s, i) => {
        females[s] = found.units[i]!
      })
      servedBy(problem, females).forEach((served, g) => {
        expect(served).toBeGreaterThanOrEqual(problem.need[g]! * (1 - 1e-6))
      })
    },
  )

  it('has no answer where no stock is enough', () => {
    const problem = randomTarget({ points: 60, sites: 4, kernel: 'near', seed: 4 })
    expect(leastCost({ ...problem, most: problem.most.map(() => 1) })).toBeNull()
    expect(leastCostBound({ ...problem, most: problem.most.map(() => 1) })).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('a budget', () => {
  it('is kept to, and more money covers more', async () => {
    let before = 0
    for (const amount of [200, 500, 1000]) {
      const found = await answer(orchard, { question: { kind: 'money', amount }, prices, setOf: 5 })
      expect(found.cost).toBeLessThanOrEqual(amount)
      expect(found.cost).toBeGreaterThan(0.9 * amount)
      expect(found.after.coverage).toBeGreaterThan(before)
      expect(found.after.coverage).toBeLessThanOrEqual(found.bound.coverage!)
      for (const { femaleCocoons } of found.stations) expect(femaleCocoons % 5).toBe(0)
      before = found.after.coverage!
    }
  })

  it('buys nothing where it does not pay for one station', async () => {
    const found = await answer(orchard, { question: { kind: 'money', amount: 39 }, prices })
    expect(found).toMatchObject({ stations: [], cost: 0 })
    expect(found.after.coverage).toBe(found.before.coverage)
  })

  it('spends all cocoons on the stations asked for, and its bound holds for any other way of sharing them', async () => {
    const found = await answer(orchard, { question: { kind: 'cocoons', cocoons: 200, stations: 2 } })
    expect(found.stations.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)).toBe(200)
    expect(found.stations).toHaveLength(2)
    const equal = await answer(orchard, { question: { kind: 'stations', count: 2, cocoons: 100 } })
    expect(found.after.coverage).toBeGreaterThanOrEqual(equal.after.coverage! - 1e-3)
    expect(found.bound.coverage).toBeGreaterThanOrEqual(equal.after.coverage!)
  })
})

describe('the curve of coverage', () => {
  it('begins at coverage as it is, rises, and bends down', async () => {
    const outcome = coverageCurve(orchard, 2026, { most: 6 })
    if (!outcome.ok) throw new Error('no curve')
    const shares = outcome.value.map(({ coverage }) => coverage!)
    const { before, after } = await answer(orchard, { question: { kind: 'stations', count: 2 } })
    expect(outcome.value.map(({ count }) => count)).toEqual([0, 1, 2, 3, 4, 5, 6])
    expect(shares[0]).toBeCloseTo(before.coverage!, 9)
    expect(shares[2]).toBeLessThanOrEqual(after.coverage! + 1e-6)
    expect(shares[2]).toBeGreaterThan(after.coverage! - 0.03)
    for (let i = 1; i < shares.length; i += 1) expect(shares[i]).toBeGreaterThanOrEqual(shares[i - 1]!)
    expect(shares[1]! - shares[0]!).toBeGreaterThan(shares[6]! - shares[5]!)
    for (const { coverage, bound } of outcome.value) expect(bound).toBeGreaterThanOrEqual(coverage!)
    const { cost } = await answer(orchard, { question: { kind: 'stations', count: 2 } })
    expect(outcome.value[2]!.cost).toBeCloseTo(cost, 9)
  })
})

describe('a proof', () => {
  const options = { question: { kind: 'stations', count: 2 }, places: { most: 30 } } as const

  it('closes the bound on demand, and says so', async () => {
    const plan = scenario('providence-apples')
    const found = await answer(plan, options, 2025)
    const stages = new Set<string>()
    const proven = await answer(
      plan,
      { ...options, prove: { solver, timeLimit: 50 }, onProgress: ({ stage }) => stages.add(stage) },
      2025,
    )
    expect(proven.bound.coverage).toBeLessThanOrEqual(found.bound.coverage!)
    expect(proven.after.coverage).toBeGreaterThanOrEqual(found.after.coverage! - 1e-9)
    expect(stages.has('search')).toBe(true)
  })

  it('keeps the bound there was when it is stopped at once', async () => {
    let isSearching = true
    const found = await answer(
      scenario('mixed-orchard'),
      {
        ...options,
        prove: { solver, timeLimit: 50 },
        onProgress: ({ stage }) => {
          if (stage === 'bound') isSearching = false
        },
        shouldStop: () => !isSearching,
      },
      2025,
    )
    expect(found.bound.proven).toBe(false)
    expect(found.after.coverage).toBeLessThanOrEqual(found.bound.coverage!)
    expect(found.bound.coverage).toBeLessThan(1)
  })
})
