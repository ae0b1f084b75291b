import type { IDBPDatabase } from 'idb'
import { type Parting, type PlanDatabase, planDatabase } from './database'
import { pointOf, writePoint, writeRow, writeWhole } from './writing'

/**
 * Puts a plan aside in the last moment of a window. A saving reads before it writes, and the page may be gone before the
 * answer comes; this one only writes, and what it wrote is settled when the program starts the next time.
 */
export async function putAside(parting: Parting): Promise<void> {
  putAsideAtOnce(parting)
  const transaction = (await planDatabase()).transaction('partings', 'readwrite')
  const isDone = Promise.all([transaction.store.put(parting), transaction.done])
  transaction.commit()
  await isDone
}

/** Saves what windows put aside and could not save. What was saved later elsewhere stands; the other is a restore point. */
export function settlePartings(database: IDBPDatabase<PlanDatabase>): Promise<void> {
  return writeWhole(database, async writing => {
    const partings = writing.objectStore('partings')
    const inDatabase = await partings.getAll()
    const keys = new Set(inDatabase.map(({ key }) => key))
    const others = asideAtOnce().filter(({ key }) => !keys.has(key))
    for (const { key, row, known } of [...inDatabase, ...others]) {
      const kept = await writing.objectStore('plans').get(row.id)
      if (kept !== undefined && kept.savedAt > row.savedAt) {
        if (kept.text !== row.text) await writePoint(writing, pointOf(row))
      } else await writeRow(writing, row, { known, isNew: false })
      await partings.delete(key)
      takeBack(key)
    }
  })
}

/** Names under which the page's small storage holds plans that were put aside. */
const prefix = 'nestreach-parting-'

/** The small storage holds a few million characters in all: larger plans trust the database alone. */
const mostCharacters = 1_500_000

/** The database answers after the page may be gone; the page's small storage is written before the call returns. */
function putAsideAtOnce(parting: Parting): void {
  if (parting.row.text.length + parting.known.length > mostCharacters) return
  try {
    localStorage.setItem(prefix + parting.key, JSON.stringify(parting))
  } catch {
    // Full, or forbidden: the database has it, or will tell.
  }
}

function asideAtOnce(): Parting[] {
  try {
    const names = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '')
    return names
      .filter(name => name.startsWith(prefix))
      .map(name => JSON.parse(localStorage.getItem(name) ?? 'null') as Parting | null)
      .filter(parting => parting !== null)
  } catch {
    return []
  }
}

/** Forgets what was put aside under `key`: it is saved. */
export function takeBack(key: string): void {
  try {
    localStorage.removeItem(prefix + key)
  } catch {
    // Nothing is kept where nothing may be kept.
  }
}
