import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { firstDifference } from '../support/near'
import { rewriteScenario, scenarios, scenarioText } from '../support/scenario-maker'

/** One unit in the last decimal of a degree that a plan file carries: a tenth of a millimetre on the ground. */
const lastDecimal = 1.01e-9

/** What each plan is found to have: stations far from mud, on tall posts, facing south, and too few tubes for the first release. */
const fieldChecks: Readonly<Record<string, readonly string[]>> = {
  allotment: ['note mud-far a1', 'note mud-far a2', 'warning mud-far a3', 'warning mud-far a5'],
  'mixed-orchard': [
    'warning tubes-few b1',
    'warning tubes-few b2',
    'note mud-far b1',
    'note facing-unsuited b2',
    'warning mud-far b2',
    'warning mud-far b3',
    'warning mud-far b4',
  ],
  farm: [
    ...['c1', 'c2', 'c3'].map(id => `warning tubes-few ${id}`),
    ...Array.from({ length: 11 }, (_, i) => `warning mud-far c${i + 1}`),
  ],
  'providence-apples': [
    ...['warning station-high d1', 'warning mud-far d1', 'warning station-high d2', 'note mud-far d2'],
    ...['warning station-high d3', 'note mud-far d3', 'warning station-high d4', 'warning mud-far d4'],
  ],
}

describe.each(scenarios)('$name', ({ name, make }) => {
  test('is what its maker makes', () => {
    const plan = make()
    if (process.env.UPDATE) rewriteScenario(name, plan)
    const kept = JSON.parse(scenarioText(name))
    expect(firstDifference(JSON.parse(writePlan(plan)), kept, lastDecimal)).toBeNull()
  })

  test('reads with nothing against it but its field checks, and is written back to the same text', () => {
    const text = scenarioText(name)
    const outcome = readPlan(text)
    const told = outcome.problems.map(({ severity, code, at }) => `${severity} ${code} ${at}`)
    expect(told).toEqual(fieldChecks[name])
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
