import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { StorageError, storageError } from './storage-error'

/** A plan kept on this device: the text is just what a saved file holds. */
export type PlanRow = {
  readonly id: string
  readonly name: string
  readonly text: string
  /** How many things are drawn. */
  readonly things: number
  /** Milliseconds since 1970. */
  readonly savedAt: number
}

/** An earlier state of a kept plan, and why it was kept. */
export type RestorePointRow = {
  readonly id: number
  readonly planId: string
  readonly label: string
  readonly text: string
  readonly at: number
}

/** A plan as it stood when a window was left, until it is known to be saved. */
export type Parting = {
  /** One for each window and plan. */
  readonly key: string
  readonly row: PlanRow
  /** The text that the window last read or wrote. */
  readonly known: string
}

/** The image of a picture under the map, by the picture's id. */
export type PictureRow = {
  readonly id: string
  readonly bytes: ArrayBuffer
  readonly type: string
  /** Milliseconds since 1970. */
  readonly at: number
}

export type PlanDatabase = DBSchema & {
  plans: { key: string; value: PlanRow }
  restorePoints: { key: number; value: Omit<RestorePointRow, 'id'> & { id?: number }; indexes: { planId: string } }
  partings: { key: string; value: Parting }
  pictures: { key: string; value: PictureRow }
}

let opened: { readonly factory: IDBFactory; readonly database: Promise<IDBPDatabase<PlanDatabase>> } | null = null

/** The browser's database, opened once: when the page is left there is no time to open it. */
export function planDatabase(): Promise<IDBPDatabase<PlanDatabase>> {
  const factory = globalThis.indexedDB
  if (factory === undefined) {
    return Promise.reject(new StorageError('This browser keeps no data here. Save the plan as a file.'))
  }
  if (opened?.factory !== factory) opened = { factory, database: open() }
  return opened.database
}

async function open(): Promise<IDBPDatabase<PlanDatabase>> {
  const forget = (): void => {
    opened = null
  }
  try {
    const database = await openDB<PlanDatabase>('nestreach', 2, {
      upgrade(created, before) {
        if (before < 2) created.createObjectStore('pictures', { keyPath: 'id' })
        if (before >= 1) return
        created.createObjectStore('plans', { keyPath: 'id' })
        created.createObjectStore('partings', { keyPath: 'key' })
        created
          .createObjectStore('restorePoints', { keyPath: 'id', autoIncrement: true })
          .createIndex('planId', 'planId')
      },
      // A newer version of the program, in another window, must not wait for this one.
      blocking() {
        database.close()
        forget()
      },
      terminated: forget,
    })
    return database
  } catch (error) {
    forget()
    throw storageError(error)
  }
}
