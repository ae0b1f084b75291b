import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { seasonTasks } from '#geo/calendar/tasks'
import { readPlan } from '#geo/file/read'
import { calendarFaults } from '../support/calendar-linter'
import { built, nestreach, scenario, scenarioNames } from './nestreach'

test.each(scenarioNames)('%s becomes a calendar without fault', name => {
  const { out, err, exitCode } = nestreach(['calendar', scenario(name)])
  expect({ err, exitCode }).toEqual({ err: '', exitCode: 0 })
  expect(calendarFaults(out)).toEqual([])
})

test('--json lists the tasks that the program works out inside, with their cautions in words', () => {
  const plan = readPlan(readFileSync(scenario('farm'), 'utf8'))
  const tasks = plan.ok ? seasonTasks(plan.value, 2024) : plan
  const { out, exitCode } = nestreach(['calendar', scenario('farm'), '--year', '2024', '--json'])
  const told = JSON.parse(out)
  expect(exitCode).toBe(0)
  expect(told).toMatchObject({ plan: 'Sample C: farm with early and late blocks', year: 2024, problems: [] })
  expect(told.tasks.map(({ cautions: _, ...task }: { cautions: string[] }) => task)).toEqual(
    tasks.ok && tasks.value.map(({ cautions: _, ...task }) => JSON.parse(JSON.stringify(task))),
  )
  for (const { cautions } of told.tasks) for (const caution of cautions) expect(caution).toMatch(/^[A-Z].*\.$/)
})

test('what is not known is said beside the calendar', () => {
  const plan = JSON.parse(readFileSync(scenario('providence-apples'), 'utf8'))
  plan.plan.seasons[0].stations = {}
  const { out, err, exitCode } = nestreach(['calendar', '-'], JSON.stringify(plan))
  expect(exitCode).toBe(0)
  expect(calendarFaults(out)).toEqual([])
  expect(out.match(/^BEGIN:VEVENT/gm)).toHaveLength(2)
  expect(err).toMatch(/^warning: No station is in use in 2025\./m)
})

test('a season of which nothing is known, or none at all, makes no file', () => {
  const plan = JSON.parse(readFileSync(scenario('providence-apples'), 'utf8'))
  plan.plan.seasons = [{ year: 2025 }]
  const empty = nestreach(['calendar', '-'], JSON.stringify(plan))
  expect(empty).toMatchObject({ out: '', exitCode: 1 })
  expect(empty.err).toMatch(/calendar-empty/)
  plan.plan.seasons = []
  expect(nestreach(['calendar', '-'], JSON.stringify(plan))).toMatchObject({ out: '', exitCode: 1 })
  expect(nestreach(['calendar', scenario('farm'), '--year', '1999'])).toMatchObject({ out: '', exitCode: 1 })
})

test('days do not hang on the time zone of the machine', () => {
  const days = ['UTC', 'Pacific/Auckland', 'America/Los_Angeles'].map(TZ => {
    const { stdout } = spawnSync(process.execPath, [built, 'calendar', scenario('farm')], {
      encoding: 'utf8',
      env: { ...process.env, TZ },
    })
    return stdout.match(/^DT(?:START|END).*$/gm)
  })
  expect(days[0]!.length).toBeGreaterThan(20)
  expect(days[1]).toEqual(days[0])
  expect(days[2]).toEqual(days[0])
})
