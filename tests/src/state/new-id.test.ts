import { expect, test } from 'vitest'
import { newIds } from '../../../src/state/new-id'
import { smallPlan } from '../../support/builders'

test('ids of a long list are all different, and none is one of the plan', () => {
  const plan = smallPlan()
  const next = newIds(plan)
  const ids = Array.from({ length: 100_000 }, () => next('plant'))
  expect(new Set([...ids, ...plan.features.map(({ id }) => id)]).size).toBe(100_000 + plan.features.length)
  expect(ids.every(id => /^plant-[0-9a-z]{6}$/.test(id))).toBe(true)
})
