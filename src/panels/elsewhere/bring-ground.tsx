import { useEffect, useState } from 'react'
import type { TableGround } from '#geo/file/table-places'
import { featureLimits } from '#geo/plan/limits'
import { isStation } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { NumberField } from '../../parts/number-field'
import { setView } from '../../state/actions'
import { selectedFeatures } from '../../state/selectors'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { homeOf } from '../../text/home'
import { PositionField } from '../ground/position-field'
import { usePlan } from '../hooks'

/** What of the ground a table leaves open. */
export type GroundAsked = 'numbers of trees' | 'numbers of rows' | 'metres'

type Draft = {
  readonly origin: LngLat
  readonly bearing: number | null
  readonly spacing: number | null
  readonly rowSpacing: number | null
  readonly zero: { readonly x: number; readonly y: number }
}

type Props = {
  readonly asked: GroundAsked
  /** x and y of the first line, where they are far from 0; m. */
  readonly zero: { readonly x: number; readonly y: number }
  readonly onChange: (ground: TableGround | null) => void
}

const anyCoordinate = { low: -10_000_000, high: 10_000_000 }

/** Where the table's first place is on the ground, and how the others follow on: asked where it does not say so itself. */
export function ImportGround({ asked, zero, onChange }: Props) {
  const store = usePlannerStore()
  const plan = usePlan()
  const middle = usePlanner(state => state.view.mapMiddle) ?? homeOf(plan)
  const selected = usePlanner(state => selectedFeatures(state)[0])
  const station = plan.features.find(isStation)
  const [draft, setDraft] = useState<Draft>({
    origin: middle,
    bearing: asked === 'metres' ? 0 : null,
    spacing: null,
    rowSpacing: null,
    zero,
  })
  // The middle of the map can be pointed with as long as this is asked.
  useEffect(() => {
    setView(store, { isAiming: true })
    return () => setView(store, { isAiming: false })
  }, [store])
  useEffect(() => onChange(groundOf(asked, draft)), [asked, draft, onChange])
  const set = (patch: Partial<Draft>) => setDraft(before => ({ ...before, ...patch }))
  const isMetres = asked === 'metres'
  const start = isMetres
    ? 'The place of x and y below'
    : asked === 'numbers of rows'
      ? 'Row 1 begins at'
      : 'Row 1, tree 1 stands at'
  return (
    <section className="stack" aria-label="Where it lies on the ground">
      <h3>Where it lies on the ground</h3>
      <PositionField label={start} value={draft.origin} onCommit={origin => set({ origin })} />
      <div className="actions">
        <button type="button" onClick={() => set({ origin: middle })}>
          At the cross on the map
        </button>
        {station === undefined ? null : (
          <button type="button" onClick={() => set({ origin: station.geometry.coordinates })}>
            At {station.properties.name || 'the first station'}
          </button>
        )}
        {selected === undefined || selected.id === station?.id ? null : (
          <button type="button" onClick={() => set({ origin: firstPosition(selected.geometry) })}>
            Where the selected thing starts
          </button>
        )}
      </div>
      <div className="columns">
        {isMetres
          ? (['x', 'y'] as const).map(axis => (
              <NumberField
                key={axis}
                label={`${axis} there`}
                quantity="length"
                value={draft.zero[axis]}
                limit={anyCoordinate}
                isRequired
                onCommit={value => set({ zero: { ...draft.zero, [axis]: value ?? 0 } })}
              />
            ))
          : null}
        <NumberField
          label={isMetres ? 'Bearing of y' : 'Bearing along the rows'}
          quantity="degrees"
          value={draft.bearing}
          limit={{ low: -360, high: 360 }}
          isRequired
          onCommit={bearing => set({ bearing })}
          note={`0 is north, 90 east; ${isMetres ? 'x grows' : 'the next row lies'} to the right.`}
        />
        {asked === 'numbers of trees' ? (
          <NumberField
            label="From tree to tree"
            quantity="length"
            value={draft.spacing}
            limit={featureLimits.row.spacing!}
            isRequired
            onCommit={spacing => set({ spacing })}
          />
        ) : null}
        {isMetres ? null : (
          <NumberField
            label="From row to row"
            quantity="length"
            value={draft.rowSpacing}
            limit={featureLimits.row.rowSpacing!}
            isRequired
            onCommit={rowSpacing => set({ rowSpacing })}
          />
        )}
      </div>
    </section>
  )
}

function groundOf(asked: GroundAsked, { origin, bearing, spacing, rowSpacing, zero }: Draft): TableGround | null {
  if (bearing === null) return null
  if (asked === 'metres') return { origin, bearing, zero }
  if (rowSpacing === null || (asked === 'numbers of trees' && spacing === null)) return null
  return { origin, bearing, rowSpacing, ...(spacing === null ? {} : { spacing }) }
}

function firstPosition({ type, coordinates }: { readonly type: string; readonly coordinates: unknown }): LngLat {
  let first = coordinates
  const depth = { Point: 0, LineString: 1, MultiPoint: 1, Polygon: 2 }[type] ?? 0
  for (let i = 0; i < depth; i += 1) first = (first as readonly unknown[])[0]
  return first as LngLat
}
