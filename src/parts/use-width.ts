import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Width of an element in CSS pixels, kept up to date; `before` until it is known. */
export function useWidth<E extends Element>(before: number): [RefObject<E | null>, number] {
  const ref = useRef<E>(null)
  const [width, setWidth] = useState(before)
  useLayoutEffect(() => {
    const element = ref.current
    if (element === null || typeof ResizeObserver === 'undefined') return
    const observer = new ResizeObserver(entries => {
      const found = entries[0]?.contentRect.width ?? 0
      if (found > 0) setWidth(Math.round(found))
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [ref, width]
}
