import { type ReactNode, useId, useState } from 'react'
import { dateText } from '#geo/time/date-text'
import { type IsoDate, isIsoDate } from '#geo/time/day'
import { describedBy, FieldFrame } from './field-frame'

type Props = {
  readonly label: string
  readonly value: IsoDate | null
  readonly onCommit: (value: IsoDate | null) => void
  /** Season's year: dates more than a year off are taken for half-typed ones until the field is left. */
  readonly year: number
  readonly fault?: string | null
  readonly note?: ReactNode
}

/** A calendar date. The date in words stands below, since the field itself shows it in the device's own order. */
export function DateField({ label, value, onCommit, year, fault: given = null, note }: Props) {
  const id = useId()
  const [draft, setDraft] = useState<{ text: string; for: IsoDate | null } | null>(null)
  const current = draft !== null && draft.for === value ? draft.text : null
  const isFar = (text: string) => Math.abs(Number(text.slice(0, 4)) - year) > 1
  const fault = given ?? (current !== null && current !== '' && isFar(current) ? farText(current, year) : null)
  const take = (text: string) => {
    setDraft(null)
    if (text !== (value ?? '')) onCommit(text === '' ? null : text)
  }
  const onChange = (text: string) => {
    if (isIsoDate(text) && !isFar(text)) take(text)
    else setDraft({ text, for: value })
  }
  const below = note ?? (value === null ? null : dateText(value))
  return (
    <FieldFrame id={id} label={label} note={below} fault={fault}>
      <input
        id={id}
        type="date"
        value={current ?? value ?? ''}
        aria-invalid={fault !== null}
        aria-describedby={describedBy(id, { note: below, fault })}
        onChange={event => onChange(event.target.value)}
        onBlur={() => {
          if (current === '') take('')
        }}
      />
    </FieldFrame>
  )
}

function farText(text: string, year: number): string {
  return `${dateText(text)} is far from the season ${year}, so it is not used. Check the year.`
}
