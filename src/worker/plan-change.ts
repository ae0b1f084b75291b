import type { Plan } from '#geo/plan/plan'

/**
 * What turns one plain value into another. Edits share all they do not touch, so what is the same object is the same
 * value and need not be looked into: finding the change costs as many comparisons as there are things, whatever they hold.
 */
type Change =
  | { readonly is: 'same' }
  | { readonly is: 'new'; readonly value: unknown }
  | { readonly is: 'members'; readonly names: readonly string[] | null; readonly changed: readonly Member[] }
  | { readonly is: 'items'; readonly changed: readonly (readonly [index: number, change: Change])[] }
  | { readonly is: 'list'; readonly pieces: readonly Piece[] }
/** Names that are null in a change of members stand as they were, in their order. */
type Member = readonly [name: string, change: Change]
/** A stretch of the list as it was, or new things. */
type Piece = { readonly from: number; readonly count: number } | { readonly added: readonly unknown[] }

/** A plan whole, or what changed since the one that was told before it, which has to be there. */
export type PlanChange =
  | { readonly revision: number; readonly whole: Plan }
  | { readonly revision: number; readonly since: number; readonly change: Change }

const same: Change = { is: 'same' }

export function changeBetween(before: unknown, after: unknown): Change {
  if (Object.is(before, after)) return same
  if (Array.isArray(before) && Array.isArray(after)) {
    return isInPlace(before, after) ? itemChange(before, after) : listChange(before, after)
  }
  if (isMembers(before) && isMembers(after)) return memberChange(before, after)
  return { is: 'new', value: after }
}

/** The value after a change; what did not change is the same object as before. */
export function changed(before: unknown, change: Change): unknown {
  switch (change.is) {
    case 'same':
      return before
    case 'new':
      return change.value
    case 'members':
      return changedMembers(before as Members, change)
    case 'items': {
      const after = [...(before as readonly unknown[])]
      for (const [index, each] of change.changed) after[index] = changed(after[index], each)
      return after
    }
    case 'list':
      return change.pieces.flatMap(piece =>
        'added' in piece ? piece.added : (before as readonly unknown[]).slice(piece.from, piece.from + piece.count),
      )
    default:
      return change satisfies never
  }
}

/** Whether nothing came, went or changed its place. */
function isInPlace(before: readonly unknown[], after: readonly unknown[]): boolean {
  if (before.length !== after.length) return false
  const others = after.filter((each, i) => !Object.is(each, before[i]))
  if (others.length === 0) return true
  const known = new Set(before)
  return !others.some(each => known.has(each))
}

function itemChange(before: readonly unknown[], after: readonly unknown[]): Change {
  const items: (readonly [number, Change])[] = []
  for (let i = 0; i < after.length; i += 1) {
    if (!Object.is(before[i], after[i])) items.push([i, changeBetween(before[i], after[i])])
  }
  return { is: 'items', changed: items }
}

function listChange(before: readonly unknown[], after: readonly unknown[]): Change {
  const places = new Map(before.map((each, i) => [each, i]))
  const pieces: ({ from: number; count: number } | { added: unknown[] })[] = []
  for (const each of after) {
    const place = places.get(each)
    const last = pieces.at(-1)
    if (place === undefined) {
      if (last && 'added' in last) last.added.push(each)
      else pieces.push({ added: [each] })
    } else if (last && 'from' in last && last.from + last.count === place) last.count += 1
    else pieces.push({ from: place, count: 1 })
  }
  return { is: 'list', pieces }
}

type Members = Readonly<Record<string, unknown>>

function memberChange(before: Members, after: Members): Change {
  const names = Object.keys(after)
  const old = Object.keys(before)
  const isSameNames = names.length === old.length && names.every((name, i) => name === old[i])
  const members: Member[] = []
  for (const name of names) {
    const isOld = Object.hasOwn(before, name)
    if (isOld && Object.is(before[name], after[name])) continue
    members.push([name, isOld ? changeBetween(before[name], after[name]) : { is: 'new', value: after[name] }])
  }
  return { is: 'members', names: isSameNames ? null : names, changed: members }
}

/** By entries, not by assignment: a member may be called `__proto__`. */
function changedMembers(before: Members, { names, changed: members }: Change & { readonly is: 'members' }): Members {
  const changes = new Map(members)
  const valueAt = (name: string): unknown => {
    const change = changes.get(name)
    return change === undefined ? before[name] : changed(before[name], change)
  }
  return Object.fromEntries((names ?? Object.keys(before)).map(name => [name, valueAt(name)]))
}

function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
