import { useState } from 'react'
import type { Bloom, BloomStage } from '#geo/plan/plan'
import type { IsoDate } from '#geo/time/day'
import { DateField } from '../../parts/date-field'
import { isInOrder } from './bloom-defaults'

type Props = {
  readonly bloom: Bloom | null
  readonly year: number
  readonly onCommit: (bloom: Bloom) => void
}

type Dates = { readonly [K in BloomStage]: IsoDate | null }

const labels = { first: 'First bloom', full: 'Full bloom', end: 'End of bloom' } as const
const meanings = { first: 'one flower in ten open', full: 'most flowers open', end: 'petals down' } as const

/** The three dates of a bloom; they go into the plan as soon as all are there and in order. */
export function BloomFields({ bloom, year, onCommit }: Props) {
  const [draft, setDraft] = useState<{ dates: Dates; for: Bloom | null } | null>(null)
  const current = draft !== null && draft.for === bloom ? draft.dates : null
  const dates: Dates = current ?? bloom ?? { first: null, full: null, end: null }
  const change = (name: BloomStage, date: IsoDate | null) => {
    const next = { ...dates, [name]: date }
    const { first, full, end } = next
    if (first !== null && full !== null && end !== null && isInOrder({ first, full, end })) {
      setDraft(null)
      onCommit({ ...bloom, first, full, end })
    } else setDraft({ dates: next, for: bloom })
  }
  const fault = current === null ? null : orderFault(current)
  return (
    <div className="bloom-dates">
      {(['first', 'full', 'end'] as const).map(name => (
        <DateField
          key={name}
          label={labels[name]}
          value={dates[name]}
          year={year}
          onCommit={date => change(name, date)}
          {...(dates[name] === null ? { note: meanings[name] } : {})}
        />
      ))}
      {fault === null ? null : (
        <p className="field-fault" role="status">
          {fault} {bloom === null ? 'They are used once that is so.' : 'Until then the dates before are used.'}
        </p>
      )}
    </div>
  )
}

function orderFault({ first, full, end }: Dates): string {
  if (first !== null && full !== null && first >= full) return 'Full bloom should come after first bloom.'
  if (full !== null && end !== null && full >= end) return 'The end should come after full bloom.'
  if (first !== null && end !== null && first >= end) return 'The end should come after first bloom.'
  const missing = (['first', 'full', 'end'] as const).filter(name => ({ first, full, end })[name] === null)
  return `All three dates are needed; missing: ${missing.map(name => labels[name].toLowerCase()).join(', ')}.`
}
