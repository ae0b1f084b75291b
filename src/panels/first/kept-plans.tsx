import { useState } from 'react'
import { Dialog } from '../../parts/dialog'
import { counted } from '../../text/words'
import { type KeptPlan, useServices } from '../services'
import { reasonOf, useLoaded } from '../use-loaded'

type Props = {
  readonly onOpen: (id: string) => void
  /** The open plan cannot be deleted under the pen. */
  readonly openId?: string | null
}

/** Plans kept on this device: open one, or delete it for good. */
export function KeptPlans({ onOpen, openId = null }: Props) {
  const { listPlans, deletePlan } = useServices()
  const [plans, reload] = useLoaded(listPlans)
  const [leaving, setLeaving] = useState<KeptPlan | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  if (plans.status === 'loading') return <p className="aside-note">Looking on this device.</p>
  if (plans.status === 'failed') {
    return <p className="field-fault">The plans on this device cannot be read: {plans.reason}</p>
  }
  if (plans.value.length === 0) {
    return <p className="aside-note">None yet. A plan is kept here by itself as soon as it is started.</p>
  }
  const remove = async (plan: KeptPlan) => {
    setLeaving(null)
    try {
      await deletePlan(plan.id)
      setFault(null)
    } catch (error) {
      setFault(`“${plan.name}” was not deleted: ${reasonOf(error)}`)
    }
    reload()
  }
  return (
    <>
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <ul className="plain-list">
        {plans.value.map(plan => (
          <li key={plan.id} className="kept-plan">
            <button type="button" className="quiet kept-plan-open" onClick={() => onOpen(plan.id)}>
              <span className="kept-plan-name">{plan.name}</span>{' '}
              <span className="aside-note">
                {counted(plan.things, 'thing')} drawn, saved {plan.savedAt}
              </span>
            </button>
            {plan.id === openId ? (
              <span className="aside-note">open now</span>
            ) : (
              <button
                type="button"
                className="quiet"
                onClick={() => setLeaving(plan)}
                aria-label={`Delete ${plan.name}`}
              >
                Delete
              </button>
            )}
          </li>
        ))}
      </ul>
      {leaving === null ? null : (
        <Dialog title={`Delete “${leaving.name}”?`} onClose={() => setLeaving(null)}>
          <p>
            The plan and its restore points leave this device for good. A file that you saved from it stays where it is.
          </p>
          <div className="actions">
            <button type="button" className="loss" onClick={() => remove(leaving)}>
              Delete for good
            </button>
            <button type="button" onClick={() => setLeaving(null)}>
              Keep it
            </button>
          </div>
        </Dialog>
      )}
    </>
  )
}
