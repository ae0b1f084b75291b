import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { isFieldCheck } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'

// A plan worked out by an implementation written apart from this one, from the same definition of the model:
// three species, a block with a hole, a turned block, beds, a hedge, own bloom, and a station without bees.
const folder = new URL('.', import.meta.url)
const text = readFileSync(new URL('worked-example.plan.geojson', folder), 'utf8')
const expected = JSON.parse(readFileSync(new URL('worked-example.expected.json', folder), 'utf8'))

/** Every member that `wanted` names is in `found` and agrees: numbers to 1e-9 relative, all else exactly. */
function differences(wanted: unknown, found: unknown, path: string): string[] {
  if (typeof wanted === 'number' && typeof found === 'number') {
    const scale = Math.max(Math.abs(wanted), Math.abs(found), 1e-300)
    return Math.abs(wanted - found) <= 1e-9 * scale ? [] : [`${path}: ${found} instead of ${wanted}`]
  }
  if (wanted !== null && typeof wanted === 'object') {
    if (found === null || typeof found !== 'object') return [`${path}: ${found} instead of an object`]
    return Object.entries(wanted).flatMap(([key, value]) =>
      differences(value, (found as Record<string, unknown>)[key], `${path}.${key}`),
    )
  }
  return wanted === found ? [] : [`${path}: ${found} instead of ${wanted}`]
}

describe('the worked example', () => {
  const plan = readPlan(text)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
  const outcome = evaluate(plan.value, 2026)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  const report = outcome.value

  it('agrees in the orchard, every planting and every station to 1e-9', () => {
    const { orchard, plantings, stations } = report
    expect(differences({ orchard: expected.orchard }, { orchard }, '')).toEqual([])
    expect(plantings.map(({ id }) => id)).toEqual(expected.plantings.map(({ id }: { id: string }) => id))
    expect(differences(expected.plantings, plantings, 'plantings')).toEqual([])
    expect(differences(expected.stations, stations, 'stations')).toEqual([])
  })

  it('has no problems but field checks of its stations', () => {
    const others = report.problems.filter(problem => !isFieldCheck(problem))
    expect(others.filter(({ severity }) => severity !== 'note')).toEqual([])
  })
})
