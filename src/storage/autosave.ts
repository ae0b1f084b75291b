import { writePlan } from '#geo/file/write'
import type { Plan } from '#geo/plan/plan'
import { adoptPlanId, notify, setSaving } from '../state/actions'
import { newId } from '../state/new-id'
import type { PlannerState, PlannerStore } from '../state/store'
import type { PlanRow } from './database'
import { putAside } from './partings'
import { keptPlan, savePlan } from './plans'
import { printByParts } from './print-by-parts'
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
  readonly partingKey: string
  /** The plan as last read or saved, and its text. */
  saved: Plan
  text: string | null
  isNew: boolean
}

type Due = { readonly plan: Plan; readonly place: Place }

type Open = Pick<PlannerState['document'], 'plan' | 'planId'>

/**
 * Keeps the open plan on this device as it changes, when the page is hidden and when it is left, as the text of a saved
 * file. A failure is told in `saving`, the plan stays open, and the next change tries again.
 */
export function startAutosave(store: PlannerStore): Autosave {
  let place: Place | null = null
  let pending: Due | null = null
  let underWay: Due | null = null
  let aside: Due | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  let saving: Promise<void> = Promise.resolve()
  let toldOf: string | null = null
  let seen: Plan | null = null

  const isOpen = (at: Place): boolean => place === at

  const save = async (due: Due): Promise<void> => {
    const { plan, place: at } = due
    try {
      const printing = printByParts(plan)
      if (printing !== null) await printing
      const row = rowOf(due)
      const { text, savedAt } = row
      const { id, isRival } = await savePlan(row, { known: knownText(at), isNew: at.isNew, partingKey: at.partingKey })
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
    } finally {
      if (underWay === due) underWay = null
    }
  }

  const flush = (): Promise<void> => {
    clearTimeout(timer)
    timer = undefined
    if (pending === null) return saving
    const due = pending
    pending = null
    underWay = due
    // One after the other: an older text must never come to lie over a newer one.
    saving = saving.then(() => save(due))
    return saving
  }

  const onChange = ({ plan, planId }: Open): void => {
    if (planId !== (place?.id ?? null)) {
      flush()
      place =
        plan !== null && planId !== null
          ? { id: planId, partingKey: newId('parting'), saved: plan, text: null, isNew: true }
          : null
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

  const onLeave = (): void => {
    // A field that is being typed into gives its value when it is left: it is left now.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
    const due = pending ?? underWay
    if (due !== null && due !== aside) {
      aside = due
      const { place: at } = due
      // A failure is told by the saving that follows.
      putAside({ key: at.partingKey, row: rowOf(due), known: knownText(at) }).catch(() => {})
    }
    void flush()
  }
  const onVisibility = (): void => {
    if (document.visibilityState === 'hidden') onLeave()
    else void lookForRival()
  }
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

function rowOf({ plan, place }: Due): PlanRow {
  return { id: place.id, name: plan.name, text: writePlan(plan), things: plan.features.length, savedAt: Date.now() }
}

function knownText(place: Place): string {
  place.text ??= writePlan(place.saved)
  return place.text
}

/** Local time of day, HH:MM. */
function timeOfDay(milliseconds: number): string {
  const time = new Date(milliseconds)
  return [time.getHours(), time.getMinutes()].map(part => String(part).padStart(2, '0')).join(':')
}
