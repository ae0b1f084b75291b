import { useState } from 'react'
import { compose } from '#geo/plan/edits'
import { setProperties } from '#geo/plan/edits-features'
import { joinRows } from '#geo/plan/edits-rows'
import type { Feature, Row } from '#geo/plan/plan'
import { everyRow } from '#geo/plan/row-order'
import { Disclosure } from '../../parts/disclosure'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { notify } from '../../state/actions'
import { spacingsOf } from '../../state/row-actions'
import { usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { useEdit, useHome, usePlan } from '../hooks'

const everyLimit = { low: 1, high: 500, isWhole: true } as const

/** What can be done with several rows together. */
export function RowsWork({ features }: { readonly features: readonly Feature[] }) {
  const rows = features.filter((feature): feature is Row => feature.properties.kind === 'row')
  if (rows.length < 2 || rows.length < features.length) return null
  return (
    <>
      {rows.length === 2 ? <Join rows={rows} /> : null}
      <Disclosure summary="Cultivar by rows">
        <CultivarByRows rows={rows} />
      </Disclosure>
    </>
  )
}

type Props = { readonly rows: readonly Row[] }

function Join({ rows }: Props) {
  const plan = usePlan()
  const edit = useEdit()
  const [a, b] = rows
  const usual = a && spacingsOf(plan, a)
  if (!a || !b || !usual) return null
  return (
    <div className="actions">
      <button type="button" onClick={() => edit(joinRows(a.id, b.id, usual))}>
        Join into one row
      </button>
    </div>
  )
}

function CultivarByRows({ rows }: Props) {
  const store = usePlannerStore()
  const edit = useEdit()
  const home = useHome()
  const [every, setEvery] = useState(3)
  const [first, setFirst] = useState(1)
  const [cultivar, setCultivar] = useState('')
  const chosen = everyRow(rows, { every, first }, home)
  const set = () => {
    const label = `Set ${cultivar} in ${counted(chosen.length, 'row')}`
    edit(
      compose(
        label,
        chosen.map(({ id }) => setProperties(id, { cultivar })),
      ),
    )
    notify(store, `${cultivar} set in ${counted(chosen.length, 'row')} of ${rows.length}.`)
  }
  return (
    <div className="stack">
      <div className="fields">
        <NumberField
          label="One row in every"
          value={every}
          limit={everyLimit}
          isRequired
          onCommit={n => setEvery(n ?? 1)}
        />
        <NumberField
          label="First of them: row"
          value={first}
          limit={{ low: 1, high: rows.length, isWhole: true }}
          isRequired
          onCommit={n => setFirst(n ?? 1)}
          note="Counted across, from the west or south."
        />
      </div>
      <TextField label="Their cultivar" value={cultivar} onCommit={setCultivar} />
      <div>
        <button type="button" disabled={cultivar === '' || chosen.length === 0} onClick={set}>
          Set it in {counted(chosen.length, 'row')}
        </button>
      </div>
    </div>
  )
}
