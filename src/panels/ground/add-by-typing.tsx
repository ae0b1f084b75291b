import { type FormEvent, useState } from 'react'
import { featureLimits } from '#geo/plan/limits'
import type { FeatureKind } from '#geo/plan/plan'
import { ChoiceField } from '../../parts/choice-field'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { select, setView } from '../../state/actions'
import { settingsOf } from '../../state/selectors'
import { usePlannerStore } from '../../state/use-planner'
import { kindNames } from '../../text/names'
import { capitalised, compassWord, counted } from '../../text/words'
import { Here } from '../beneath/here'
import { useEdit, usePlan, useYear } from '../hooks'
import { addedBy, type Draft, emptyDraft, shapeOf } from './add-draft'
import { AlongRow } from './along-row'
import { CropChoice } from './crop-choice'
import { FromSelected } from './from-selected'
import { kindOrder } from './kind-order'
import { PositionField } from './position-field'
import { positionHint, TypingChoice, useFrame } from './typing-choice'

const lengthLimit = { low: 0, high: 20_000, isAbove: true } as const
const rowsLimit = { low: 1, high: 500, isWhole: true } as const
const bearingLimit = { low: -360, high: 360 } as const

/** Adds any kind of thing without the map: by a start, a length, a bearing and so on, or by a list of corners. */
export function AddByTyping() {
  const store = usePlannerStore()
  const plan = usePlan()
  const year = useYear()
  const edit = useEdit()
  const frame = useFrame()
  const [draft, setDraft] = useState<Draft>(emptyDraft)
  const [fault, setFault] = useState<string | null>(null)
  const [done, setDone] = useState('')
  const change = (patch: Partial<Draft>) => {
    setFault(null)
    setDone('')
    setDraft(before => ({ ...before, ...patch }))
  }
  const { kind } = draft
  const shape = shapeOf(kind)
  const crop = settingsOf(plan).crops[draft.crop]
  const isPlanting = kind === 'row' || kind === 'block' || kind === 'plant' || kind === 'bed'
  const hasRows = kind === 'row' || kind === 'block'
  const isCounted = kind === 'block' && draft.isCounted && !draft.isList
  const add = (event: FormEvent) => {
    event.preventDefault()
    const added = addedBy(draft, plan, { year, frame, spacing: crop?.spacing ?? 2, rowSpacing: crop?.rowSpacing ?? 4 })
    if (!added.ok) return setFault(added.why)
    edit(added.value.edit)
    select(store, added.value.ids)
    if (plan.features.length === 0) setView(store, { focusRequest: store.getState().view.focusRequest + 1 })
    const names = kindNames[kind]
    setDone(`Added ${counted(added.value.ids.length, names.one, names.many)}.`)
    setDraft({ ...draft, name: '', start: null, list: '' })
  }
  return (
    <form className="stack add-form" onSubmit={add}>
      <ChoiceField
        label="What"
        value={kind}
        choices={kindOrder.map(value => ({ value, name: capitalised(kindNames[value].one) }))}
        onCommit={(next: FeatureKind) => change({ kind: next, isList: false })}
      />
      <TextField
        label="Name"
        value={draft.name}
        onCommit={name => change({ name })}
        note="Left empty, it gets the next number."
      />
      {isPlanting ? <CropChoice value={draft.crop} onCommit={next => change({ crop: next })} /> : null}
      <TypingChoice />
      {shape === 'point' ? null : (
        <label className="option">
          <input type="checkbox" checked={draft.isList} onChange={event => change({ isList: event.target.checked })} />
          By a list of corners
        </label>
      )}
      {kind === 'block' && !draft.isList ? (
        <label className="option">
          <input
            type="checkbox"
            checked={draft.isCounted}
            onChange={event => change({ isCounted: event.target.checked })}
          />
          By number of rows and plants
        </label>
      ) : null}
      {draft.isList && shape !== 'point' ? (
        <CornerList draft={draft} onChange={change} hint={positionHint(frame)} />
      ) : (
        <div className="fields">
          <div className="wide">
            <PositionField
              label={
                isCounted ? 'First plant' : shape === 'point' ? 'Position' : shape === 'line' ? 'Start' : 'First corner'
              }
              value={draft.start}
              onCommit={start => change({ start })}
            />
            <FromSelected onTake={start => change({ start })} />
            <Here onTake={start => change({ start })} />
            {shape === 'point' ? <AlongRow words="Take this place" onTake={start => change({ start })} /> : null}
          </div>
          {shape === 'point' ? null : (
            <>
              {isCounted ? <CountFields draft={draft} onChange={change} /> : null}
              {isCounted ? null : (
                <NumberField
                  label={shape === 'line' ? 'Length' : kind === 'block' ? 'Length along the rows' : 'Length'}
                  quantity="length"
                  value={draft.length}
                  limit={lengthLimit}
                  onCommit={length => change({ length })}
                  isRequired
                />
              )}
              {shape === 'area' && !isCounted ? (
                <NumberField
                  label="Width, to the right of it"
                  quantity="length"
                  value={draft.width}
                  limit={lengthLimit}
                  onCommit={width => change({ width })}
                  isRequired
                />
              ) : null}
              <NumberField
                label="Bearing"
                quantity="degrees"
                value={draft.bearing}
                limit={bearingLimit}
                onCommit={bearing => change({ bearing: bearing ?? 0 })}
                isRequired
                note={`towards ${compassWord(draft.bearing)}`}
              />
            </>
          )}
        </div>
      )}
      {hasRows ? (
        <div className="fields">
          <NumberField
            label="Spacing in the row"
            quantity="length"
            value={draft.spacing}
            limit={featureLimits.row.spacing!}
            {...(crop ? { fallback: crop.spacing } : {})}
            onCommit={spacing => change({ spacing })}
          />
          <NumberField
            label="Between rows"
            quantity="length"
            value={draft.rowSpacing}
            limit={featureLimits.row.rowSpacing!}
            {...(crop ? { fallback: crop.rowSpacing } : {})}
            onCommit={rowSpacing => change({ rowSpacing })}
          />
          {kind === 'row' ? (
            <>
              <NumberField
                label="Number of plants"
                value={draft.count}
                limit={{ low: 1, high: 100_000, isWhole: true }}
                onCommit={count => change({ count })}
                note="Left empty, it follows from length and spacing."
              />
              {draft.isList ? null : (
                <NumberField
                  label="Rows side by side"
                  value={draft.rows}
                  limit={rowsLimit}
                  onCommit={rows => change({ rows: rows ?? 1 })}
                  isRequired
                  note="Each to the right of the one before."
                />
              )}
            </>
          ) : null}
        </div>
      ) : null}
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <p className="field-note" role="status">
        {done}
      </p>
      <div>
        <button type="submit" className="first">
          Add {kind === 'row' && draft.rows > 1 && !draft.isList ? `${draft.rows} rows` : `the ${kindNames[kind].one}`}
        </button>
      </div>
    </form>
  )
}

type CountProps = { readonly draft: Draft; readonly onChange: (patch: Partial<Draft>) => void }

function CountFields({ draft, onChange }: CountProps) {
  return (
    <>
      <NumberField
        label="Number of rows"
        value={draft.rows}
        limit={rowsLimit}
        onCommit={rows => onChange({ rows: rows ?? 1 })}
        isRequired
        note="Each to the right of the one before."
      />
      <NumberField
        label="Plants in a row"
        value={draft.count}
        limit={{ low: 1, high: 10_000, isWhole: true }}
        onCommit={count => onChange({ count })}
        isRequired
      />
    </>
  )
}

type CornerListProps = {
  readonly draft: Draft
  readonly onChange: (patch: Partial<Draft>) => void
  readonly hint: string
}

function CornerList({ draft, onChange, hint }: CornerListProps) {
  return (
    <div className="field">
      <label htmlFor="corners">Corners, one a line: {hint}</label>
      <textarea
        id="corners"
        rows={5}
        value={draft.list}
        placeholder={'0, 0\n0, 92\n20, 92\n20, 0'}
        onChange={event => onChange({ list: event.target.value })}
      />
    </div>
  )
}
