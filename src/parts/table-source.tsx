import { type ReactNode, useId, useState } from 'react'

type Props = {
  /** What may come, in a sentence or two. */
  readonly children: ReactNode
  /** Kinds of file, as a file field takes them. */
  readonly accept: string
  readonly pasteLabel: string
  readonly placeholder: string
  readonly note?: string
  /** Why the last one could not be taken. */
  readonly fault: string | null
  readonly onFile: (file: File) => void
  readonly onText: (text: string) => void
}

/** A file, or cells copied from a spreadsheet. */
export function TableSource({ children, accept, pasteLabel, placeholder, note, fault, onFile, onText }: Props) {
  const id = useId()
  const [typed, setTyped] = useState('')
  return (
    <div className="stack">
      <p>{children}</p>
      <div className="field">
        <label htmlFor={`${id}-file`}>Choose a file</label>
        <input
          id={`${id}-file`}
          type="file"
          accept={accept}
          onChange={event => {
            const file = event.target.files?.[0]
            if (file !== undefined) onFile(file)
          }}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-text`}>{pasteLabel}</label>
        <textarea
          id={`${id}-text`}
          className="paste"
          rows={6}
          spellCheck={false}
          value={typed}
          placeholder={placeholder}
          aria-describedby={note === undefined ? undefined : `${id}-note`}
          onPaste={event => {
            // Straight on: a field that shows a hundred thousand lines would hold the page up.
            const text = event.clipboardData.getData('text/plain')
            if (typed !== '' || text.trim() === '') return
            event.preventDefault()
            onText(text)
          }}
          onChange={event => setTyped(event.target.value)}
        />
        {note === undefined ? null : (
          <p className="field-note" id={`${id}-note`}>
            {note}
          </p>
        )}
      </div>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="actions">
        <button type="button" className="first" disabled={typed.trim() === ''} onClick={() => onText(typed)}>
          Look at what was pasted
        </button>
      </div>
    </div>
  )
}
