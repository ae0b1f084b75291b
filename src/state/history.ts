import type { Edit } from '#geo/plan/edits'
import { labelOf } from '#geo/plan/edits'
import type { Plan } from '#geo/plan/plan'

/** One step of undo. `before` is the plan to go back to; in the list of steps to redo, the plan to go forward to. */
export type Step = { readonly before: Plan; readonly label: string; readonly key: string | undefined }

/** A plan with the way back and forward. Edits share structure, so that a snapshot costs no more than what changed. */
export type History = { readonly plan: Plan; readonly past: readonly Step[]; readonly future: readonly Step[] }

const mostSteps = 200

/** The history after an edit; the very same where the edit changes nothing. */
export function perform(history: History, edit: Edit): History {
  const { plan, past, future } = history
  const after = edit.apply(plan)
  if (after === plan) return history
  const last = past.at(-1)
  // After an undo the way forward is open, and joining the step before would cut it off without a step of its own.
  const isJoined = edit.key !== undefined && edit.key === last?.key && future.length === 0
  if (isJoined) return { plan: after, past, future }
  const step: Step = { before: plan, label: labelOf(edit, plan), key: edit.key }
  return { plan: after, past: [...past, step].slice(-mostSteps), future: [] }
}

export function undone(history: History): History {
  const { plan, past, future } = history
  const step = past.at(-1)
  if (step === undefined) return history
  return { plan: step.before, past: past.slice(0, -1), future: [...future, { ...step, before: plan }] }
}

export function redone(history: History): History {
  const { plan, past, future } = history
  const step = future.at(-1)
  if (step === undefined) return history
  return { plan: step.before, past: [...past, { ...step, before: plan }], future: future.slice(0, -1) }
}

let gestures = 0

/** A key for one gesture (a drag, a visit to a field): no other gesture gets the same. */
export function gestureKey(): string {
  gestures += 1
  return `gesture-${gestures}`
}
