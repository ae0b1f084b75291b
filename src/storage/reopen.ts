import type { Plan } from '#geo/plan/plan'
import type { Outcome } from '#geo/problem'
import { problemText } from '#geo/problem'
import { notify, openPlan } from '../state/actions'
import type { PlannerStore } from '../state/store'
import { keptPlan, loadPlan } from './plans'
import { lastPlanId, rememberPlanId } from './recent'
import { storageError } from './storage-error'

/** Opens the plan that was open when the page was left. False where there is none, or it cannot be opened. */
export async function reopenLastPlan(store: PlannerStore): Promise<boolean> {
  const id = lastPlanId()
  if (id === null) return false
  let outcome: Outcome<Plan>
  try {
    if ((await keptPlan(id)) === undefined) {
      rememberPlanId(null)
      return false
    }
    outcome = await loadPlan(id)
  } catch (error) {
    notify(store, storageError(error).message)
    return false
  }
  // Somebody may have opened another plan while the disk was asked.
  if (store.getState().document.plan !== null) return false
  if (!outcome.ok) {
    const [first] = outcome.problems
    notify(store, `The plan that was open last could not be opened. ${first ? problemText(first) : ''}`.trim())
    return false
  }
  openPlan(store, outcome.value, id)
  return true
}
