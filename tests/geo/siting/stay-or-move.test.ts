import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { acceptSuggestion } from '#geo/siting/accept'
import type { SuggestOptions } from '#geo/siting/question'
import { suggest } from '#geo/siting/suggest'
import type { Suggestion } from '#geo/siting/suggestion'
import type { TargetProblem } from '#geo/siting/target-problem'
import { wholeAnswer, withMore } from '#geo/siting/whole-answer'
import { servedBy } from '#geo/stocking/fewest'
import { block, marks, planOf, station } from '../../support/orchard'
import { randomTarget } from '../../support/siting-instances'

async function answer(plan: Plan, year: number, options: SuggestOptions): Promise<Suggestion> {
  const outcome = await suggest(plan, year, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

function scenario(name: string): Plan {
  const outcome = readPlan(readFileSync(`scenarios/${name}.plan.geojson`, 'utf8'))
  if (!outcome.ok) throw new Error(name)
  return outcome.value
}

describe('leave to move', () => {
  it('never makes a target dearer, nor misses one that is reached where all stay', async () => {
    const plan = scenario('mixed-orchard')
    const question = { kind: 'target', coverage: 0.9 } as const
    const used = Object.keys(plan.seasons.find(({ year }) => year === 2025)!.stations!)
    const roles = Object.fromEntries(used.map(id => [id, 'move' as const]))
    const kept = await answer(plan, 2025, { question })
    const moved = await answer(plan, 2025, { question, roles })
    expect(kept.reached && moved.reached).toBe(true)
    expect(moved.cost).toBeLessThanOrEqual(kept.cost)
    expect(moved.bound.cost).toBeLessThanOrEqual(Math.min(moved.cost, kept.bound.cost! + 1e-6))
    const report = evaluate(acceptSuggestion(plan, moved).apply(plan), 2025)
    if (!report.ok) throw new Error('no report')
    for (const { coverage } of report.value.plantings) expect(coverage).toBeGreaterThanOrEqual(0.9 - 1e-6)
  })

  it('leaves stations alone where they do already, at no cost', async () => {
    const ground = [...marks, block('block', [-20, -15, 20, 15], { spacing: 5, rowSpacing: 5 })]
    const stock = { old: [{ date: '2026-04-06', females: 300, males: 540 }] }
    const plan = planOf({ features: [...ground, station('old', 0, 20)], stock })
    const question = { kind: 'target', coverage: 0.5 } as const
    const found = await answer(plan, 2026, { question, roles: { old: 'move' } })
    expect(found).toMatchObject({ reached: true, cost: 0, stations: [], dropped: [], spared: [] })
  })
})

it('puts a station beside those that are full, rather than miss what is needed', () => {
  const problem = randomTarget({ points: 60, sites: 12, kernel: 'far', seed: 4 })
  const few: TargetProblem = { ...problem, most: problem.most.map(() => 60) }
  const full = [0, 1]
  expect(wholeAnswer(few, full)).toBeNull()
  const more = withMore(few, full)!
  expect(more.stations.length).toBeGreaterThan(2)
  const females = new Float64Array(12)
  more.stations.forEach((s, i) => {
    females[s] = more.units[i]!
  })
  servedBy(few, females).forEach((served, g) => {
    expect(served).toBeGreaterThanOrEqual(few.need[g]! * (1 - 1e-6))
  })
  expect(withMore({ ...few, most: few.most.map(() => 1) }, full)).toBeNull()
})
