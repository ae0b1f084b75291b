import { type Bloom, type BloomStage, bloomStages, isObserved } from '#geo/plan/plan'
import { addDays, daysBetween, type IsoDate, isIsoDate } from '#geo/time/day'
import { isInOrder } from './bloom-defaults'

export type Dates = { readonly [K in BloomStage]: IsoDate | null }

type Moved = { readonly bloom: Bloom; readonly moved: readonly BloomStage[]; readonly days: number }

/**
 * The bloom that dates make after `changed` was set; null where one is missing or they cannot be put in order. Where the new
 * date runs past the others, those that nobody saw move by as many days; a date that was seen never moves by itself.
 */
export function bloomWith({ first, full, end }: Dates, before: Bloom | null, changed: BloomStage): Moved | null {
  if (first === null || full === null || end === null) return null
  const bloom: Bloom = { ...before, first, full, end }
  if (isInOrder(bloom)) return { bloom, moved: [], days: 0 }
  if (before === null || !isInOrder(before) || !bloomStages.every(stage => isIsoDate(bloom[stage]))) return null
  const days = daysBetween(before[changed], bloom[changed])
  const at = bloomStages.indexOf(changed)
  const moved = bloomStages.filter((stage, i) => (days > 0 ? i > at : i < at) && !isObserved(before, stage))
  const along = Object.fromEntries(moved.map(stage => [stage, addDays(bloom[stage], days)]))
  const after: Bloom = { ...bloom, ...along }
  return isInOrder(after) ? { bloom: after, moved, days } : null
}
