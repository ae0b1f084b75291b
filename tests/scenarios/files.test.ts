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

  // RFC 7946, sections 3.1.6 and 4: longitude first, rings closed, the outer one counter-clockwise.
  test('is drawn as the standard asks', () => {
    for (const { id, geometry } of make().features) {
      // Numbers only: longitude, latitude, longitude, …
      const flat = ([geometry.coordinates].flat(4) as unknown[]).map(Number)
      for (let i = 0; i < flat.length; i += 2) {
        expect(Math.abs(flat[i]!), id).toBeLessThan(180)
        expect(flat[i + 1], id).toBeGreaterThan(40)
        expect(flat[i + 1], id).toBeLessThan(60)
      }
      if (geometry.type !== 'Polygon') continue
      for (const ring of geometry.coordinates) {
        expect(ring.at(-1), id).toEqual(ring[0])
        const twice = ring.slice(1).reduce((sum, [x, y], i) => sum + ring[i]![0] * y - x * ring[i]![1], 0)
        expect(twice, id).toBeGreaterThan(0)
      }
    }
  })

  test('says that it is invented', () => {
    expect(make().notes).toMatch(/invented/i)
  })
})

test('every plan in scenarios/ has a maker and the other way round', () => {
  const files = readdirSync(new URL('../../scenarios/', import.meta.url)).filter(file => file !== 'README.md')
  expect(files.sort()).toEqual(scenarios.map(({ name }) => `${name}.plan.geojson`).sort())
})
