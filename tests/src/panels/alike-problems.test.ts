import { expect, test } from 'vitest'
import { addFeatures } from '#geo/plan/edits-features'
import type { Feature } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { alikeProblems } from '../../../src/panels/alike-problems'
import { smallPlan } from '../../support/builders'

const tree = (id: string, crop: string): Feature => ({
  type: 'Feature',
  id,
  geometry: { type: 'Point', coordinates: [-1.7, 52.2] },
  properties: { kind: 'plant', name: id, crop },
})
const missing = (at: string): Problem => ({
  code: 'no-bloom',
  severity: 'warning',
  at,
  values: { name: at, year: 2026 },
})

test('bloom dates that are missing are told once for each crop, everything else each by itself', () => {
  const trees = [tree('a', 'apple'), tree('b', 'quince'), tree('c', 'apple')]
  const mud: Problem = { code: 'no-mud', severity: 'note', at: '', values: {} }
  const plan = addFeatures(trees).apply(smallPlan())
  const told = alikeProblems(plan, [missing('a'), missing('b'), mud, missing('c'), missing('gone'), mud])
  expect(told.map(({ all }) => all.map(({ at }) => at))).toEqual([['a', 'c'], ['b'], [''], ['gone'], ['']])
  expect(told[0]!.text).toMatch(/^Apple: 2 plantings have no bloom dates for 2026/)
  expect(told[1]!.text).toMatch(/^b has no bloom dates/)
})
