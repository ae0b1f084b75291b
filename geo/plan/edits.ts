import type { Plan } from './plan'

/**
 * A change of a plan as a function from plan to plan: pure, and sharing all that it does not touch. It returns the very
 * same plan where it changes nothing. It knows nothing of undo, selection or drawing.
 */
export type Edit = {
  /** What undo calls it, in words that begin with a verb: "Move station North gate". Asked of the plan before the edit. */
  readonly label: string | ((before: Plan) => string)
  /** Edits that follow each other with the same key are one step of undo: the moves of one drag, the letters of one name. */
  readonly key?: string | undefined
  apply(plan: Plan): Plan
}

/** The words for an edit of `before`. */
export function labelOf(edit: Edit, before: Plan): string {
  return typeof edit.label === 'string' ? edit.label : edit.label(before)
}

/** Several edits as one step, in their order. */
export function compose(label: Edit['label'], edits: readonly Edit[], key?: string): Edit {
  return { label, key, apply: plan => edits.reduce((changed, edit) => edit.apply(changed), plan) }
}

/** New values for members; `undefined` takes a member away. */
export type Patch<T> = { readonly [K in keyof T]?: T[K] | undefined }

/** Members with a patch over them; the very same object where nothing changes. */
export function patched<T extends object>(members: T, patch: object): T {
  const changed = { ...members } as Record<string, unknown>
  let isChanged = false
  for (const [name, value] of Object.entries(patch)) {
    const before = Object.hasOwn(changed, name) ? changed[name] : undefined
    if (before === value) continue
    isChanged = true
    if (value === undefined) delete changed[name]
    else changed[name] = value
  }
  return isChanged ? (changed as T) : members
}
