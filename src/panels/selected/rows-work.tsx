import { compose } from '#geo/plan/edits'
import { setProperties } from '#geo/plan/edits-features'
import { joinRows } from '#geo/plan/edits-rows'
import type { Feature, Row } from '#geo/plan/plan'
import { everyRow } from '#geo/plan/row-order'
import { Disclosure } from '../../parts/disclosure'
import { notify } from '../../state/actions'
import { spacingsOf } from '../../state/row-actions'
import { usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { useEdit, useHome, usePlan } from '../hooks'
import { CultivarPattern, type Pattern } from './cultivar-pattern'

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
  const chosenBy = (pattern: Pattern) => everyRow(rows, pattern, home)
  const set = (pattern: Pattern) => {
    const { cultivar } = pattern
    const chosen = chosenBy(pattern)
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
      <CultivarPattern
        of="row"
        start={{ every: 3, first: 1 }}
        most={rows.length}
        least={1}
        firstNote="Counted across, from the west or south."
        words={pattern => `Set it in ${counted(chosenBy(pattern).length, 'row')}`}
        onSet={set}
      />
    </div>
  )
}
