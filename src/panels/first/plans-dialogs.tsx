import { useCallback, useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import { type Outcome, problemText } from '#geo/problem'
import { Dialog } from '../../parts/dialog'
import { edit, notify, openPlan } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf, useLoaded } from '../use-loaded'
import { KeptPlans } from './kept-plans'

/** Plans on this device, with one open. */
export function PlansDialog({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const openId = usePlanner(state => state.document.planId)
  const { readKeptPlan } = useServices()
  const open = async (id: string) => {
    if (id === openId) return onClose()
    const fault = await taken(readKeptPlan(id), plan => openPlan(store, plan, id))
    if (fault !== null) notify(store, `That plan could not be opened: ${fault}`)
    onClose()
  }
  return (
    <Dialog title="Plans on this device" onClose={onClose}>
      <p className="aside-note">The open plan is kept by itself while you work. Opening another one loses nothing.</p>
      <KeptPlans onOpen={open} openId={openId} />
    </Dialog>
  )
}

/** Earlier states of the open plan; going back to one keeps the present state first. */
export function RestoreDialog({ onClose }: { readonly onClose: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const planId = usePlanner(state => state.document.planId) ?? ''
  const { listRestorePoints, readRestorePoint, keepRestorePoint } = useServices()
  const [points, reload] = useLoaded(useCallback(() => listRestorePoints(planId), [listRestorePoints, planId]))
  const [fault, setFault] = useState<string | null>(null)
  const keep = async () => {
    try {
      await keepRestorePoint(planId, plan, 'kept by hand')
      setFault(null)
    } catch (error) {
      setFault(`The restore point was not kept: ${reasonOf(error)}`)
    }
    reload()
  }
  const goBack = async (pointId: string) => {
    try {
      await keepRestorePoint(planId, plan, 'before going back')
      const wrong = await taken(readRestorePoint(pointId), old =>
        edit(store, { label: 'Go back to a restore point', apply: () => old }),
      )
      if (wrong === null) onClose()
      else setFault(`That restore point could not be read: ${wrong}`)
    } catch (error) {
      setFault(`Nothing was changed: ${reasonOf(error)}`)
    }
  }
  return (
    <Dialog title="Restore points" onClose={onClose}>
      <p className="aside-note">
        Earlier states of this plan, kept on this device. Before going back to one, the present state is kept as well,
        and undo takes you back to it.
      </p>
      <div>
        <button type="button" onClick={keep}>
          Keep a restore point now
        </button>
      </div>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      {points.status === 'failed' ? <p className="field-fault">They cannot be read: {points.reason}</p> : null}
      {points.status === 'ready' && points.value.length === 0 ? <p>There are none yet.</p> : null}
      {points.status === 'ready' ? (
        <ul className="plain-list">
          {points.value.map(point => (
            <li key={point.id} className="kept-plan">
              <span className="kept-plan-open">
                {point.savedAt} <span className="aside-note">{point.why}</span>
              </span>
              <button type="button" onClick={() => goBack(point.id)} aria-label={`Go back to ${point.savedAt}`}>
                Go back to this
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </Dialog>
  )
}

/** Hands a plan on that could be read; otherwise says why it could not. */
async function taken(reading: Promise<Outcome<Plan>>, use: (plan: Plan) => void): Promise<string | null> {
  try {
    const outcome = await reading
    if (outcome.ok) {
      use(outcome.value)
      return null
    }
    const [first] = outcome.problems
    return first ? problemText(first) : 'it holds no plan.'
  } catch (error) {
    return reasonOf(error)
  }
}
