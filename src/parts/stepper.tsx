import { useId, useState } from 'react'

type Props = {
  readonly label: string
  /** null = not counted, which is not zero. */
  readonly value: number | null
  readonly onChange: (value: number | null) => void
  /** Where counting begins, such as the last count; 0 without it. */
  readonly from?: number
  /** What the button says that takes `from` as it is: "Still 22". */
  readonly fromLabel?: string
  /** Has a button for ten at once. */
  readonly hasTens?: boolean
  readonly note?: string | undefined
  /** One line only, for the many causes of a list. */
  readonly isCompact?: boolean
}

/** More than a person can have counted. */
const most = 10_000_000

/** A count with large buttons, for one thumb. Not counted is a value of its own: an empty field. */
export function Stepper({
  label,
  value,
  onChange,
  from = 0,
  fromLabel,
  hasTens = false,
  note,
  isCompact = false,
}: Props) {
  const id = useId()
  const [text, setText] = useState<{ text: string; for: number | null } | null>(null)
  const draft = text !== null && text.for === value ? text.text : null
  const step = (by: number) => {
    setText(null)
    onChange(Math.min(most, Math.max(0, (value ?? from) + by)))
  }
  const type = (typed: string) => {
    const figure = typed.trim()
    if (figure === '') return set(null)
    if (/^\d{1,8}$/.test(figure) && Number(figure) <= most) return set(Number(figure))
    setText({ text: typed, for: value })
  }
  const set = (next: number | null) => {
    setText(null)
    onChange(next)
  }
  return (
    <div className="stepper">
      <label htmlFor={id}>{label}</label>
      <div className="stepper-line">
        <button type="button" aria-label={`One less: ${label}`} disabled={value === 0} onClick={() => step(-1)}>
          −
        </button>
        <input
          id={id}
          type="text"
          inputMode="numeric"
          autoComplete="off"
          placeholder="not counted"
          value={draft ?? (value === null ? '' : String(value))}
          aria-invalid={draft !== null}
          aria-describedby={isCompact && draft === null ? undefined : `${id}-note`}
          onChange={event => type(event.target.value)}
        />
        <button type="button" aria-label={`One more: ${label}`} onClick={() => step(1)}>
          +
        </button>
        {hasTens ? (
          <button type="button" aria-label={`Ten more: ${label}`} onClick={() => step(10)}>
            +10
          </button>
        ) : null}
        {isCompact ? (
          <button
            type="button"
            aria-label={value === null ? `None: 0, ${label}` : `Not counted, ${label}`}
            onClick={() => set(value === null ? 0 : null)}
          >
            {value === null ? '0' : '×'}
          </button>
        ) : null}
      </div>
      {isCompact && draft === null ? null : (
        <div className="stepper-line">
          {isCompact ? null : value === null ? (
            <button type="button" className="quiet" onClick={() => set(from)}>
              {fromLabel ?? 'None: 0'}
              <span className="unseen">, {label}</span>
            </button>
          ) : (
            <button type="button" className="quiet" onClick={() => set(null)}>
              Not counted<span className="unseen">, {label}</span>
            </button>
          )}
          <p className={draft === null ? 'field-note' : 'field-fault'} id={`${id}-note`} role="status">
            {draft === null ? (note ?? '') : 'Only whole numbers from 0 on count here.'}
          </p>
        </div>
      )}
    </div>
  )
}
