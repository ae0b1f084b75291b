import { type ReactNode, useEffect, useId, useRef } from 'react'

type Props = {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
}

/** A question or a text that comes before everything else. Escape and the button close it; focus goes back by itself. */
export function Dialog({ title, onClose, children }: Props) {
  const ref = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const dialog = ref.current
    if (dialog !== null && !dialog.open) dialog.showModal()
    return () => dialog?.close()
  }, [])
  return (
    <dialog
      ref={ref}
      className="dialog"
      aria-labelledby={id}
      onCancel={event => {
        event.preventDefault()
        onClose()
      }}
    >
      <header className="dialog-head">
        <h2 id={id}>{title}</h2>
        <button type="button" className="quiet" onClick={onClose}>
          Close
        </button>
      </header>
      <div className="dialog-body">{children}</div>
    </dialog>
  )
}
