import { useCallback, useEffect, useState } from 'react'

export type Loaded<T> =
  | { readonly status: 'loading' }
  | { readonly status: 'ready'; readonly value: T }
  | { readonly status: 'failed'; readonly reason: string }

/** Loads once, and again when asked; `load` must stay the same function. */
export function useLoaded<T>(load: () => Promise<T>): [Loaded<T>, () => void] {
  const [state, setState] = useState<Loaded<T>>({ status: 'loading' })
  const [turn, setTurn] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `turn` asks for it again
  useEffect(() => {
    let isCurrent = true
    load().then(
      value => isCurrent && setState({ status: 'ready', value }),
      (error: unknown) => isCurrent && setState({ status: 'failed', reason: reasonOf(error) }),
    )
    return () => {
      isCurrent = false
    }
  }, [load, turn])
  return [state, useCallback(() => setTurn(before => before + 1), [])]
}

export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
