import type { IDBPTransaction } from 'idb'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import { type PlanDatabase, type PlanRow, planDatabase, type RestorePointRow } from './database'
import { StorageError, storageError } from './storage-error'

// Every function here may reject, with a StorageError whose message is meant to be read.

/** A kept plan without its text. */
export type KeptPlan = Omit<PlanRow, 'text'>

export type RestorePoint = Omit<RestorePointRow, 'text'>

const mostRestorePoints = 20

/** Plans kept on this device, the latest first. */
export function listPlans(): Promise<readonly KeptPlan[]> {
  return attempt(async () => {
    const rows = await (await planDatabase()).getAll('plans')
    return rows.map(({ text: _, ...plan }) => plan).sort((a, b) => b.savedAt - a.savedAt)
  })
}

export async function loadPlan(id: string): Promise<Outcome<Plan>> {
  const row = await keptPlan(id)
  if (row === undefined) throw new StorageError('This plan is no longer kept on this device.')
  return readPlan(row.text)
}

/** The row of a kept plan; undefined where there is none. */
export function keptPlan(id: string): Promise<PlanRow | undefined> {
  return attempt(async () => (await planDatabase()).get('plans', id))
}

/** Takes a plan off this device for good, with its restore points. */
export function deletePlan(id: string): Promise<void> {
  return attempt(async () => {
    const transaction = (await planDatabase()).transaction(['plans', 'restorePoints'], 'readwrite')
    const points = transaction.objectStore('restorePoints')
    await transaction.objectStore('plans').delete(id)
    for (const key of await points.index('planId').getAllKeys(id)) await points.delete(key)
    await transaction.done
  })
}

/** What a saving did. `isRival`: the text that stood there came from elsewhere; it is a restore point now. */
export type Saved = { readonly id: string; readonly isRival: boolean }

/**
 * Keeps a plan. `known` is the text that this window last read or wrote there: any other text was saved by another
 * window and becomes a restore point before it is written over. A plan that was never kept under its id, but is kept
 * word for word under another, keeps that one (`isNew`).
 */
export function savePlan(
  row: PlanRow,
  { known, isNew }: { readonly known: string; readonly isNew: boolean },
): Promise<Saved> {
  return attempt(async () => {
    const transaction = (await planDatabase()).transaction(['plans', 'restorePoints'], 'readwrite')
    const plans = transaction.objectStore('plans')
    const before = await plans.get(row.id)
    if (before === undefined && isNew) {
      const twin = (await plans.getAll()).find(({ text }) => text === row.text)
      if (twin !== undefined) {
        await transaction.done
        return { id: twin.id, isRival: false }
      }
    }
    const isRival = before !== undefined && before.text !== known && before.text !== row.text
    if (isRival) {
      const { text, savedAt } = before
      await addPoint(transaction, { planId: row.id, label: 'Saved in another window', text, at: savedAt })
    }
    if (before?.text !== row.text) await plans.put(row)
    await transaction.done
    return { id: row.id, isRival }
  })
}

/** Keeps a plan as it is now, before something large happens to it. The twenty latest of a plan are kept. */
export function addRestorePoint(planId: string, plan: Plan, label: string): Promise<void> {
  const point = { planId, label, text: writePlan(plan), at: Date.now() }
  return attempt(async () => {
    const transaction = (await planDatabase()).transaction(['plans', 'restorePoints'], 'readwrite')
    await addPoint(transaction, point)
    await transaction.done
  })
}

/** Restore points of a plan, the latest first. */
export function listRestorePoints(planId: string): Promise<readonly RestorePoint[]> {
  return attempt(async () => {
    const rows = await (await planDatabase()).getAllFromIndex('restorePoints', 'planId', planId)
    return rows.map(({ text: _, id = 0, ...point }) => ({ id, ...point })).sort(latestFirst)
  })
}

export async function loadRestorePoint(id: number): Promise<Outcome<Plan>> {
  const row = await attempt(async () => (await planDatabase()).get('restorePoints', id))
  if (row === undefined) throw new StorageError('This restore point is no longer kept on this device.')
  return readPlan(row.text)
}

type Writing = IDBPTransaction<PlanDatabase, ('plans' | 'restorePoints')[], 'readwrite'>

async function addPoint(transaction: Writing, point: Omit<RestorePointRow, 'id'>): Promise<void> {
  const points = transaction.objectStore('restorePoints')
  const rows = await points.index('planId').getAll(point.planId)
  const kept = rows.map(({ id = 0, at, text }) => ({ id, at, text })).sort(latestFirst)
  // The same state twice would only push an older one out.
  if (kept[0]?.text === point.text) return
  await points.add(point)
  for (const { id } of kept.slice(mostRestorePoints - 1)) await points.delete(id)
}

type Dated = { readonly id: number; readonly at: number }

function latestFirst(a: Dated, b: Dated): number {
  return b.at - a.at || b.id - a.id
}

async function attempt<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw storageError(error)
  }
}
