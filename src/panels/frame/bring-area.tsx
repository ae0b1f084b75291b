import { lazy, Suspense, useCallback, useEffect, useState } from 'react'
import { notify, setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { type Bringing, useShell } from '../shell'
import { Side } from './side'

// Read when it is asked for: its readers are wanted seldom.
const BringIn = lazy(async () => ({ default: (await import('../elsewhere/bring-in')).BringIn }))

/** Bringing in, beside the map instead of the work panel; other views lie over it meanwhile and take nothing from it. */
export function BringArea({ bringing, isCovered }: { readonly bringing: Bringing; readonly isCovered: boolean }) {
  const store = usePlannerStore()
  const { bringIn } = useShell()
  const [isLow, setLow] = useState(false)
  const revision = usePlanner(state => state.document.revision)
  const [before] = useState(revision)
  const onClose = useCallback(() => {
    bringIn(null)
    const { document, view } = store.getState()
    // Nothing came: the map goes back to the plan.
    if (document.revision === before && view.coming !== null) setView(store, { focusRequest: view.focusRequest + 1 })
  }, [bringIn, store, before])
  return (
    <Side
      title="Bring in"
      onClose={onClose}
      className={`bring-area${isLow ? ' is-low' : ''}`}
      isHidden={isCovered}
      isKeptByFields
      actions={
        <button type="button" className="quiet sheet-only" aria-pressed={isLow} onClick={() => setLow(!isLow)}>
          More map
        </button>
      }
    >
      <Suspense fallback={null}>
        <BringIn pasted={bringing.pasted} onClose={onClose} />
      </Suspense>
    </Side>
  )
}

/** Cells or a file pasted where no field has the focus take the same road as a file that is chosen. */
export function usePasting(): void {
  const store = usePlannerStore()
  const { bringIn } = useShell()
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      const { target, clipboardData } = event
      if (clipboardData === null || isField(target) || document.querySelector('dialog[open]') !== null) return
      const file = clipboardData.files[0]
      const text = clipboardData.getData('text/plain')
      if (file === undefined && text.trim() === '') return
      event.preventDefault()
      const isFile = file !== undefined && text === ''
      // A word or a sentence is no table; one line of headings and one of figures are the least that is.
      const isMany = /[\n\r]./.test(text.trim()) || /^\s*[<{[]/.test(text)
      if (isFile) bringIn({ pasted: file })
      else if (isMany) bringIn({ pasted: text })
      else notify(store, 'What was pasted is a single line, so it was not taken for a table.')
    }
    document.addEventListener('paste', onPaste)
    return () => document.removeEventListener('paste', onPaste)
  }, [store, bringIn])
}

function isField(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null
}
