import type { IDBPDatabase, IDBPTransaction } from 'idb'
import type { PlanDatabase, PlanRow, RestorePointRow } from './database'

const mostRestorePoints = 20

const stores = ['plans', 'restorePoints', 'partings', 'pictures'] as const

/** One change of all that is kept: it happens whole or not at all. */
export type Writing = IDBPTransaction<PlanDatabase, typeof stores, 'readwrite'>

/** Does `work` in one change; where it fails, nothing of it stays. */
export async function writeWhole<T>(
  database: IDBPDatabase<PlanDatabase>,
  work: (writing: Writing) => Promise<T>,
): Promise<T> {
  const writing = database.transaction(stores, 'readwrite')
  // Taken now, and heard: it fails together with the first request that fails.
  const done = writing.done
  done.catch(() => {})
  let answer: T
  try {
    answer = await work(writing)
  } catch (error) {
    abort(writing)
    throw error
  }
  await done
  return answer
}

function abort(writing: Writing): void {
  try {
    writing.abort()
  } catch {
    // The browser has given it up already.
  }
}

/** What a saving did. `isRival`: the text that stood there came from elsewhere; it is a restore point now. */
export type Saved = { readonly id: string; readonly isRival: boolean }

export type Saving = {
  /** The text that this window last read or wrote there: any other text was saved by another window. */
  readonly known: string
  /** The plan was never kept under its id: if it is kept word for word under another, it stays there. */
  readonly isNew: boolean
}

/** Keeps a plan; what another window saved meanwhile becomes a restore point before it is written over. */
export async function writeRow(writing: Writing, row: PlanRow, { known, isNew }: Saving): Promise<Saved> {
  const plans = writing.objectStore('plans')
  const before = await plans.get(row.id)
  if (before === undefined && isNew) {
    const twin = (await plans.getAll()).find(({ text }) => text === row.text)
    if (twin !== undefined) return { id: twin.id, isRival: false }
  }
  const isRival = before !== undefined && before.text !== known && before.text !== row.text
  if (isRival) await writePoint(writing, pointOf(before))
  if (before?.text !== row.text) await plans.put(row)
  return { id: row.id, isRival }
}

/** A state that another window saved, as a restore point. */
export function pointOf({ id, text, savedAt }: PlanRow): NewPoint {
  return { planId: id, label: 'Saved in another window', text, at: savedAt }
}

export type NewPoint = Omit<RestorePointRow, 'id'>

/** Adds a restore point; the oldest of its plan go when there are more than twenty. */
export async function writePoint(writing: Writing, point: NewPoint): Promise<void> {
  const points = writing.objectStore('restorePoints')
  const rows = await points.index('planId').getAll(point.planId)
  const kept = rows.map(({ id = 0, at, text }) => ({ id, at, text })).sort(latestFirst)
  // The same state twice would only push an older one out.
  if (kept[0]?.text === point.text) return
  await points.add(point)
  for (const { id } of kept.slice(mostRestorePoints - 1)) await points.delete(id)
}

type Dated = { readonly id: number; readonly at: number }

export function latestFirst(a: Dated, b: Dated): number {
  return b.at - a.at || b.id - a.id
}
