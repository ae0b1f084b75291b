import type { ReactNode } from 'react'

type Props = {
  readonly id: string
  readonly label: string
  readonly unit?: string
  /** A short line below, such as the default and its source. */
  readonly note?: ReactNode
  readonly fault?: string | null
  /** Stands in a sentence: the label is heard, not seen, and notes are left out. */
  readonly isInline?: boolean
  readonly children: ReactNode
}

/** Ids of the lines below a field, for its `aria-describedby`. */
export function describedBy(id: string, { note, fault }: Pick<Props, 'note' | 'fault'>): string | undefined {
  const ids = [fault ? `${id}-fault` : '', note ? `${id}-note` : ''].filter(Boolean)
  return ids.length > 0 ? ids.join(' ') : undefined
}

/** Label above, field, unit behind it, then what is wrong and what is worth knowing. */
export function FieldFrame({ id, label, unit, note, fault, isInline = false, children }: Props) {
  if (isInline) {
    return (
      <span className="blank">
        <label className="unseen" htmlFor={id}>
          {label}
        </label>
        {children}
        {unit ? <span aria-hidden="true"> {unit}</span> : null}
        {fault ? (
          <span className="field-fault" id={`${id}-fault`} role="alert">
            {fault}
          </span>
        ) : null}
      </span>
    )
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-line">
        {children}
        {unit ? (
          <span className="field-unit" aria-hidden="true">
            {unit}
          </span>
        ) : null}
      </div>
      {fault ? (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      ) : null}
      {note ? (
        <p className="field-note" id={`${id}-note`}>
          {note}
        </p>
      ) : null}
    </div>
  )
}
