import type { DefaultBloom } from '#geo/bloom/defaults'
import { compose, type Edit } from '#geo/plan/edits'
import { setAppleFullBloom, setBloom } from '#geo/plan/edits-seasons'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { type Bloom, isForage, isObserved, isPlanting, type Plan, seasonOf } from '#geo/plan/plan'
import { addDays, daysBetween, isIsoDate } from '#geo/time/day'
import { cropsIn, plantingsIn } from '../../state/selectors'
import { counted } from '../../text/words'
import { defaultForCrop, type Hinge, hingeOf, isSameBloom } from './bloom-defaults'

/** What is done with dates that somebody typed, or copied from another season, and did not mark as seen. */
export type Typed = 'move' | 'keep' | 'fill'

/** What becomes of one crop, or one planting or forage area with dates of its own. */
export type Fill = {
  readonly key: string
  /** The estimate; null for things with dates of their own, which only move, and for crops without a default. */
  readonly estimate: DefaultBloom | null
  readonly before: Bloom | null
  readonly after: Bloom | null
  readonly kind: 'seen' | 'empty' | 'default' | 'typed'
}

/**
 * The season's blooms as they would be with another hinge. What was seen stays. What is missing or was filled in before is
 * filled in anew; typed dates move along with apple, stay, or give way.
 */
export function calendarFill(plan: Plan, year: number, hinge: Hinge, typed: Typed): readonly Fill[] {
  const dates = seasonOf(plan, year)?.bloom ?? {}
  const standing = new Set(plantingsIn(plan, year).map(({ id }) => id))
  const own = plan.features.filter(
    feature => Object.hasOwn(dates, feature.id) && (isPlanting(feature) ? standing.has(feature.id) : isForage(feature)),
  )
  const days = appleMove(plan, year, hinge)
  const crops = cropsIn(plan, year).map((key): Fill => {
    const estimate = defaultForCrop(plan, year, key, hinge)
    const before = Object.hasOwn(dates, key) ? dates[key]! : null
    if (before === null) return { key, estimate, before, after: estimate?.bloom ?? null, kind: 'empty' }
    if (isSeen(before)) return { key, estimate, before, after: before, kind: 'seen' }
    if (isSameBloom(before, defaultForCrop(plan, year, key)?.bloom)) {
      return { key, estimate, before, after: { ...before, ...estimate?.bloom }, kind: 'default' }
    }
    const anew = typed === 'fill' && estimate !== null ? { ...before, ...estimate.bloom } : null
    return { key, estimate, before, after: anew ?? movedBy(before, typed === 'keep' ? 0 : days), kind: 'typed' }
  })
  const things = own.map(({ id }): Fill => {
    const before = dates[id]!
    if (isSeen(before)) return { key: id, estimate: null, before, after: before, kind: 'seen' }
    return {
      key: id,
      estimate: null,
      before,
      after: movedBy(before, typed === 'keep' ? 0 : days),
      kind: 'typed',
    }
  })
  return [...crops, ...things]
}

/** Days by which apple moves from the dates it has to another hinge; 0 where it has none to move from. */
export function appleMove(plan: Plan, year: number, hinge: Hinge): number {
  if (isSameHinge(hinge, hingeOf(plan, year))) return 0
  const now = seasonOf(plan, year)?.bloom?.apple?.full ?? defaultForCrop(plan, year, 'apple')?.bloom.full
  const then = defaultForCrop(plan, year, 'apple', hinge)?.bloom.full
  return now === undefined || then === undefined || !isIsoDate(now) ? 0 : daysBetween(now, then)
}

/** The hinge and all that hangs on it, as one step of undo. */
export function fillEdit(plan: Plan, year: number, hinge: Hinge, fills: readonly Fill[]): Edit {
  const changed = changedFills(fills)
  const now = hingeOf(plan, year)
  return compose(`Fill in bloom of ${counted(changed.length, 'crop or place', 'crops and places')}`, [
    ...(hinge.region === now.region ? [] : [setPlanMembers({ bloomRegion: hinge.region })]),
    ...(hinge.apple === now.apple ? [] : [setAppleFullBloom(year, hinge.apple)]),
    ...changed.map(({ key, after }) => setBloom(year, key, after)),
  ])
}

export function changedFills(fills: readonly Fill[]): readonly Fill[] {
  return fills.filter(({ before, after }) => after !== null && !isSameBloom(after, before ?? undefined))
}

export function isSameHinge(a: Hinge, b: Hinge): boolean {
  return a.region === b.region && a.apple === b.apple
}

function isSeen(bloom: Bloom): boolean {
  return (['first', 'full', 'end'] as const).some(stage => isObserved(bloom, stage))
}

function movedBy(bloom: Bloom, days: number): Bloom {
  if (days === 0 || ![bloom.first, bloom.full, bloom.end].every(isIsoDate)) return bloom
  const { first, full, end } = bloom
  return { ...bloom, first: addDays(first, days), full: addDays(full, days), end: addDays(end, days) }
}
