import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import { adoptPlanId, notify, setSaving } from '../state/actions'
import type { PlannerState, PlannerStore } from '../state/store'
import { keptPlan, savePlan } from './plans'
import { rememberPlanId } from './recent'
import { storageError } from './storage-error'

/** Milliseconds from a change to its saving. Later changes do not put it off, so that steady work is saved as it goes. */
const delay = 800

export type Autosave = {
  /** Saves at once what is not saved yet; resolves when it is saved, or when it failed. */
  flush(): Promise<void>
  stop(): void
}

/** What this window knows of the open plan's place on the device. */
type Place = {
  id: string
  /** The plan as last read or saved, and its text. */
  saved: Plan
  text: string | null
  isNew: boolean
}

type Open = Pick<PlannerState['document'], 'plan' | 'planId'>

/**
 * Keeps the open plan on this device as it changes, when the page is hidden and when it is left, as the text of a saved
 * file. A failure is told in `saving`, the plan stays open, and the next change tries again.
 */
export function startAutosave(store: PlannerStore): Autosave {
  let place: Place | null = null
  let pending: { readonly plan: Plan; readonly place: Place } | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  let saving: Promise<void> = Promise.resolve()
  let toldOf: string | null = null
  let seen: Plan | null = null

  const isOpen = (at: Place): boolean => place === at

  const save = async ({ plan, place: at }: NonNullable<typeof pending>): Promise<void> => {
    try {
      const text = writePlan(plan)
      const savedAt = Date.now()
      const row = { id: at.id, name: plan.name, text, things: plan.features.length, savedAt }
      const known = at.text ?? (plan === at.saved ? text : writePlan(at.saved))
      const { id, isRival } = await savePlan(row, { known, isNew: at.isNew })
      at.isNew = false
      at.saved = plan
      at.text = text
      if (!isOpen(at)) return
      if (id !== at.id) {
        at.id = id
        adoptPlanId(store, id)
      }
      rememberPlanId(id)
      if (isRival) notify(store, `${rivalWords} What was saved there is kept as a restore point of this plan.`)
      if (pending === null) setSaving(store, { status: 'saved', at: timeOfDay(savedAt), reason: '' })
    } catch (error) {
      const { message } = storageError(error)
      if (isOpen(at)) {
        pending ??= { plan, place: at }
        setSaving(store, { ...store.getState().saving, status: 'failed', reason: message })
      } else notify(store, `The last changes of ${plan.name || 'the plan before'} were not saved. ${message}`)
    }
  }

  const flush = (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    if (pending === null) return saving
    const due = pending
    pending = null
    // One after the other: an older text must never come to lie over a newer one.
    saving = saving.then(() => save(due))
    return saving
  }

  const onChange = ({ plan, planId }: Open): void => {
    if (planId !== (place?.id ?? null)) {
      flush()
      place = plan !== null && planId !== null ? { id: planId, saved: plan, text: null, isNew: true } : null
      toldOf = null
      seen = null
      rememberPlanId(planId)
    }
    // The same plan under an adopted id is no change.
    if (plan === null || place === null || plan === seen) return
    seen = plan
    pending = { plan, place }
    if (store.getState().saving.status !== 'saving') {
      setSaving(store, { ...store.getState().saving, status: 'saving', reason: '' })
    }
    timer ??= setTimeout(flush, delay)
  }

  /** Another window may have saved the same plan meanwhile: tell, before anybody works on in an old state. */
  const lookForRival = async (): Promise<void> => {
    const at = place
    if (at === null || at.text === null || pending !== null) return
    try {
      await saving
      const row = await keptPlan(at.id)
      if (row === undefined || !isOpen(at) || row.text === at.text || row.text === toldOf) return
      toldOf = row.text
      notify(
        store,
        `${rivalWords} Reload the page to go on from there; if you change something here, that state becomes a restore point.`,
      )
    } catch {
      // Saving tells what is wrong with the storage; looking need not repeat it.
    }
  }

  const onVisibility = (): void => {
    if (document.visibilityState === 'hidden') void flush()
    else void lookForRival()
  }
  const onLeave = (): void => void flush()
  const onFocus = (): void => void lookForRival()

  const unsubscribe = store.subscribe(({ document: { plan, planId } }): Open => ({ plan, planId }), onChange, {
    equalityFn: (a, b) => a.plan === b.plan && a.planId === b.planId,
  })
  document.addEventListener('visibilitychange', onVisibility)
  window.addEventListener('pagehide', onLeave)
  window.addEventListener('focus', onFocus)
  const { plan, planId } = store.getState().document
  if (plan !== null) onChange({ plan, planId })

  return {
    flush,
    stop() {
      clearTimeout(timer)
      unsubscribe()
      document.removeEventListener('visibilitychange', onVisibility)
      window.removeEventListener('pagehide', onLeave)
      window.removeEventListener('focus', onFocus)
    },
  }
}

const rivalWords = 'This plan was also changed in another window.'

/** Local time of day, HH:MM. */
function timeOfDay(milliseconds: number): string {
  const time = new Date(milliseconds)
  return [time.getHours(), time.getMinutes()].map(part => String(part).padStart(2, '0')).join(':')
}
