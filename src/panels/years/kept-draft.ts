import { useState } from 'react'

/** What was typed and not saved yet, by what it is for: a look at the map or at another page does not lose it. */
const drafts = new Map<string, unknown>()

/** State that outlives the page; `key` must say whose draft it is, and the component must be keyed by it. */
export function useKeptDraft<T>(key: string, before: () => T): readonly [T, (draft: T) => void, () => void] {
  const [draft, setDraft] = useState<T>(() => (drafts.has(key) ? (drafts.get(key) as T) : before()))
  const keep = (next: T) => {
    drafts.set(key, next)
    setDraft(next)
  }
  return [draft, keep, () => drafts.delete(key)]
}
