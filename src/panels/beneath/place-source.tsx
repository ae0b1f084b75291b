import { useEffect } from 'react'
import type { LngLat } from '#geo/space/plane'
import { setView } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { FromSelected } from '../ground/from-selected'
import { PositionField } from '../ground/position-field'
import { Here } from './here'

type Props = {
  readonly label: string
  readonly value: LngLat | null
  /** The ways to find it are shown, and the map shows its middle. */
  readonly isOpen: boolean
  readonly onTake: (at: LngLat) => void
}

/** A position on the ground: typed, from the middle of the map, or from what is selected. */
export function PlaceSource({ label, value, isOpen, onTake }: Props) {
  const store = usePlannerStore()
  useEffect(() => {
    if (!isOpen) return
    setView(store, { isAiming: true })
    return () => setView(store, { isAiming: false })
  }, [store, isOpen])
  return (
    <div className="stack">
      <PositionField label={label} value={value} onCommit={onTake} />
      {isOpen ? (
        <div className="actions">
          <button
            type="button"
            className="quiet"
            onClick={() => {
              const { mapMiddle } = store.getState().view
              if (mapMiddle !== null) onTake(mapMiddle)
            }}
          >
            Where the cross stands on the map
          </button>
          <FromSelected onTake={onTake} />
          <Here onTake={onTake} />
        </div>
      ) : null}
    </div>
  )
}
