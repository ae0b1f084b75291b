import { useState } from 'react'
import type { TreeGrid } from '#geo/file/tree-table'
import { featureLimits } from '#geo/plan/limits'
import type { LngLat } from '#geo/space/plane'
import { NumberField } from '../../parts/number-field'
import { selectedFeatures } from '../../state/selectors'
import { usePlanner } from '../../state/use-planner'
import { homeOf } from '../../text/home'
import { PositionField } from '../ground/position-field'
import { usePlan } from '../hooks'

type Draft = { readonly [K in keyof TreeGrid]: TreeGrid[K] | null }

/** Where row 1, tree 1 stands and how rows and trees follow on: asked where a table has only their numbers. */
export function ImportGrid({ onChange }: { readonly onChange: (grid: TreeGrid | null) => void }) {
  const plan = usePlan()
  const middle = usePlanner(state => state.view.mapMiddle) ?? homeOf(plan)
  const selected = usePlanner(state => selectedFeatures(state)[0])
  const [draft, setDraft] = useState<Draft>({ origin: middle, bearing: null, spacing: null, rowSpacing: null })
  const set = (patch: Partial<Draft>) => {
    const next = { ...draft, ...patch }
    setDraft(next)
    const { origin, bearing, spacing, rowSpacing } = next
    const isWhole = origin !== null && bearing !== null && spacing !== null && rowSpacing !== null
    onChange(isWhole ? { origin, bearing, spacing, rowSpacing } : null)
  }
  return (
    <section className="stack" aria-label="Where rows and trees stand">
      <h3>Where rows and trees stand</h3>
      <PositionField label="Row 1, tree 1 stands at" value={draft.origin} onCommit={origin => set({ origin })} />
      <p className="aside-note">The middle of the map, until you say otherwise.</p>
      {selected === undefined ? null : (
        <button type="button" onClick={() => set({ origin: firstPosition(selected.geometry) })}>
          Start at what is selected
        </button>
      )}
      <div className="columns">
        <NumberField
          label="Bearing along the rows"
          quantity="degrees"
          value={draft.bearing}
          limit={{ low: -360, high: 360 }}
          isRequired
          onCommit={bearing => set({ bearing })}
          note="0 is north, 90 east; the next row lies to the right."
        />
        <NumberField
          label="From tree to tree"
          quantity="length"
          value={draft.spacing}
          limit={featureLimits.row.spacing!}
          isRequired
          onCommit={spacing => set({ spacing })}
        />
        <NumberField
          label="From row to row"
          quantity="length"
          value={draft.rowSpacing}
          limit={featureLimits.row.rowSpacing!}
          isRequired
          onCommit={rowSpacing => set({ rowSpacing })}
        />
      </div>
    </section>
  )
}

function firstPosition({ type, coordinates }: { readonly type: string; readonly coordinates: unknown }): LngLat {
  let first = coordinates
  const depth = { Point: 0, LineString: 1, MultiPoint: 1, Polygon: 2 }[type] ?? 0
  for (let i = 0; i < depth; i += 1) first = (first as readonly unknown[])[0]
  return first as LngLat
}
