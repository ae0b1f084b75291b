import { describe, expect, it, vi } from 'vitest'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import {
  addRestorePoint,
  deletePlan,
  keptPlan,
  listPlans,
  listRestorePoints,
  loadPlan,
  loadRestorePoint,
  savePlan,
} from '../../../src/storage/plans'
import { smallPlan } from '../../support/builders'
import { freshDevice, setDatabaseFactory } from './device'

freshDevice()

const named = (name: string): Plan => smallPlan({ name })

function save(id: string, plan: Plan, known = '', isNew = false) {
  const row = { id, name: plan.name, text: writePlan(plan), things: plan.features.length, savedAt: Date.now() }
  return savePlan(row, { known, isNew })
}

describe('kept plans', () => {
  it('come back as they were, from the text of a plan file', async () => {
    await save('plan-1', smallPlan())
    expect((await keptPlan('plan-1'))?.text).toBe(writePlan(smallPlan()))
    expect(await loadPlan('plan-1')).toMatchObject({ ok: true, value: smallPlan() })
  })

  it('are listed without their texts, the latest first', async () => {
    await save('plan-1', named('Hill'))
    vi.setSystemTime(Date.now() + 60_000)
    await save('plan-2', named('Field'))
    expect(await listPlans()).toEqual([
      { id: 'plan-2', name: 'Field', things: 5, savedAt: Date.UTC(2026, 3, 6, 14, 3) },
      { id: 'plan-1', name: 'Hill', things: 5, savedAt: Date.UTC(2026, 3, 6, 14, 2) },
    ])
  })

  it('keep their date when the same text is saved again', async () => {
    await save('plan-1', named('Hill'))
    vi.setSystemTime(Date.now() + 60_000)
    await save('plan-1', named('Hill'))
    expect((await keptPlan('plan-1'))?.savedAt).toBe(Date.UTC(2026, 3, 6, 14, 2))
  })

  it('go with their restore points', async () => {
    await save('plan-1', named('Hill'))
    await addRestorePoint('plan-1', named('Hill'), 'Before import')
    await addRestorePoint('plan-2', named('Field'), 'Before import')
    await deletePlan('plan-1')
    expect(await listPlans()).toEqual([])
    expect(await listRestorePoints('plan-1')).toEqual([])
    expect(await listRestorePoints('plan-2')).toHaveLength(1)
    await expect(loadPlan('plan-1')).rejects.toThrow('This plan is no longer kept on this device.')
  })

  it('that were kept word for word under another id stay under that', async () => {
    await save('plan-1', named('Hill'))
    expect(await save('plan-2', named('Hill'), '', true)).toEqual({ id: 'plan-1', isRival: false })
    expect(await save('plan-3', named('Field'), '', true)).toEqual({ id: 'plan-3', isRival: false })
    expect((await listPlans()).map(({ id }) => id).sort()).toEqual(['plan-1', 'plan-3'])
  })
})

describe('a text that another window saved', () => {
  it('becomes a restore point before it is written over', async () => {
    await save('plan-1', named('Theirs'))
    const saved = await save('plan-1', named('Ours'), writePlan(named('Start')))
    expect(saved.isRival).toBe(true)
    expect((await keptPlan('plan-1'))?.name).toBe('Ours')
    const [point] = await listRestorePoints('plan-1')
    expect(point).toMatchObject({ label: 'Saved in another window', at: Date.UTC(2026, 3, 6, 14, 2) })
    expect(await loadRestorePoint(point!.id)).toMatchObject({ ok: true, value: { name: 'Theirs' } })
  })

  it('is none where it is what this window knew, or what it saves', async () => {
    await save('plan-1', named('Start'))
    expect((await save('plan-1', named('Ours'), writePlan(named('Start')))).isRival).toBe(false)
    expect((await save('plan-1', named('Ours'), writePlan(named('Other')))).isRival).toBe(false)
    expect(await listRestorePoints('plan-1')).toEqual([])
  })
})

describe('restore points', () => {
  it('are the twenty latest of a plan, the latest first', async () => {
    for (let i = 1; i <= 23; i += 1) await addRestorePoint('plan-1', named(`State ${i}`), `Before step ${i}`)
    await addRestorePoint('plan-2', named('Other'), 'Before step 1')
    const points = await listRestorePoints('plan-1')
    expect(points.map(({ label }) => label)).toEqual(Array.from({ length: 20 }, (_, i) => `Before step ${23 - i}`))
    expect(points.every(point => !('text' in point))).toBe(true)
    expect(await loadRestorePoint(points[19]!.id)).toMatchObject({ value: { name: 'State 4' } })
    expect(await listRestorePoints('plan-2')).toHaveLength(1)
  })

  it('are not made twice of the same state', async () => {
    await addRestorePoint('plan-1', named('Hill'), 'Before import')
    await addRestorePoint('plan-1', named('Hill'), 'Before opening')
    expect(await listRestorePoints('plan-1')).toHaveLength(1)
  })
})

describe('a browser that keeps nothing', () => {
  it('says so in words', async () => {
    setDatabaseFactory(undefined)
    await expect(listPlans()).rejects.toThrow('This browser keeps no data here. Save the plan as a file.')
  })

  it('says so where the database cannot be opened, and works once it can', async () => {
    const working = globalThis.indexedDB
    const forbidden = {
      open: () => {
        throw new DOMException('The operation is insecure.', 'SecurityError')
      },
    }
    setDatabaseFactory(forbidden as never)
    await expect(save('plan-1', named('Hill'))).rejects.toThrow(/keeps no data here; a private window/)
    setDatabaseFactory(working)
    await save('plan-1', named('Hill'))
    expect(await listPlans()).toHaveLength(1)
  })
})
