import { repeatRow, type Spacings } from '#geo/plan/edits-rows'
import { namesAfter } from '#geo/plan/names-after'
import type { Block, Plan, Row } from '#geo/plan/plan'
import { edit, notify, select } from './actions'
import { newIds } from './new-id'
import { selectedFeatures, settingsOf } from './selectors'
import type { PlannerStore } from './store'

/** The spacings that count for a row or block: its own, else its crop's; null where neither has any. */
export function spacingsOf(plan: Plan, { properties }: Row | Block): Spacings | null {
  const { crops } = settingsOf(plan)
  const usual = Object.hasOwn(crops, properties.crop) ? crops[properties.crop] : undefined
  const spacing = properties.spacing ?? usual?.spacing
  const rowSpacing = properties.rowSpacing ?? usual?.rowSpacing
  return spacing && rowSpacing ? { spacing, rowSpacing } : null
}

export type Repeating = { readonly times: number; readonly apart: number; readonly side: 'left' | 'right' }

/** Copies of a row beside it, named on from it and selected in its place; the last of them is what comes next. */
export function repeat(store: PlannerStore, row: Row, { times, apart, side }: Repeating): void {
  const { plan } = store.getState().document
  const usual = plan && spacingsOf(plan, row)
  if (plan === null || !usual) return
  const idOf = newIds(plan)
  const ids = Array.from({ length: times }, () => idOf('row'))
  const names = namesAfter(plan, row.properties.name, times)
  edit(store, repeatRow(row.id, { ids, names, apart, side, usual }))
  select(store, ids.slice(-1))
}

/** One more row beside the selected one, at its own distance; whether a row was selected. */
export function repeatSelected(store: PlannerStore, side: Repeating['side']): boolean {
  const state = store.getState()
  const [feature, ...more] = selectedFeatures(state)
  const { plan } = state.document
  if (plan === null || feature?.properties.kind !== 'row' || more.length > 0) return false
  const row = feature as Row
  const usual = spacingsOf(plan, row)
  if (usual === null) {
    notify(store, 'Its crop has no spacings: type them first.')
    return true
  }
  repeat(store, row, { times: 1, apart: usual.rowSpacing, side })
  return true
}
