import { expect, it } from 'vitest'
import { namesAfter } from '#geo/plan/names-after'
import { rowFeature, smallPlan } from '../../support/builders'

it('counts names of copies on from the highest of their kind', () => {
  const plan = smallPlan({
    features: ['Row 3', 'Row 7', 'Rowan 9', 'Gala'].map((name, i) => rowFeature(`r${i}`, { name })),
  })
  expect(namesAfter(plan, 'Row 3', 2)).toEqual(['Row 8', 'Row 9'])
  expect(namesAfter(plan, 'Gala', 2)).toEqual(['Gala 2', 'Gala 3'])
  expect(namesAfter(plan, undefined, 1)).toEqual([''])
})
