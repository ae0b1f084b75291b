import type { IDBPDatabase } from 'idb'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import { type PlanDatabase, type PlanRow, planDatabase, type RestorePointRow } from './database'
import { settlePartings, takeBack } from './partings'
import { sweepImages } from './pictures'
import { StorageError, storageError } from './storage-error'
import { latestFirst, type Saved, type Saving, type Writing, writePoint, writeRow, writeWhole } from './writing'

// Every function here may reject, with a StorageError whose message is meant to be read.

/** A kept plan without its text. */
export type KeptPlan = Omit<PlanRow, 'text'>

export type RestorePoint = Omit<RestorePointRow, 'text'>

/** Plans kept on this device, the latest first. */
export function listPlans(): Promise<readonly KeptPlan[]> {
  return attempt(async database => {
    const rows = await database.getAll('plans')
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
  return attempt(database => database.get('plans', id))
}

/** Takes a plan off this device for good, with its restore points. */
export function deletePlan(id: string): Promise<void> {
  return change(async writing => {
    await writing.objectStore('plans').delete(id)
    const points = writing.objectStore('restorePoints')
    for (const key of await points.index('planId').getAllKeys(id)) await points.delete(key)
    await sweepImages(writing)
  })
}

/** Keeps a plan. `partingKey` names what the same window may have put aside, which this makes needless. */
export function savePlan(row: PlanRow, saving: Saving & { readonly partingKey?: string }): Promise<Saved> {
  return change(async writing => {
    const saved = await writeRow(writing, row, saving)
    if (saving.partingKey !== undefined) {
      await writing.objectStore('partings').delete(saving.partingKey)
      takeBack(saving.partingKey)
    }
    return saved
  })
}

/** Keeps a plan as it is now, before something large happens to it. The twenty latest of a plan are kept. */
export function addRestorePoint(planId: string, plan: Plan, label: string): Promise<void> {
  const point = { planId, label, text: writePlan(plan), at: Date.now() }
  return change(writing => writePoint(writing, point))
}

/** Restore points of a plan, the latest first. */
export function listRestorePoints(planId: string): Promise<readonly RestorePoint[]> {
  return attempt(async database => {
    const rows = await database.getAllFromIndex('restorePoints', 'planId', planId)
    return rows.map(({ text: _, id = 0, ...point }) => ({ id, ...point })).sort(latestFirst)
  })
}

export async function loadRestorePoint(id: number): Promise<Outcome<Plan>> {
  const row = await attempt(database => database.get('restorePoints', id))
  if (row === undefined) throw new StorageError('This restore point is no longer kept on this device.')
  return readPlan(row.text)
}

const settled = new WeakMap<IDBPDatabase<PlanDatabase>, Promise<void>>()

/** Works on the database after what an earlier window left undone was done. */
async function attempt<T>(work: (database: IDBPDatabase<PlanDatabase>) => Promise<T>): Promise<T> {
  try {
    const database = await planDatabase()
    // Where it fails it stays for the next start: it must not stand between the person and the plans.
    const settling = settled.get(database) ?? settlePartings(database).catch(() => {})
    settled.set(database, settling)
    await settling
    return await work(database)
  } catch (error) {
    throw storageError(error)
  }
}

function change<T>(work: (writing: Writing) => Promise<T>): Promise<T> {
  return attempt(database => writeWhole(database, work))
}
