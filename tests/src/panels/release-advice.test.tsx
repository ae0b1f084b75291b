import { act, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, test } from 'vitest'
import { setReleases } from '#geo/plan/edits-seasons'
import { seasonOf } from '#geo/plan/plan'
import type { AdviceOptions } from '#geo/timing/advice'
import { releaseAdvice } from '#geo/timing/release-advice'
import { edit, setPage } from '../../../src/state/actions'
import { createTimingEngine } from '../../../src/worker/timing-engine'
import { startTiming } from '../../../src/worker/timing-schedule'
import { smallPlan } from '../../support/builders'
import { fakeWorkers } from '../worker/fake-port'
import { planOf, renderApp } from './render-app'

let stop = () => {}
afterEach(() => stop())

/** Two hundred females set out six weeks before anything blooms: dates from the search are far better. */
const early = setReleases(2026, 'station-1', [{ date: '2026-03-01', females: 200, lot: 'A' }]).apply(smallPlan())

function opened(plan = early) {
  const app = renderApp({ plan })
  const workers = fakeWorkers()
  stop = startTiming(app.store, createTimingEngine(app.store, workers.makePort))
  act(() => setPage(app.store, 'bloom'))
  const look = () => app.user.click(screen.getByRole('button', { name: 'Look for the best dates' }))
  const answer = async () => {
    const call = workers.of('releaseAdvice').at(-1)!
    const [asked, year, options] = call.input as [typeof plan, number, AdviceOptions]
    await act(() => call.answer(releaseAdvice(asked, year, options)))
  }
  const section = () => within(screen.getByRole('region', { name: 'When to set cocoons out' }))
  return { ...app, workers, look, answer, section }
}

describe('advice on release dates', () => {
  test('says dates, what they gain and what the first females live on, and is taken by one press', async () => {
    const { user, store, look, answer, section } = opened()
    await look()
    expect(section().getByText('Trying dates…')).toHaveRole('status')
    await answer()
    const outcome = releaseAdvice(early, 2026, { scope: 'orchard', batches: 2 })
    if (!outcome.ok) throw new RangeError('the small plan can be advised')
    const { advice } = { advice: outcome.value }
    expect(section().getByText(/against your own dates/)).toBeVisible()
    expect(section().getAllByText(/the first females live on/)[0]).toBeVisible()
    await user.click(section().getByRole('button', { name: 'Use these dates' }))
    const { releases = [] } = seasonOf(planOf(store), 2026)!.stations!['station-1']!
    expect(releases.map(({ date }) => date)).toEqual(advice.stations[0]!.batches.map(({ date }) => date))
    expect(releases.reduce((sum, { females }) => sum + females, 0)).toBe(200)
    expect(store.getState().document.past).toHaveLength(1)
    expect(section().getByText(/These dates are in the plan now/)).toBeVisible()
    expect(section().queryByText(/The plan has changed since/)).toBeNull()
    expect(section().queryByRole('button', { name: 'Use these dates' })).toBeNull()
    await user.click(screen.getByRole('button', { name: /^Undo: accept advice/ }))
    expect(planOf(store)).toEqual(early)
  })

  test('is asked for one station and one batch, as chosen', async () => {
    const { user, workers, look } = opened()
    await user.selectOptions(screen.getByLabelText('For'), 'North gate')
    await user.selectOptions(screen.getByLabelText('Set out in'), 'one batch')
    await look()
    expect(workers.of('releaseAdvice')[0]!.input[2]).toEqual({ scope: 'station-1', batches: 1 })
  })

  test('explains how its coverage was worked out', async () => {
    const { user, look, answer, section } = opened()
    await look()
    await answer()
    await user.click(section().getByRole('button', { name: /coverage with these dates/ }))
    const side = screen.getByRole('heading', { name: 'Coverage with the advised dates' })
    expect(side).toBeVisible()
    expect(screen.getByText(/No date is earlier than blossom allows/)).toBeVisible()
  })

  test('of a plan that has changed since is greyed and not to be taken', async () => {
    const { store, look, answer, section } = opened()
    await look()
    await answer()
    act(() => edit(store, setReleases(2026, 'station-1', [{ date: '2026-03-02', females: 10 }])))
    expect(section().getByText(/The plan has changed since/)).toBeVisible()
    expect(section().queryByRole('button', { name: 'Use these dates' })).toBeNull()
  })

  test('can be stopped', async () => {
    const { user, store, look, section } = opened()
    await look()
    await user.click(section().getByRole('button', { name: 'Stop' }))
    expect(store.getState().results.advice).toEqual({ status: 'idle' })
  })

  test('says why it failed', async () => {
    const { workers, look, section } = opened()
    await look()
    await act(async () => workers.of('releaseAdvice').at(-1)!.fail('out of memory'))
    expect(await section().findByRole('alert', {}, { timeout: 10_000 })).toHaveTextContent(/broke off: out of memory/)
  })
})
