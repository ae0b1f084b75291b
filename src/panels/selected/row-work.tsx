import { type ReactNode, useState } from 'react'
import { breakIntoRows, cultivarInRow, extendRow, gapInRow, splitRow, turnPlanting } from '#geo/plan/edits-rows'
import type { Block, Row } from '#geo/plan/plan'
import { bearing, lineLength } from '#geo/space/shape'
import { ChoiceField } from '../../parts/choice-field'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { select } from '../../state/actions'
import { newId, newIds } from '../../state/new-id'
import { repeat, spacingsOf } from '../../state/row-actions'
import { usePlannerStore } from '../../state/use-planner'
import { compassWord, counted } from '../../text/words'
import { useEdit, useHome, usePlan } from '../hooks'
import { measured } from '../measures'
import { CultivarPattern } from './cultivar-pattern'

const timesLimit = { low: 1, high: 500, isWhole: true } as const
const apartLimit = { low: 0, high: 200, isAbove: true } as const
const turnLimit = { low: -360, high: 360 } as const

/** What else can be done with a row: more of it beside it, longer, shorter, in parts, turned. */
export function RowWork({ row }: { readonly row: Row }) {
  const plan = usePlan()
  const home = useHome()
  const usual = spacingsOf(plan, row)
  if (usual === null) return <p className="field-note">Type its spacings to repeat, extend or split it.</p>
  const line = row.geometry.coordinates.map(home.toMetres)
  const along = bearing(line[0]!, line.at(-1)!)
  const plants = measured(plan, row).plants ?? 0
  if (lineLength(line) === 0) return null
  const props = { row, usual, along, plants }
  return (
    <Disclosure summary="Repeat, extend, split, turn">
      <div className="stack">
        <Repeat {...props} />
        <Extend {...props} />
        <Gap {...props} />
        <OtherCultivar {...props} />
        <Turn id={row.id} />
      </div>
    </Disclosure>
  )
}

type RowProps = {
  readonly row: Row
  readonly usual: NonNullable<ReturnType<typeof spacingsOf>>
  readonly along: number
  readonly plants: number
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <fieldset className="stack">
      <legend>{title}</legend>
      {children}
    </fieldset>
  )
}

function Repeat({ row, usual, along }: RowProps) {
  const store = usePlannerStore()
  const [times, setTimes] = useState(1)
  const [apart, setApart] = useState<number | null>(null)
  const [side, setSide] = useState<'left' | 'right'>('right')
  return (
    <Part title="Repeat it">
      <div className="fields">
        <NumberField
          label="How many more"
          value={times}
          limit={timesLimit}
          isRequired
          onCommit={n => setTimes(n ?? 1)}
        />
        <NumberField
          label="From row to row"
          quantity="length"
          value={apart}
          limit={apartLimit}
          fallback={usual.rowSpacing}
          onCommit={setApart}
        />
        <ChoiceField
          label="To the"
          value={side}
          choices={[
            { value: 'right', name: `right (${compassWord(along + 90)})` },
            { value: 'left', name: `left (${compassWord(along - 90)})` },
          ]}
          onCommit={setSide}
        />
      </div>
      {apart !== null && apart !== usual.rowSpacing ? (
        <p className="field-note">The ground that each plant counts for still goes by the field “Between rows”.</p>
      ) : null}
      <div>
        <button type="button" onClick={() => repeat(store, row, { times, apart: apart ?? usual.rowSpacing, side })}>
          Add {counted(times, 'row')}
        </button>
      </div>
    </Part>
  )
}

function Extend({ row, usual, along, plants }: RowProps) {
  const edit = useEdit()
  const [by, setBy] = useState(1)
  const isTooShort = plants + by < 2
  return (
    <Part title="Longer or shorter">
      <div className="fields">
        <NumberField
          label="Plants more (− fewer)"
          value={by}
          limit={{ low: -1000, high: 1000, isWhole: true }}
          isRequired
          onCommit={n => setBy(n ?? 1)}
        />
      </div>
      {isTooShort ? <p className="field-note">Two plants must be left.</p> : null}
      <div className="actions">
        <button type="button" disabled={isTooShort} onClick={() => edit(extendRow(row.id, 'start', by, usual))}>
          At the {compassWord(along + 180)} end
        </button>
        <button type="button" disabled={isTooShort} onClick={() => edit(extendRow(row.id, 'end', by, usual))}>
          At the {compassWord(along)} end
        </button>
      </div>
    </Part>
  )
}

function Gap({ row, usual, along, plants }: RowProps) {
  const store = usePlannerStore()
  const edit = useEdit()
  const [first, setFirst] = useState(2)
  const [count, setCount] = useState(1)
  if (plants < 2) return null
  const isAll = count >= plants
  const isPast = first + count - 1 > plants
  const isSplit = first >= 2 && first <= plants
  const split = () => {
    const other = newId('row')
    edit(splitRow(row.id, first, other, usual))
    select(store, [row.id, other])
  }
  return (
    <Part title="Missing plants, or two rows of one">
      <div className="fields">
        <NumberField
          label="From plant number"
          value={first}
          limit={{ low: 1, high: plants, isWhole: true }}
          isRequired
          onCommit={n => setFirst(n ?? 2)}
          note={`Counted from the ${compassWord(along + 180)} end, of ${plants}.`}
        />
        <NumberField
          label="Plants missing"
          value={count}
          limit={{ low: 1, high: plants, isWhole: true }}
          isRequired
          onCommit={n => setCount(n ?? 1)}
        />
      </div>
      <div className="actions">
        <button
          type="button"
          disabled={isAll || isPast}
          onClick={() => edit(gapInRow(row.id, { first, count }, newId('row'), usual))}
        >
          Leave a gap of {counted(count, 'plant')}
        </button>
        <button type="button" disabled={!isSplit} onClick={split}>
          Split before plant {first}
        </button>
      </div>
    </Part>
  )
}

function OtherCultivar({ row, usual, plants }: RowProps) {
  const edit = useEdit()
  if (plants < 3) return null
  const ids = new Map<string, string>()
  const idOf = (kind: 'plant' | 'row', i: number) => {
    const key = `${kind} ${i}`
    const id = ids.get(key) ?? newId(kind)
    ids.set(key, id)
    return id
  }
  return (
    <Part title="Another cultivar here and there">
      <CultivarPattern
        of="plant"
        start={{ every: 9, first: 5 }}
        most={plants}
        least={2}
        note="They become single plants; the row goes on in parts between them."
        words={() => 'Set the cultivar'}
        onSet={pattern => edit(cultivarInRow(row.id, pattern, idOf, usual))}
      />
    </Part>
  )
}

function Turn({ id }: { readonly id: string }) {
  const edit = useEdit()
  const [by, setBy] = useState(1)
  return (
    <Part title="Turn it about its middle">
      <div className="fields">
        <NumberField
          label="Degrees clockwise"
          quantity="degrees"
          value={by}
          limit={turnLimit}
          isRequired
          onCommit={n => setBy(n ?? 0)}
        />
      </div>
      <div className="actions">
        <button type="button" onClick={() => edit(turnPlanting(id, -by))}>
          Turn left
        </button>
        <button type="button" onClick={() => edit(turnPlanting(id, by))}>
          Turn right
        </button>
      </div>
    </Part>
  )
}

/** A block turned with its rows, or taken apart into them. */
export function BlockWork({ block }: { readonly block: Block }) {
  const plan = usePlan()
  const store = usePlannerStore()
  const edit = useEdit()
  const usual = spacingsOf(plan, block)
  const apart = () => {
    if (usual === null) return
    const ids = new Map<number, string>()
    const freshId = newIds(plan)
    const idOf = (i: number) => {
      const id = ids.get(i) ?? freshId('row')
      ids.set(i, id)
      return id
    }
    edit(breakIntoRows(block.id, idOf, usual))
    select(store, [...ids.values()])
  }
  return (
    <Disclosure summary="Turn, or break into rows">
      <div className="stack">
        <Turn id={block.id} />
        {usual === null ? null : (
          <Part title="Rows of their own">
            <p className="field-note">
              A block has one cultivar throughout and no gaps but holes. As rows, each can have its own.
            </p>
            <div>
              <button type="button" onClick={apart}>
                Break into rows
              </button>
            </div>
          </Part>
        )}
      </div>
    </Disclosure>
  )
}
