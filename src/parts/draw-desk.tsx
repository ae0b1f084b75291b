import { type ReactNode, useLayoutEffect, useState } from 'react'
import { createPortal } from 'react-dom'

const deskId = 'draw-desk'

/** A place beside the map for what is typed while drawing: the map itself stays free. */
export function DrawDesk() {
  return <div id={deskId} className="draw-desk" />
}

/** Shows what it holds on the desk where `isBeside`, else in its own place. */
export function OnDrawDesk({ isBeside, children }: { readonly isBeside: boolean; readonly children: ReactNode }) {
  const [desk, setDesk] = useState<HTMLElement | null>(null)
  // The desk stands in another branch of the page, which is there only after this one was rendered.
  useLayoutEffect(() => setDesk(isBeside ? document.getElementById(deskId) : null), [isBeside])
  // A panel that was scrolled down would hide the fields that have just come.
  useLayoutEffect(() => desk?.parentElement?.scrollTo?.({ top: 0 }), [desk])
  return desk === null
    ? children
    : createPortal(
        <section className="draw-on-desk" aria-label="What is being drawn">
          {children}
        </section>,
        desk,
      )
}
