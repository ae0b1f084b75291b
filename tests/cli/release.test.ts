import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { releaseAdvice } from '#geo/timing/release-advice'
import { nestreach, scenario, tableUnder } from './nestreach'

function planOf(text: string) {
  const outcome = readPlan(text)
  if (!outcome.ok) throw new Error('not read')
  return outcome.value
}

function temporaryFile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'nestreach-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  return join(folder, 'answer.plan.geojson')
}

test('dates, shares, gains and the blossom leaned on, in words and tables', () => {
  const { out, exitCode } = nestreach(['release', scenario('mixed-orchard'), '--batches', '2'])
  expect(exitCode).toBe(0)
  const advice = releaseAdvice(planOf(readFileSync(scenario('mixed-orchard'), 'utf8')), 2025, {
    scope: 'orchard',
    batches: 2,
  })
  if (!advice.ok) throw new Error('no advice')
  const { coverage, own, bees, stations } = advice.value
  expect(out).toMatch(
    new RegExp(`^Sample B: mixed orchard, season 2025\nThese dates cover about ${percent(coverage!)}`),
  )
  expect(out).toMatch(new RegExp(`The plan as it is +${percent(own!)}, so \\+\\d+ points?`))
  expect(tableUnder(out, 'Blue orchard bee')).toHaveLength(1 + bees[0]!.batches.length)
  for (const { leansOn } of bees[0]!.batches) expect(out).toContain(`  ${leansOn!.name}\n`)
  expect(tableUnder(out, 'Stations')).toHaveLength(1 + stations.flatMap(({ batches }) => batches).length)
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(150)
})

test('as JSON, the same answer to the digit as the program gives inside', () => {
  const { out } = nestreach(['release', scenario('farm'), '--year', '2024', '--batches', '3', '--json'])
  const inside = releaseAdvice(planOf(readFileSync(scenario('farm'), 'utf8')), 2024, { scope: 'orchard', batches: 3 })
  if (!inside.ok) throw new Error('no advice')
  const { problems: _, ...told } = JSON.parse(out)
  expect(told).toEqual(JSON.parse(JSON.stringify(inside.value)))
})

test('the saved plan covers what was promised, with every cocoon still in it', () => {
  const file = temporaryFile()
  const words = ['release', scenario('mixed-orchard'), '--json', '--write', file]
  const promised = JSON.parse(nestreach(words).out)
  expect(promised.isOwn).toBe(false)
  const report = JSON.parse(nestreach(['coverage', file, '--json']).out)
  // Whole cocoons: the shares of a batch are met to the cocoon, not to the digit.
  expect(Math.abs(report.orchard.coverage - promised.coverage)).toBeLessThan(0.005)
  const females = (text: string) =>
    Object.values(planOf(text).seasons.find(({ year }) => year === 2025)!.stations!)
      .flatMap(({ releases }) => releases ?? [])
      .reduce((sum, release) => sum + release.females, 0)
  expect(females(readFileSync(file, 'utf8'))).toBe(females(readFileSync(scenario('mixed-orchard'), 'utf8')))
  // Asked again, the saved dates are the plan's own and as good as any.
  const again = JSON.parse(nestreach(['release', file, '--json']).out)
  expect(Math.abs(again.coverage - report.orchard.coverage)).toBeLessThan(0.01)
})

test('one station alone: the others keep their dates', () => {
  const { out } = nestreach(['release', scenario('farm'), '--station', 'c3', '--json'])
  const told = JSON.parse(out)
  expect(told.scope).toBe('c3')
  expect(told.stations.map(({ id }: { id: string }) => id)).toEqual(['c3'])
  const wrong = nestreach(['release', scenario('farm'), '--station', 'c99'])
  expect(wrong).toMatchObject({ out: '', exitCode: 1 })
  expect(wrong.err).toMatch(/advice-no-stations/)
})

test('before any cocoons are planned, a date is told and no coverage', () => {
  const plan = JSON.parse(readFileSync(scenario('providence-apples'), 'utf8'))
  for (const use of Object.values(plan.plan.seasons[0].stations) as { releases?: unknown }[]) use.releases = []
  const { out, exitCode } = nestreach(['release', '-'], JSON.stringify(plan))
  expect(exitCode).toBe(0)
  expect(out).toMatch(/\nNo cocoons are set out yet, so no coverage can be told/)
  expect(out).not.toMatch(/NaN|undefined|null/)
})

function percent(share: number): string {
  return `${Math.round(share * 100)}%`
}
