import { useCallback, useSyncExternalStore } from 'react'

/** Whether a media query holds, kept up to date; false where there are none to ask. */
export function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (tell: () => void) => {
      if (typeof matchMedia !== 'function') return () => {}
      const list = matchMedia(query)
      list.addEventListener('change', tell)
      return () => list.removeEventListener('change', tell)
    },
    [query],
  )
  return useSyncExternalStore(subscribe, () => typeof matchMedia === 'function' && matchMedia(query).matches)
}
