import { useEffect } from 'react'
import type { Station } from '#geo/plan/plan'
import { select } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'

/** The station of a list that is selected on the map; where none is, `first`, which is then selected. */
export function useStation(stations: readonly Station[], first: Station | undefined): Station | null {
  const store = usePlannerStore()
  const selection = usePlanner(state => state.view.selection)
  const selected = stations.find(({ id }) => selection[0] === id)
  const id = selected?.id ?? first?.id
  useEffect(() => {
    if (id !== undefined) select(store, [id])
  }, [store, id])
  return selected ?? first ?? null
}
