import type { IDBPDatabase } from 'idb'
import { type Parting, type PlanDatabase, planDatabase } from './database'
import { pointOf, writePoint, writeRow, writeWhole } from './writing'

/**
 * Puts a plan aside in the last moment of a window. A saving reads before it writes, and the page may be gone before the
 * answer comes; this one only writes, and what it wrote is settled when the program starts the next time.
 */
export async function putAside(parting: Parting): Promise<void> {
  const transaction = (await planDatabase()).transaction('partings', 'readwrite')
  const isDone = Promise.all([transaction.store.put(parting), transaction.done])
  transaction.commit()
  await isDone
}

/** Saves what windows put aside and could not save. What was saved later elsewhere stands; the other is a restore point. */
export function settlePartings(database: IDBPDatabase<PlanDatabase>): Promise<void> {
  return writeWhole(database, async writing => {
    const partings = writing.objectStore('partings')
    for (const { key, row, known } of await partings.getAll()) {
      const kept = await writing.objectStore('plans').get(row.id)
      if (kept !== undefined && kept.savedAt > row.savedAt) {
        if (kept.text !== row.text) await writePoint(writing, pointOf(row))
      } else await writeRow(writing, row, { known, isNew: false })
      await partings.delete(key)
    }
  })
}
