import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { firstDifference } from '../support/near'
import { rewriteScenario, scenarios, scenarioText } from '../support/scenario-maker'

/** One unit in the last decimal of a degree that a plan file carries: a tenth of a millimetre on the ground. */
const lastDecimal = 1.01e-9

describe.each(scenarios)('$name', ({ name, make }) => {
  test('is what its maker makes', () => {
    const plan = make()
    if (process.env.UPDATE) rewriteScenario(name, plan)
    const kept = JSON.parse(scenarioText(name))
    expect(firstDifference(JSON.parse(writePlan(plan)), kept, lastDecimal)).toBeNull()
  })

  test('reads without errors or warnings and is written back to the same text', () => {
    const text = scenarioText(name)
    const outcome = readPlan(text)
    expect(outcome.problems).toEqual([])
    expect(outcome.ok && writePlan(outcome.value)).toBe(text)
  })

  test('says that it is invented', () => {
    expect(make().notes).toMatch(/invented/i)
  })
})

test('every plan in scenarios/ has a maker and the other way round', () => {
  const files = readdirSync(new URL('../../scenarios/', import.meta.url)).filter(file => file !== 'README.md')
  expect(files.sort()).toEqual(scenarios.map(({ name }) => `${name}.plan.geojson`).sort())
})
