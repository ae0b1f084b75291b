import { useEffect } from 'react'
import { redo, undo } from '../../state/actions'
import { redoName, undoName } from '../../state/selectors'
import type { PlannerStore } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'

/** Undo and redo, each saying what it would take back or bring back. */
export function UndoButtons() {
  const store = usePlannerStore()
  const back = usePlanner(undoName)
  const forward = usePlanner(redoName)
  useUndoKeys(store)
  return (
    <div className="undo-buttons">
      <button
        type="button"
        className="quiet"
        disabled={back === null}
        onClick={() => undo(store)}
        aria-label={back ?? 'Undo'}
        title={back ?? ''}
      >
        <Arrow />
        <span className="button-words">{back ?? 'Undo'}</span>
      </button>
      <button
        type="button"
        className="quiet"
        disabled={forward === null}
        onClick={() => redo(store)}
        aria-label={forward ?? 'Redo'}
        title={forward ?? ''}
      >
        <Arrow isForward />
        <span className="button-words">{forward ?? 'Redo'}</span>
      </button>
    </div>
  )
}

function Arrow({ isForward = false }: { readonly isForward?: boolean }) {
  return (
    <svg
      viewBox="0 0 20 20"
      width="20"
      height="20"
      aria-hidden="true"
      transform={isForward ? 'scale(-1 1)' : undefined}
    >
      <path
        d="M8 4 3.5 8.5 8 13M4 8.5h8a4.5 4.5 0 0 1 0 9H9"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  )
}

/** Control or Command with Z, with Shift and Z, or with Y; in a field of text they stay the field's own. */
function useUndoKeys(store: PlannerStore): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTextField(event.target)) return
      const key = event.key.toLowerCase()
      if (key !== 'z' && key !== 'y') return
      event.preventDefault()
      if (key === 'y' || event.shiftKey) redo(store)
      else undo(store)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [store])
}

function isTextField(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true
  return target instanceof HTMLInputElement && target.type !== 'radio' && target.type !== 'checkbox'
}
