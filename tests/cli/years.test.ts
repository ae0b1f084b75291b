import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { causeNames } from '#geo/seasons/mixture'
import { project } from '#geo/seasons/project'
import { nestreach, scenario, tableUnder } from './nestreach'

function planOf(name: string) {
  const outcome = readPlan(readFileSync(scenario(name), 'utf8'))
  if (!outcome.ok) throw new Error(name)
  return outcome.value
}

describe('compare', () => {
  test('answers in words and tables', () => {
    const { out, exitCode } = nestreach(['compare', scenario('mixed-orchard'), '--years', '2024,2025'])
    expect(exitCode).toBe(0)
    expect(out).toMatch(
      /^Sample B: mixed orchard, 2024 beside 2025\nThe orchard's coverage was \d+% and is \d+%: \+\d+ points\.\n/,
    )
    expect(tableUnder(out, 'Why it changed').join('\n')).toMatch(/two new stations +\+\d+ points/)
    expect(tableUnder(out, 'Why it changed').join('\n')).toMatch(/three batches instead of one +\+\d+ points/)
    expect(tableUnder(out, 'Plantings')).toHaveLength(7)
    expect(tableUnder(out, 'Stations counted in both seasons')).toHaveLength(3)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(130)
  })

  test('gives as JSON the shape that programs rely on, parts adding up to the change', () => {
    const { out, exitCode } = nestreach(['compare', scenario('farm'), '--years', '2024,2025', '--json'])
    expect(exitCode).toBe(0)
    const { years, orchard, plantings, problems } = JSON.parse(out)
    expect(years).toEqual([2024, 2025])
    expect(Object.keys(orchard.coverage)).toEqual(['from', 'to', 'change'])
    expect(Object.keys(orchard.causes)).toEqual([...causeNames])
    const sum = (causes: Record<string, number>) => Object.values(causes).reduce((all, part) => all + part, 0)
    expect(Math.abs(sum(orchard.causes) - orchard.coverage.change)).toBeLessThan(1e-9)
    for (const { id, from, to, change, causes } of plantings) {
      expect(id).toBeTypeOf('string')
      expect(change).toBe(to - from)
      expect(Math.abs(sum(causes) - change)).toBeLessThan(1e-9)
    }
    expect(problems).toBeInstanceOf(Array)
  })

  test('says which seasons there are where one is not, and ends with 1', () => {
    const { err, exitCode } = nestreach(['compare', scenario('farm'), '--years', '2024,2031'])
    expect(exitCode).toBe(1)
    expect(err).toMatch(/no season 2031. Seasons in the plan: 2024, 2025/)
    const json = nestreach(['compare', scenario('farm'), '--years', '2024,2031', '--json'])
    expect(JSON.parse(json.out)).toMatchObject({ years: [2024, 2031], orchard: null, plantings: [] })
  })
})

describe('project', () => {
  test('answers in words and tables', () => {
    const { out, exitCode } = nestreach(['project', scenario('mixed-orchard'), '--seasons', '3'])
    expect(exitCode).toBe(0)
    expect(out).toMatch(/^Sample B: mixed orchard, the seasons after 2025: cocoons taken in, sorted and kept cold\n/)
    const rows = tableUnder(out, 'Each figure')
    expect(rows).toHaveLength(4)
    for (const row of rows.slice(1)) expect(row).toMatch(/\d+% \((under )?\d+% to \d+%\)$/)
    expect(out).toMatch(/ {2}2026 {2}\d+: \d+ at B1/)
  })

  test('gives as JSON what the program gives inside', () => {
    const { out } = nestreach([
      'project',
      scenario('allotment'),
      '--year',
      '2024',
      '--seasons',
      '2',
      '--outside',
      '--json',
    ])
    const inside = project(planOf('allotment'), 2024, 2, { care: 'outside' })
    if (!inside.ok) throw new Error('no answer')
    const { problems: _, ...answer } = JSON.parse(out)
    expect(answer).toEqual(JSON.parse(JSON.stringify(inside.value)))
    expect(Object.keys(answer.seasons[0])).toEqual(
      expect.arrayContaining(['year', 'cocoons', 'females', 'tubes', 'coverage']),
    )
  })
})
