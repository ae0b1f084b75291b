import { describe, expect, test } from 'vitest'
import { evaluate } from '#geo/report/evaluate'
import type { PlantingResult } from '#geo/report/report'
import { coverageText } from '../../src/cli/coverage-text'
import { smallPlan } from '../support/builders'

const plan = smallPlan()
const outcome = evaluate(plan, 2026)
if (!outcome.ok) throw new RangeError('the small plan has a report')
const report = outcome.value
const planting = report.plantings.find(({ coverage }) => coverage !== null)!

function textOf(plantings: readonly Partial<PlantingResult>[]): readonly string[] {
  return coverageText(
    plan,
    { ...report, plantings: plantings.map(patch => ({ ...planting, ...patch })) },
    'metric',
  ).split('\n')
}

describe('the first sentence', () => {
  test.each([
    [
      [{ coverage: 0.95 }, { name: 'Late apple', coverage: 0.4, shortBy: 38 }],
      '1 of 2 plantings gets enough bees (90% or more of what is wanted); furthest from enough: Late apple, about 38 females short.',
    ],
    [
      [{ name: 'Apples', coverage: 0.4, shortBy: 0.7 }],
      '0 of 1 planting gets enough bees (90% or more of what is wanted); furthest from enough: Apples, about 1 female short.',
    ],
    [[{ coverage: 1 }, { coverage: 1 }], '2 of 2 plantings get enough bees (90% or more of what is wanted).'],
  ])('%#', (plantings, sentence) => {
    expect(textOf(plantings)[1]).toBe(sentence)
  })
})

test('a planting far from enough that no single change helps is told so', () => {
  const line = (patch: Partial<PlantingResult>) => textOf([{ name: 'Late apple', limit: 'none', ...patch }]).join('\n')
  expect(line({ coverage: 0.02 })).toMatch(/Late apple .*no single change is enough/)
  expect(line({ coverage: 0.95 })).toMatch(/Late apple .*nothing much/)
})
