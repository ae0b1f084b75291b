import { expect, test } from 'vitest'
import { writePlan } from '#geo/file/write'
import { printByParts } from '../../../src/storage/print-by-parts'
import { rowFeature, smallPlan } from '../../support/builders'

/** Two plans of the same rows that share no object. */
const large = () =>
  smallPlan({ features: Array.from({ length: 400 }, (_, i) => rowFeature(`row-${i}`, { name: `R${i}` })) })

test('a plan printed by parts is the text that it is at once', async () => {
  const plan = large()
  await printByParts(plan)
  expect(writePlan(plan)).toBe(writePlan(large()))
})

test('a large plan is printed with pauses, once; a small one needs none', async () => {
  const plan = large()
  let isDone = false
  const printing = printByParts(plan)!.then(() => {
    isDone = true
  })
  await Promise.resolve()
  expect(isDone).toBe(false)
  await printing
  expect(printByParts(plan)).toBeNull()
  expect(printByParts({ ...plan, features: [rowFeature('new'), ...plan.features] })).toBeNull()
  expect(printByParts(smallPlan())).toBeNull()
})
