import { type KeyboardEvent, type ReactNode, useId, useLayoutEffect, useRef, useState } from 'react'
import type { Units } from '#geo/plan/plan'
import { significant } from '#geo/wording/plain'
import { readNumber } from '../text/read-number'
import { fieldText, type Measure, measureOf, type Quantity } from '../text/units'
import { grouped } from '../text/words'
import { describedBy, FieldFrame } from './field-frame'
import { useUnits } from './units-context'

/** What a figure may be, in stored (metric) units. */
export type FieldLimit = {
  readonly low: number
  readonly high: number
  /** `low` itself is not allowed. */
  readonly isAbove?: true
  readonly isWhole?: true
}

type Props = {
  readonly label: string
  readonly quantity?: Quantity
  /** Stored (metric) value; null = nothing of its own. */
  readonly value: number | null
  readonly onCommit: (value: number | null) => void
  readonly limit?: FieldLimit
  /** Value that counts while the field is empty, stored; shown in the empty field and called the default. */
  readonly fallback?: number
  /** An empty field is not an answer. */
  readonly isRequired?: boolean
  readonly note?: ReactNode
  /** Stands in a sentence, as a blank to fill in. */
  readonly isInline?: boolean
  /** Tells its figure already while it is typed, as often as it can be read; Escape tells the one from before again. */
  readonly isLive?: boolean
}

/** What stands typed in the field, which value it was typed over, and which one was told meanwhile. */
type Half = {
  readonly text: string
  readonly for: number | null
  readonly told: number | null
  readonly fault: string | null
}

/**
 * A figure with its unit. Takes a decimal point or comma and commits on leaving or Enter; what cannot be read stays in
 * the field with the reason below, and nothing is changed. Escape brings the value in use back.
 */
export function NumberField(props: Props) {
  const {
    label,
    quantity = 'plain',
    value,
    onCommit,
    fallback,
    isRequired = false,
    note,
    isInline = false,
    isLive,
  } = props
  const id = useId()
  const units = useUnits()
  const measure = measureOf(quantity, units)
  const input = useRef<HTMLInputElement>(null)
  const [draft, setDraft] = useState<Half | null>(null)
  // A value that changed from elsewhere (undo, the map) goes before what was half typed.
  const isOwn = draft !== null && (Object.is(draft.for, value) || Object.is(draft.told, value))
  const current = isOwn ? draft : null
  const fault = current?.fault ?? null
  const shown = current?.text ?? (value === null ? '' : fieldText(value, measure))
  useLayoutEffect(() => input.current?.setCustomValidity(fault ?? ''), [fault])

  const commit = () => {
    if (current === null) return
    const result = readField(current.text, measure, props, units)
    if (!result.ok) return setDraft({ ...current, fault: result.why })
    setDraft(null)
    if (!Object.is(result.value, value)) onCommit(result.value)
  }
  const onChange = (text: string) => {
    const half = { text, for: current ? current.for : value, told: current ? current.told : value, fault: null }
    const result = isLive ? readField(text, measure, props, units) : null
    if (!result?.ok) return setDraft(half)
    setDraft({ ...half, told: result.value })
    if (!Object.is(result.value, value)) onCommit(result.value)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') commit()
    if (event.key === 'Escape' && current !== null) {
      event.stopPropagation()
      setDraft(null)
      if (!Object.is(current.for, value)) onCommit(current.for)
    }
  }
  const digits = units === 'us' ? fewDigits : fourDigits
  const byDefault = fallback === undefined ? null : `${withMeasure(fallback, measure, digits)} by default`
  const below = isInline ? null : (note ?? (value === null ? byDefault : null))
  return (
    <FieldFrame id={id} label={label} unit={measure.unit} note={below} fault={fault} isInline={isInline}>
      <input
        ref={input}
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="number"
        value={shown}
        placeholder={fallback === undefined ? undefined : String(digits(measure.toShown(fallback)))}
        required={isRequired}
        aria-invalid={fault !== null}
        aria-describedby={describedBy(id, { note: below, fault })}
        onChange={event => onChange(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
    </FieldFrame>
  )
}

type Read = { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly why: string }

function readField(text: string, measure: Measure, props: Props, units: Units): Read {
  const { limit, isRequired = false, quantity } = props
  if (text.trim() === '') return isRequired ? { ok: false, why: 'A figure is needed here.' } : { ok: true, value: null }
  const read = readNumber(text.replace(trailingUnit(measure), ''), { isWhole: limit?.isWhole === true })
  if (!read.ok) return read
  const value = clean(measure.toStored(read.value), quantity !== undefined && units === 'us')
  if (limit === undefined) return { ok: true, value }
  if (limit.isWhole && !Number.isInteger(value)) return { ok: false, why: 'Only whole numbers count here.' }
  const isLow = limit.isAbove ? value <= limit.low : value < limit.low
  if (isLow || value > limit.high) return { ok: false, why: `Should be ${allowed(limit, measure)}.` }
  return { ok: true, value }
}

/** A unit typed behind the figure is understood, not refused. */
function trailingUnit({ unit }: Measure): RegExp {
  return new RegExp(`\\s*${unit.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`)
}

/** Cuts the noise of binary multiplication (0.29 * 0.01) without touching what was typed. */
function clean(value: number, isConverted: boolean): number {
  return significant(value, isConverted ? 9 : 12)
}

function allowed({ low, high, isAbove }: FieldLimit, measure: Measure): string {
  const least = grouped(significant(measure.toShown(low), 4))
  const most = withMeasure(high, measure)
  return isAbove ? `more than ${least} and at most ${most}` : `between ${least} and ${most}`
}

function fourDigits(shown: number): number {
  return significant(shown, 4)
}

/** A round metric default is no rounder in feet than it was in metres: "5.9 ft", not "5.906 ft". */
function fewDigits(shown: number): number {
  return Math.abs(shown) < 1 ? significant(shown, 3) : Math.round(shown * 10) / 10
}

function withMeasure(stored: number, measure: Measure, digits = fourDigits): string {
  const figure = grouped(digits(measure.toShown(stored)))
  return measure.unit === '%' || measure.unit === '°' || measure.unit === ''
    ? `${figure}${measure.unit}`
    : `${figure} ${measure.unit}`
}
