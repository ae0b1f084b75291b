import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import type { LngLat } from '#geo/space/plane'
import { describedBy, FieldFrame } from '../../parts/field-frame'
import { positionText, readPosition } from './typed-geometry'
import { positionHint, useFrame } from './typing-choice'

type Props = {
  readonly label: string
  readonly value: LngLat | null
  readonly onCommit: (at: LngLat) => void
  readonly note?: ReactNode
}

/** One position in one field, in ground units or degrees as the page is set. */
export function PositionField({ label, value, onCommit, note }: Props) {
  const id = useId()
  const frame = useFrame()
  const input = useRef<HTMLInputElement>(null)
  const shown = value === null ? '' : positionText(value, frame)
  const [draft, setDraft] = useState<{ text: string; for: string; fault: string | null } | null>(null)
  const current = draft !== null && draft.for === shown ? draft : null
  const fault = current?.fault ?? null
  useEffect(() => input.current?.setCustomValidity(fault ?? ''), [fault])
  const commit = () => {
    if (current === null || current.text.trim() === '') return setDraft(null)
    const read = readPosition(current.text, frame)
    if (!read.ok) return setDraft({ ...current, fault: read.why })
    setDraft(null)
    if (current.text.trim() !== shown) onCommit(read.value)
  }
  const below = note ?? `${positionHint(frame)}`
  return (
    <FieldFrame id={id} label={label} note={below} fault={fault}>
      <input
        ref={input}
        id={id}
        type="text"
        autoComplete="off"
        className="number"
        value={current?.text ?? shown}
        required
        aria-invalid={fault !== null}
        aria-describedby={describedBy(id, { note: below, fault })}
        onChange={event => setDraft({ text: event.target.value, for: shown, fault: null })}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') commit()
          if (event.key === 'Escape') setDraft(null)
        }}
      />
    </FieldFrame>
  )
}
