import { useState } from 'react'
import { type Bloom, type BloomStage, bloomStages, isObserved } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import { type IsoDate, isIsoDate } from '#geo/time/day'
import { listed } from '#geo/wording/plain'
import { DateField } from '../../parts/date-field'
import { counted } from '../../text/words'
import { bloomWith, type Dates } from './move-along'

type Props = {
  readonly bloom: Bloom | null
  readonly year: number
  readonly onCommit: (bloom: Bloom) => void
  /** A stage was really seen on its date, or was not after all. */
  readonly onSeen: (stage: BloomStage, isSeen: boolean) => void
}

const labels = { first: 'First bloom', full: 'Full bloom', end: 'End of bloom' } as const
const meanings = { first: 'one flower in ten open', full: 'most flowers open', end: 'petals down' } as const

/**
 * The three dates of a bloom, each with whether it was seen; they go into the plan as soon as all are there and in order.
 * Estimates that a new date leaves behind move along with it, and it is told.
 */
export function BloomFields({ bloom, year, onCommit, onSeen }: Props) {
  const [draft, setDraft] = useState<{ dates: Dates; for: Bloom | null } | null>(null)
  const [moved, setMoved] = useState<{ text: string; for: Bloom } | null>(null)
  const [isWithin, setWithin] = useState(false)
  const current = draft !== null && draft.for === bloom ? draft.dates : null
  const dates: Dates = current ?? bloom ?? { first: null, full: null, end: null }
  const change = (name: BloomStage, date: IsoDate | null) => {
    const next = { ...dates, [name]: date }
    const found = bloomWith(next, bloom, name)
    if (found === null) return setDraft({ dates: next, for: bloom })
    setDraft(null)
    setMoved(found.moved.length === 0 ? null : { text: movedText(found.moved, found.days), for: found.bloom })
    onCommit(found.bloom)
  }
  const isWhole = bloomStages.every(name => dates[name] !== null)
  // Dates that are missing are no fault as long as somebody is still putting them in.
  const fault = current === null || (isWithin && !isWhole) ? null : orderFault(current)
  return (
    <fieldset
      className="bloom-dates"
      aria-label="Dates of bloom"
      onFocus={() => setWithin(true)}
      onBlur={event => {
        if (!event.currentTarget.contains(event.relatedTarget)) setWithin(false)
      }}
    >
      {bloomStages.map(name => (
        <div className="bloom-stage" key={name}>
          <DateField
            label={labels[name]}
            value={dates[name]}
            year={year}
            onCommit={date => change(name, date)}
            note={stageNote(name, dates[name], bloom)}
          />
          {bloom === null ? null : (
            <label className="option">
              <input
                type="checkbox"
                checked={isObserved(bloom, name)}
                onChange={event => onSeen(name, event.target.checked)}
              />
              <span>
                Seen<span className="unseen"> by you: {labels[name].toLowerCase()}</span>
              </span>
            </label>
          )}
        </div>
      ))}
      {fault === null ? null : (
        <p className="field-fault" role="status">
          {fault} {bloom === null ? 'They are used once that is so.' : 'Until then the dates before are used.'}
        </p>
      )}
      {moved !== null && isSameDates(moved.for, bloom) ? (
        <p className="field-note" role="status">
          {moved.text}
        </p>
      ) : null}
    </fieldset>
  )
}

/** The date in words and what is known of it: a seen date is told by a sign, not by colour. */
function stageNote(stage: BloomStage, date: IsoDate | null, bloom: Bloom | null): string {
  if (date === null || !isIsoDate(date)) return meanings[stage]
  return bloom !== null && isObserved(bloom, stage) ? `✓ ${dateText(date)}, seen` : dateText(date)
}

function movedText(stages: readonly BloomStage[], days: number): string {
  const names = listed(stages.map((stage, i) => (i === 0 ? labels[stage] : labels[stage].toLowerCase())))
  const way = days > 0 ? 'later' : 'earlier'
  return `${names} moved along, ${counted(Math.abs(days), 'day')} ${way}: not marked as seen. Undo takes all back.`
}

function isSameDates(a: Bloom, b: Bloom | null): boolean {
  return b !== null && bloomStages.every(stage => a[stage] === b[stage])
}

function orderFault({ first, full, end }: Dates): string {
  if (first !== null && full !== null && first >= full) return 'Full bloom should come after first bloom.'
  if (full !== null && end !== null && full >= end) return 'The end should come after full bloom.'
  if (first !== null && end !== null && first >= end) return 'The end should come after first bloom.'
  const missing = bloomStages.filter(name => ({ first, full, end })[name] === null)
  return `All three dates are needed; missing: ${missing.map(name => labels[name].toLowerCase()).join(', ')}.`
}
