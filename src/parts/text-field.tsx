import { type ReactNode, useId, useState } from 'react'
import { describedBy, FieldFrame } from './field-frame'

type Props = {
  readonly label: string
  readonly value: string
  readonly onCommit: (value: string) => void
  readonly placeholder?: string
  readonly note?: ReactNode
  readonly isRequired?: boolean
  readonly isLong?: boolean
}

/** Words, committed on leaving or Enter. */
export function TextField({ label, value, onCommit, placeholder, note, isRequired, isLong }: Props) {
  const id = useId()
  const [draft, setDraft] = useState<{ text: string; for: string } | null>(null)
  const current = draft !== null && draft.for === value ? draft.text : null
  const commit = () => {
    if (current === null) return
    setDraft(null)
    const text = current.trim()
    if (text !== value && !(isRequired && text === '')) onCommit(text)
  }
  const shared = {
    id,
    value: current ?? value,
    placeholder,
    required: isRequired,
    'aria-describedby': describedBy(id, { note }),
    onBlur: commit,
  }
  return (
    <FieldFrame id={id} label={label} note={note}>
      {isLong ? (
        <textarea {...shared} rows={4} onChange={event => setDraft({ text: event.target.value, for: value })} />
      ) : (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          onChange={event => setDraft({ text: event.target.value, for: value })}
          onKeyDown={event => {
            if (event.key === 'Enter') commit()
            if (event.key === 'Escape') setDraft(null)
          }}
        />
      )}
    </FieldFrame>
  )
}
