import { useId } from 'react'

type Props = {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly isLong?: boolean
  readonly rows?: number
  readonly placeholder?: string
}

/** Words of a draft, taken letter by letter: pressing Save right after typing must not lose the last word. */
export function Words({ label, value, onChange, isLong = false, rows = 2, placeholder }: Props) {
  const id = useId()
  const shared = { id, value, placeholder, autoComplete: 'off' } as const
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {isLong ? (
        <textarea {...shared} rows={rows} onChange={event => onChange(event.target.value)} />
      ) : (
        <input {...shared} type="text" onChange={event => onChange(event.target.value)} />
      )}
    </div>
  )
}
