import { afterEach, describe, expect, it, vi } from 'vitest'
import { writePlan } from '#geo/file/write'
import { setPlanMembers } from '#geo/plan/edits-settings'
import type { Plan } from '#geo/plan/plan'
import { closePlan, edit, openPlan, undo } from '../../../src/state/actions'
import { createPlannerStore } from '../../../src/state/store'
import { type Autosave, startAutosave } from '../../../src/storage/autosave'
import { keptPlan, listPlans, listRestorePoints, loadRestorePoint } from '../../../src/storage/plans'
import { lastPlanId } from '../../../src/storage/recent'
import { smallPlan } from '../../support/builders'
import { freshDevice, setDatabaseFactory } from './device'

freshDevice()

const running: Autosave[] = []
afterEach(() => {
  for (const autosave of running.splice(0)) autosave.stop()
})

/** One window of the browser. */
function opened(plan: Plan = smallPlan(), planId: string | null = 'plan-1') {
  const store = createPlannerStore(2026)
  const autosave = startAutosave(store)
  running.push(autosave)
  openPlan(store, plan, planId)
  return {
    store,
    autosave,
    rename: (name: string) => edit(store, setPlanMembers({ name })),
    saving: () => store.getState().saving,
    notice: () => store.getState().view.notice,
    planId: () => store.getState().document.planId!,
  }
}

/** Lets the time pass and the disk finish. */
async function pass(milliseconds: number): Promise<void> {
  vi.advanceTimersByTime(milliseconds)
  await finished()
}

async function finished(): Promise<void> {
  for (let i = 0; i < 60; i += 1) await new Promise(resolve => setImmediate(resolve))
}

const textOf = async (id = 'plan-1') => (await keptPlan(id))?.text

describe('autosave', () => {
  it('saves an opened plan as the text of a file, and says when', async () => {
    const { saving } = opened()
    expect(saving()).toEqual({ status: 'saving', at: null, reason: '' })
    await pass(800)
    expect(await textOf()).toBe(writePlan(smallPlan()))
    expect(await listPlans()).toMatchObject([{ id: 'plan-1', name: 'Small orchard', things: 5 }])
    expect(saving()).toEqual({ status: 'saved', at: '14:02', reason: '' })
    expect(lastPlanId()).toBe('plan-1')
  })

  it('saves at most 0.8 s after the last change, and during steady work too', async () => {
    const { rename, saving } = opened()
    await pass(800)
    for (let i = 1; i <= 7; i += 1) {
      rename(`Name ${i}`)
      expect(saving().status).toBe('saving')
      await pass(150)
    }
    expect(await textOf()).toContain('Name 6')
    await pass(799)
    expect(await textOf()).toContain('Name 7')
    expect(saving().status).toBe('saved')
  })

  it('saves at once when the page is hidden', async () => {
    const { rename } = opened()
    await pass(800)
    rename('Hill')
    vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden')
    document.dispatchEvent(new Event('visibilitychange'))
    await finished()
    expect(await textOf()).toContain('Hill')
  })

  it('saves at once when the page is left', async () => {
    const { rename } = opened()
    await pass(800)
    rename('Hill')
    window.dispatchEvent(new Event('pagehide'))
    await finished()
    expect(await textOf()).toContain('Hill')
  })

  it('saves what an undo leaves', async () => {
    const { store, rename } = opened()
    rename('Hill')
    await pass(800)
    undo(store)
    await pass(800)
    expect(await textOf()).toBe(writePlan(smallPlan()))
  })

  it('saves a plan before another one takes its place, or it is closed', async () => {
    const { store, rename } = opened()
    rename('Hill')
    openPlan(store, smallPlan({ name: 'Field' }), 'plan-2')
    await finished()
    expect(await textOf('plan-1')).toContain('Hill')
    edit(store, setPlanMembers({ name: 'Meadow' }))
    closePlan(store)
    await finished()
    expect(await textOf('plan-2')).toContain('Meadow')
    expect(await textOf('plan-1')).toContain('Hill')
    expect(lastPlanId()).toBeNull()
  })

  it('keeps the id of a plan that is kept word for word already', async () => {
    const first = opened()
    await pass(800)
    first.autosave.stop()
    const again = opened(smallPlan(), null)
    await pass(800)
    expect(again.planId()).toBe('plan-1')
    expect(again.saving().status).toBe('saved')
    again.rename('Hill')
    await pass(800)
    expect(await listPlans()).toMatchObject([{ id: 'plan-1', name: 'Hill' }])
  })

  it('saves a plan that was open before it began, and nothing after it was stopped', async () => {
    const store = createPlannerStore(2026)
    openPlan(store, smallPlan(), 'plan-1')
    const autosave = startAutosave(store)
    await autosave.flush()
    expect(await textOf()).toBe(writePlan(smallPlan()))
    autosave.stop()
    edit(store, setPlanMembers({ name: 'Hill' }))
    await pass(5000)
    expect(await textOf()).not.toContain('Hill')
  })
})

describe('saving that fails', () => {
  it('says why, keeps the plan, and tries again with the next change', async () => {
    const working = globalThis.indexedDB
    setDatabaseFactory(undefined)
    const { store, saving, rename } = opened()
    await pass(800)
    expect(saving()).toEqual({
      status: 'failed',
      at: null,
      reason: 'This browser keeps no data here. Save the plan as a file.',
    })
    expect(store.getState().document.plan).toEqual(smallPlan())
    setDatabaseFactory(working)
    rename('Hill')
    await pass(800)
    expect(saving()).toMatchObject({ status: 'saved', reason: '' })
    expect(await textOf()).toContain('Hill')
  })

  it('tries again when the page is left', async () => {
    const working = globalThis.indexedDB
    setDatabaseFactory(undefined)
    opened()
    await pass(800)
    setDatabaseFactory(working)
    window.dispatchEvent(new Event('pagehide'))
    await finished()
    expect(await textOf()).toBe(writePlan(smallPlan()))
  })

  it('leaves no half of a saving behind', async () => {
    const [ours, theirs] = [opened(), opened()]
    await pass(800)
    theirs.rename('Theirs')
    await pass(800)
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    ours.rename('Ours')
    await pass(800)
    full.mockRestore()
    expect(ours.saving().status).toBe('failed')
    expect(await textOf()).toContain('Theirs')
    expect(await listRestorePoints('plan-1')).toEqual([])
  })

  it('says that there is no room left', async () => {
    const { rename, saving } = opened()
    await pass(800)
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    rename('Hill')
    await pass(800)
    expect(saving()).toMatchObject({ status: 'failed', at: '14:02', reason: expect.stringContaining('no room left') })
  })

  it('is told also of a plan that is no longer open', async () => {
    const { store, rename, notice } = opened()
    await pass(800)
    setDatabaseFactory(undefined)
    rename('Hill')
    openPlan(store, smallPlan({ name: 'Field' }), 'plan-2')
    await finished()
    expect(notice()).toBe(
      'The last changes of Hill were not saved. This browser keeps no data here. Save the plan as a file.',
    )
  })
})

describe('a page that is gone before a saving is done', () => {
  /** From now on the disk answers no question: what a page asks for in its last moment it never hears. */
  function silence() {
    return vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementation(() => {
      throw new DOMException('gone', 'AbortError')
    })
  }

  async function leave(name: string) {
    const { autosave, rename } = opened()
    await pass(800)
    rename(name)
    const silent = silence()
    window.dispatchEvent(new Event('pagehide'))
    await finished()
    autosave.stop()
    silent.mockRestore()
    expect(await textOf()).not.toContain(name)
  }

  /** The program starts anew on the same device. */
  async function restart() {
    vi.resetModules()
    return await import('../../../src/storage/plans')
  }

  it('has put its plan aside, and the next start saves it', async () => {
    await leave('Hill')
    const { loadPlan, listRestorePoints: points } = await restart()
    expect(await loadPlan('plan-1')).toMatchObject({ ok: true, value: { name: 'Hill' } })
    expect(await points('plan-1')).toEqual([])
  })

  it('does not write over what was saved later elsewhere: its state becomes a restore point', async () => {
    await leave('Hill')
    vi.setSystemTime(Date.now() + 60_000)
    const other = opened(smallPlan({ name: 'Later' }))
    await pass(800)
    other.autosave.stop()
    const { loadPlan, listRestorePoints: points, loadRestorePoint: point } = await restart()
    expect(await loadPlan('plan-1')).toMatchObject({ value: { name: 'Later' } })
    const labels = await Promise.all((await points('plan-1')).map(({ id }) => point(id)))
    expect(labels.map(outcome => outcome.ok && outcome.value.name)).toContain('Hill')
  })

  it('leaves nothing aside when the saving was done after all', async () => {
    const { autosave, rename } = opened()
    await pass(800)
    rename('Hill')
    window.dispatchEvent(new Event('pagehide'))
    await finished()
    rename('Valley')
    await pass(800)
    autosave.stop()
    const { loadPlan, listRestorePoints: points } = await restart()
    expect(await loadPlan('plan-1')).toMatchObject({ value: { name: 'Valley' } })
    expect(await points('plan-1')).toEqual([])
  })

  it('has put the newest state aside, also when an older one was just being saved', async () => {
    const { autosave, rename } = opened()
    await pass(800)
    rename('Hill')
    void autosave.flush()
    rename('Valley')
    void autosave.flush()
    const silent = silence()
    window.dispatchEvent(new Event('pagehide'))
    await finished()
    autosave.stop()
    silent.mockRestore()
    const { loadPlan } = await restart()
    expect(await loadPlan('plan-1')).toMatchObject({ value: { name: 'Valley' } })
  })
})

describe('two windows with the same plan', () => {
  async function both() {
    const [ours, theirs] = [opened(), opened()]
    await pass(800)
    return { ours, theirs }
  }

  it('lose nothing: what the other saved is a restore point', async () => {
    const { ours, theirs } = await both()
    theirs.rename('Theirs')
    await pass(800)
    ours.rename('Ours')
    await pass(800)
    expect(await textOf()).toContain('Ours')
    const points = await listRestorePoints('plan-1')
    expect(points).toHaveLength(1)
    expect(await loadRestorePoint(points[0]!.id)).toMatchObject({ ok: true, value: { name: 'Theirs' } })
    expect(ours.notice()).toContain('also changed in another window')
    ours.rename('Ours again')
    await pass(800)
    expect(await listRestorePoints('plan-1')).toHaveLength(1)
  })

  it('hear of the other on coming back, once', async () => {
    const { ours, theirs } = await both()
    theirs.rename('Theirs')
    await pass(800)
    theirs.autosave.stop()
    window.dispatchEvent(new Event('focus'))
    await finished()
    expect(ours.notice()).toContain('also changed in another window')
    ours.store.setState(({ view }) => ({ view: { ...view, notice: null } }))
    window.dispatchEvent(new Event('focus'))
    await finished()
    expect(ours.notice()).toBeNull()
  })

  it('hear nothing where nothing happened', async () => {
    const { ours } = await both()
    ours.rename('Ours')
    await pass(800)
    window.dispatchEvent(new Event('focus'))
    await finished()
    expect(ours.notice()).toBeNull()
  })
})
