import { describe, expect, it, vi } from 'vitest'
import { writePlan } from '#geo/file/write'
import { openPlan } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { savePlan } from '../../../src/storage/plans'
import { lastPlanId, rememberPlanId } from '../../../src/storage/recent'
import { reopenLastPlan } from '../../../src/storage/reopen'
import { smallPlan } from '../../support/builders'
import { freshDevice, setDatabaseFactory } from './device'

freshDevice()

async function keep(text = writePlan(smallPlan())) {
  await savePlan({ id: 'plan-1', name: 'Small orchard', text, things: 5, savedAt: 0 }, { known: '', isNew: false })
  rememberPlanId('plan-1')
  return createPlannerStore(2020)
}

describe('coming back', () => {
  it('opens the plan that was open last, under its id and at its latest season', async () => {
    const store = await keep()
    expect(await reopenLastPlan(store)).toBe(true)
    expect(store.getState()).toMatchObject({ document: { plan: smallPlan(), planId: 'plan-1' }, view: { year: 2026 } })
  })

  it('opens nothing where nothing is remembered, or the plan is gone', async () => {
    const store = createPlannerStore(2020)
    expect(await reopenLastPlan(store)).toBe(false)
    rememberPlanId('plan-1')
    expect(await reopenLastPlan(store)).toBe(false)
    expect(lastPlanId()).toBeNull()
    expect(store.getState().view.notice).toBeNull()
  })

  it('leaves a plan alone that was opened meanwhile', async () => {
    const store = await keep()
    const reopening = reopenLastPlan(store)
    openPlan(store, smallPlan({ name: 'Field' }), 'plan-2')
    expect(await reopening).toBe(false)
    expect(store.getState().document.planId).toBe('plan-2')
  })

  it('says why a plan cannot be opened, and keeps it', async () => {
    const store = await keep('{')
    expect(await reopenLastPlan(store)).toBe(false)
    expect(store.getState().view.notice).toMatch(/^The plan that was open last could not be opened\. ./)
    expect(lastPlanId()).toBe('plan-1')
  })

  it('says that the browser keeps nothing', async () => {
    const store = await keep()
    setDatabaseFactory(undefined)
    expect(await reopenLastPlan(store)).toBe(false)
    expect(store.getState().view.notice).toContain('keeps no data here')
  })

  it('works where nothing small can be remembered', async () => {
    vi.spyOn(Storage.prototype, 'getItem').mockImplementation(() => {
      throw new DOMException('no', 'SecurityError')
    })
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('no', 'SecurityError')
    })
    rememberPlanId('plan-1')
    expect(lastPlanId()).toBeNull()
    expect(await reopenLastPlan(createPlannerStore(2020))).toBe(false)
  })
})
