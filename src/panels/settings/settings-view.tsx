import { useMemo, useState } from 'react'
import { type ParameterRow, parameterRows } from '#geo/data/parameter-rows'
import { cropsIn } from '../../state/selectors'
import { counted } from '../../text/words'
import { usePlan, useYear } from '../hooks'
import { ParameterField } from '../working/parameter-field'
import { OwnCrops } from './own-crops'

type Group = {
  readonly key: string
  readonly name: string
  readonly groupId: string
  readonly rows: readonly ParameterRow[]
}

/** Every number in use, with its range and source, each open to a value of one's own. */
export function SettingsView() {
  const plan = usePlan()
  const year = useYear()
  const groups = useMemo(() => groupsOf(parameterRows(plan)), [plan])
  const inUse = new Set<string>(['site', plan.bee, ...cropsIn(plan, year)])
  const own = groups.reduce((sum, { rows }) => sum + rows.filter(row => row.own).length, 0)
  const first = groups.filter(({ groupId }) => inUse.has(groupId))
  const others = groups.filter(({ groupId }) => !inUse.has(groupId))
  return (
    <div className="stack-wide">
      <p>
        Every number that the count uses.{' '}
        {own === 0 ? 'All are defaults.' : `${counted(own, 'value')} ${own === 1 ? 'is' : 'are'} your own.`} An empty
        field means the default; a value of your own counts for this plan only.
      </p>
      <OwnCrops />
      <section className="stack" aria-labelledby="figures-used">
        <h3 id="figures-used">In use in {year}</h3>
        {first.map(group => (
          <FigureGroup key={group.key} group={group} />
        ))}
      </section>
      <section className="stack" aria-labelledby="figures-other">
        <h3 id="figures-other">Others</h3>
        {others.map(group => (
          <FigureGroup key={group.key} group={group} />
        ))}
      </section>
    </div>
  )
}

/** Its rows are made only once it is opened: there are some four hundred in all. */
function FigureGroup({ group }: { readonly group: Group }) {
  const [isOpen, setOpen] = useState(false)
  const own = group.rows.filter(row => row.own).length
  return (
    <details className="disclosure" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>
        {group.name}
        {own > 0 ? ` (${own} of your own)` : ''}
      </summary>
      <div className="disclosure-body">
        {isOpen ? group.rows.map(row => <ParameterField key={`${row.groupId} ${row.name}`} row={row} />) : null}
      </div>
    </details>
  )
}

function groupsOf(rows: readonly ParameterRow[]): readonly Group[] {
  const groups = new Map<string, { name: string; groupId: string; rows: ParameterRow[] }>()
  for (const row of rows) {
    const key = `${row.groupId} ${row.group}`
    const group = groups.get(key) ?? { name: row.group, groupId: row.groupId, rows: [] }
    group.rows.push(row)
    groups.set(key, group)
  }
  return [...groups].map(([key, group]) => ({ key, ...group }))
}
