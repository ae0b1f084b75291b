import { useEffect } from 'react'
import { focusMap } from './figure-focus'

/** F6 goes from the map to the page in the panel and back, as between the panes of a window. */
export function usePaneKeys(): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey) return
      // A dialog keeps the keys until it is answered.
      if (document.querySelector('dialog[open]') !== null) return
      event.preventDefault()
      if (document.activeElement?.closest('.map, .draw-bar')) focusPage()
      else focusMap()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
}

function focusPage(): void {
  document.querySelector<HTMLElement>('.panel .tab[aria-current="page"]')?.focus()
}
