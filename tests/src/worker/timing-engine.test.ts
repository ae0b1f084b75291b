import { afterEach, expect, it } from 'vitest'
import { setWeather } from '#geo/plan/edits-seasons'
import { edit, openPlan } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { createTimingEngine } from '../../../src/worker/timing-engine'
import { adviseRelease, compareTypical, startTiming } from '../../../src/worker/timing-schedule'
import { smallPlan } from '../../support/builders'
import { fakeWorkers } from './fake-port'

let stop = () => {}
afterEach(() => stop())

function started() {
  const store = createPlannerStore(2026)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  const workers = fakeWorkers()
  stop = startTiming(store, createTimingEngine(store, workers.makePort))
  return { store, workers }
}

it('works typical days out once for a plan, and again when the plan is another', async () => {
  const { store, workers } = started()
  compareTypical(store)
  compareTypical(store)
  expect(workers.of('typicalCoverage')).toHaveLength(1)
  await workers.of('typicalCoverage')[0]!.answer(0.7)
  expect(store.getState().results.typical).toMatchObject({ status: 'ready', value: { year: 2026, coverage: 0.7 } })
  compareTypical(store)
  expect(workers.of('typicalCoverage')).toHaveLength(1)
  edit(store, setWeather(2026, [['2026-04-01', 2, 12, 0, null]]))
  compareTypical(store)
  expect(workers.of('typicalCoverage')).toHaveLength(2)
})

it('forgets what was asked of another plan', async () => {
  const { store, workers } = started()
  adviseRelease(store, { scope: 'orchard', batches: 2 })
  const [call] = workers.of('releaseAdvice')
  openPlan(store, smallPlan(), 'plan-2', 2026)
  await call!.answer({ ok: false, problems: [] })
  expect(store.getState().results.advice).toEqual({ status: 'idle' })
})
