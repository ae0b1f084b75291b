import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, vi } from 'vitest'

/** Gives every test an empty device whose clock stands at 14:02 (in UTC) on 6 April 2026 and moves when told. */
export function freshDevice(): void {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'], now: Date.UTC(2026, 3, 6, 14, 2) })
    globalThis.indexedDB = new IDBFactory()
    localStorage.clear()
  })
  afterEach(() => {
    vi.useRealTimers()
    vi.restoreAllMocks()
  })
}

/** Replaces the browser's database; `undefined` for a browser that has none. */
export function setDatabaseFactory(factory: IDBFactory | undefined): void {
  Object.defineProperty(globalThis, 'indexedDB', { value: factory, configurable: true, writable: true })
}
