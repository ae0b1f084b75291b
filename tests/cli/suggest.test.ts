import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { suggest } from '#geo/siting/suggest'
import { stockFor } from '#geo/stocking/programme'
import { nestreach, scenario, tableUnder } from './nestreach'

function planOf(name: string) {
  const outcome = readPlan(readFileSync(scenario(name), 'utf8'))
  if (!outcome.ok) throw new Error(name)
  return outcome.value
}

function temporaryFile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'nestreach-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  return join(folder, 'answer.plan.geojson')
}

describe('suggest', () => {
  test('answers in words and tables', () => {
    const { out, err, exitCode } = nestreach(['suggest', scenario('mixed-orchard'), '--stations', '2'])
    // Field checks of stations are counted beside the answer, not told one by one.
    expect(err).toMatch(/^warning: \d+ field checks of stations and dates found something; see nestreach check\..*\n$/)
    expect(exitCode).toBe(0)
    expect(out).toMatch(
      /^Sample B: mixed orchard, season 2025\n2 stations with 224 female cocoons would bring coverage to/,
    )
    expect(out).toMatch(/\nNo other layout of these places covers more than \d+\.\d%; this one covers \d+\.\d%\.\n/)
    expect(tableUnder(out, 'Stations to add')).toHaveLength(3)
    expect(tableUnder(out, 'Plantings')).toHaveLength(7)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(130)
  })

  test('gives as JSON the same answer to the digit as the program gives inside', async () => {
    const { out } = nestreach(['suggest', scenario('providence-apples'), '--stations', '2', '--json'])
    const inside = await suggest(planOf('providence-apples'), 2025, { question: { kind: 'stations', count: 2 } })
    if (!inside.ok) throw new Error('no answer')
    const { problems: _, ...told } = JSON.parse(out)
    expect(told).toEqual(JSON.parse(JSON.stringify(inside.value)))
  })

  test('saves the plan with the answer in it, and the saved plan covers what was promised', () => {
    const file = temporaryFile()
    const words = ['suggest', scenario('providence-apples'), '--stations', '2', '--json', '--write', file]
    const promised = JSON.parse(nestreach(words).out)
    const report = JSON.parse(nestreach(['coverage', file, '--json']).out)
    expect(report.orchard.coverage).toBe(promised.after.coverage)
    expect(report.stations).toHaveLength(6)
    expect(nestreach(['check', file]).exitCode).toBe(0)
  })

  test('proves an answer with the solver that lies beside the program', () => {
    const { out, exitCode } = nestreach(['suggest', scenario('providence-apples'), '--stations', '1', '--prove'])
    expect(exitCode).toBe(0)
    expect(out).toContain('\nProven: no other layout of these places covers more.\n')
  })

  test('finds a layout for a target and says how near the cheapest it is', () => {
    const { out, exitCode } = nestreach(['suggest', scenario('mixed-orchard'), '--target', '0.7'])
    expect(exitCode).toBe(0)
    expect(out).toMatch(/would give every planting 70% of what it wants\.\nIt costs at most \d+\.\d% more than/)
  })

  test.each([
    [[], /--stations N or --target SHARE/],
    [['--stations', '2', '--target', '0.9'], /one of the two/],
    [['--stations', '0'], /whole number from 1 to 999/],
    [['--stations', 'two'], /whole number from 1 to 999/],
    [['--target', '90'], /share from 0 to 1/],
    [['--stations', '1', '--year', '1999'], /no season 1999/],
  ])('tells wrong use: %j', (words, told) => {
    const { out, err, exitCode } = nestreach(['suggest', scenario('mixed-orchard'), ...words])
    expect(out).toBe('')
    expect(err).toMatch(told)
    expect(exitCode).toBeGreaterThan(0)
  })

  test('says so where the plan cannot be saved', () => {
    const { err, exitCode } = nestreach(['stock', scenario('allotment'), '--write', '/no-such-folder/x.geojson'])
    expect(err).toMatch(/“\/no-such-folder\/x\.geojson” cannot be written/)
    expect(exitCode).toBe(2)
  })
})

describe('stock', () => {
  test('tells the fewest bees, or which plantings stand in the way', () => {
    const enough = nestreach(['stock', scenario('mixed-orchard'), '--target', '0.4'])
    expect(enough.out).toMatch(/Every planting gets 40% of what it wants from/)
    const short = nestreach(['stock', scenario('mixed-orchard')])
    expect(short.out).toMatch(/5 plantings cannot get 90% of what they want at these stations\./)
    expect(tableUnder(short.out, 'Stations')).toHaveLength(5)
    expect([enough.exitCode, short.exitCode]).toEqual([0, 0])
  })

  test('gives as JSON the same answer as the program inside, and saves it', () => {
    const file = temporaryFile()
    const { out } = nestreach(['stock', scenario('providence-apples'), '--target', '0.5', '--json', '--write', file])
    const inside = stockFor(planOf('providence-apples'), 2025, { target: 0.5 })
    if (!inside.ok) throw new Error('no answer')
    const { problems: _, ...told } = JSON.parse(out)
    expect(told).toEqual(JSON.parse(JSON.stringify(inside.value)))
    const report = JSON.parse(nestreach(['coverage', file, '--json']).out)
    expect(report.orchard.coverage).toBe(inside.value.after.coverage)
  })
})
