import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { addVisit } from '#geo/plan/edits-records'
import { yearRecord } from '#geo/seasons/year'
import { edit, openPlan, setPage, setView } from '../../../src/state/actions'
import { changeAsk } from '../../../src/state/boxes-actions'
import { createPlannerStore } from '../../../src/state/store'
import { startFound } from '../../../src/worker/found-engine'
import { smallPlan } from '../../support/builders'
import { fakeWorkers, settled } from './fake-port'

let stop = () => {}
beforeEach(() => vi.useFakeTimers())
afterEach(() => {
  stop()
  vi.useRealTimers()
})

function started() {
  const store = createPlannerStore(2026)
  const workers = fakeWorkers()
  stop = startFound(store, workers.makePort)
  openPlan(store, smallPlan(), 'plan-1', 2026)
  return { store, asked: () => workers.of('yearRecord') }
}

it('works the season out only while the page that shows it is looked at', async () => {
  const { store, asked } = started()
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()).toHaveLength(0)
  setPage(store, 'years')
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()).toHaveLength(1)
  await settled(() => asked()[0]!.answer(yearRecord(smallPlan(), 2026)))
  expect(store.getState().results.found).toMatchObject({ status: 'ready', value: { year: 2026, prices: null } })
  setView(store, { yearTask: 'round' })
  setView(store, { yearTask: null })
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()).toHaveLength(1)
})

it('asks anew after a record and after the last price, with nothing assumed in between', async () => {
  const { store, asked } = started()
  setPage(store, 'years')
  await vi.advanceTimersByTimeAsync(1000)
  await settled(() => asked()[0]!.answer(yearRecord(smallPlan(), 2026)))
  edit(store, addVisit(2026, 'station-1', { date: '2026-05-20', capped: 30 }))
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()).toHaveLength(2)
  await settled(() => asked()[1]!.answer(yearRecord(store.getState().document.plan!, 2026)))
  changeAsk(store, { prices: { station: 30, femaleCocoon: 1, maleCocoon: 0.5 } })
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()).toHaveLength(2)
  const prices = { station: 30, femaleCocoon: 1, maleCocoon: 0.5, tube: 0.25 }
  changeAsk(store, { prices })
  await vi.advanceTimersByTimeAsync(1000)
  expect(asked()[2]?.input[2]).toEqual({ prices })
})
