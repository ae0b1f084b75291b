import { setView } from '../../state/actions'
import type { PlannerStore } from '../../state/store'

/** The map goes to a picture that was just laid; a sheet that hides all of the map makes room for it. */
export function showLaid(store: PlannerStore): void {
  const { view } = store.getState()
  setView(store, {
    focusRequest: view.focusRequest + 1,
    sheet: view.sheet === 'full' ? 'half' : view.sheet,
  })
}
