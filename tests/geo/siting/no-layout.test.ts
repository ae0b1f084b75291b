import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { suggest } from '#geo/siting/suggest'

it('says so where no layout reaches a target, rather than that nothing would help', async () => {
  // All cocoons of 2024 go out on one day in March: most of them are gone before the late apples bloom.
  const text = readFileSync(new URL('../../../scenarios/mixed-orchard.plan.geojson', import.meta.url), 'utf8')
  const plan = readPlan(text)
  if (!plan.ok) throw new Error('the sample cannot be read')
  const outcome = await suggest(plan.value, 2024, { question: { kind: 'target', coverage: 0.9 } })
  if (!outcome.ok) throw new Error('no answer')
  expect(outcome.value.stations).toEqual([])
  expect(outcome.value.reached).toBe(false)
  expect(outcome.value.bound.proven).toBe(false)
  expect(outcome.value.cautions).toContainEqual({ kind: 'no-layout', coverage: 0.9, tubes: 200 })
})
