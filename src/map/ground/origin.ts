import type { LngLat } from '#geo/space/plane'
import type { PlannerStore } from '../../state/store'
import { homeOf, nowhere } from '../../text/home'

/** Where the grid counts from: asked once for each plan, so that it does not creep while things are drawn. */
export function originOfGrid(store: PlannerStore): () => LngLat {
  let known: { readonly planId: string | null; readonly at: LngLat } | null = null
  return () => {
    const { plan, planId } = store.getState().document
    if (plan === null) return nowhere
    if (known === null || known.planId !== planId) known = { planId, at: homeOf(plan) }
    return known.at
  }
}
