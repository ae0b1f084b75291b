import { afterEach, expect, it, vi } from 'vitest'
import { setProperties } from '#geo/plan/edits-features'
import { edit, openPlan, setPage, setYear } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import {
  changeAhead,
  changeMapShown,
  changeYears,
  comparedYears,
  showChangeMap,
  yearAgainst,
} from '../../../src/state/years-actions'
import { createYearsEngine } from '../../../src/worker/years-engine'
import { startYears } from '../../../src/worker/years-schedule'
import { smallPlan, smallSeason } from '../../support/builders'
import { fakeWorkers } from './fake-port'
import { answered, cloud } from './results'

let stop = () => {}
afterEach(() => {
  stop()
  vi.useRealTimers()
})

const plan = smallPlan({ seasons: [smallSeason(2024), smallSeason(2026)] })

function started() {
  const store = createPlannerStore(2026)
  openPlan(store, plan, 'plan-1', 2026)
  const workers = fakeWorkers()
  stop = startYears(store, createYearsEngine(store, workers.makePort))
  return { store, workers }
}

function comparing() {
  const all = started()
  setPage(all.store, 'years')
  changeYears(all.store, { look: 'compare' })
  return all
}

it('asks nothing while nothing of several seasons is on the screen', () => {
  const { store, workers } = started()
  setPage(store, 'years')
  changeYears(store, { map: 'change' })
  expect(workers.calls).toEqual([])
  expect(changeMapShown(store.getState())).toBe('season')
})

it('holds the season looked at against the one before it, or the one that is chosen', async () => {
  const { store, workers } = comparing()
  expect(comparedYears(store.getState())).toEqual([2024, 2026])
  expect(workers.of('compare').map(({ input }) => input.slice(1))).toEqual([[2024, 2026]])
  await workers.of('compare')[0]!.answer({ ok: true, value: { years: [2024, 2026] }, problems: [] })
  expect(store.getState().results.comparison).toMatchObject({ status: 'ready', value: { from: 2024, to: 2026 } })
  setYear(store, 2024)
  expect(yearAgainst(store.getState())).toBe(2026)
  changeYears(store, { against: 1999 })
  expect(yearAgainst(store.getState())).toBe(2026)
  expect(yearAgainst({ ...store.getState(), view: { ...store.getState().view, year: 1999 } })).toBeNull()
})

it('lays the other season out only for a map that shows it', async () => {
  const { store, workers } = comparing()
  await workers.of('compare')[0]!.answer({ ok: true, value: {}, problems: [] })
  expect(workers.of('cloud')).toHaveLength(0)
  showChangeMap(store, 'change')
  expect(workers.of('compare')).toHaveLength(1)
  await workers.of('cloud')[0]!.answer(cloud)
  await workers.of('tryPlan')[0]!.answer(answered(7))
  expect(workers.of('cloud')[0]!.input).toEqual([plan, 2024])
  expect(store.getState().results.otherSeason).toMatchObject({
    status: 'ready',
    value: { year: 2024, cloud, evaluation: { report: { orchard: { supplied: 7 } } } },
  })
  showChangeMap(store, 'beside')
  expect(workers.of('cloud')).toHaveLength(1)
})

it('asks again once an edit has settled, and tells why there is no answer', async () => {
  const { store, workers } = comparing()
  await workers.of('compare')[0]!.answer({ ok: true, value: {}, problems: [] })
  vi.useFakeTimers()
  edit(store, setProperties('row-1', { name: 'Renamed' }))
  edit(store, setProperties('row-1', { name: 'Renamed again' }))
  expect(workers.of('compare')).toHaveLength(1)
  vi.runAllTimers()
  vi.useRealTimers()
  expect(workers.of('compare')).toHaveLength(2)
  await workers.of('compare')[1]!.answer({
    ok: false,
    problems: [{ code: 'no-season', severity: 'error', at: '', values: { year: 2024, seasons: '2026' } }],
  })
  expect(store.getState().results.comparison).toMatchObject({ status: 'failed', last: null })
})

it('reckons both ways of care at once; changing the one that is shown asks nothing', async () => {
  const { store, workers } = started()
  setPage(store, 'years')
  changeYears(store, { look: 'ahead' })
  await workers.of('project')[0]!.answer({ ok: true, value: { care: 'takenIn' }, problems: [] })
  await workers.of('project')[1]!.answer({ ok: true, value: { care: 'outside' }, problems: [] })
  expect(workers.of('project').map(({ input }) => input.slice(1))).toEqual([
    [2026, 5, { care: 'takenIn' }],
    [2026, 5, { care: 'outside' }],
  ])
  changeAhead(store, { care: 'outside' })
  expect(workers.of('project')).toHaveLength(2)
  changeAhead(store, { shareKept: 0.5, seasons: 10 })
  expect(workers.of('project')[2]!.input.slice(1)).toEqual([2026, 10, { care: 'takenIn', shareKept: 0.5 }])
})

it('forgets what it knew of another plan', async () => {
  const { store, workers } = comparing()
  await workers.of('compare')[0]!.answer({ ok: true, value: {}, problems: [] })
  openPlan(store, smallPlan(), 'plan-2', 2026)
  expect(store.getState().results.comparison).toEqual({ status: 'idle' })
  expect(store.getState().years.look).toBeNull()
})
