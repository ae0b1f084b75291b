import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import type { BeeId } from '#geo/data/own'
import { bestRelease } from '#geo/flight/flight'
import type { Plan } from '#geo/plan/plan'
import { dateOfDay, type IsoDate } from '#geo/time/day'
import { bloomOf, plantingsIn, settingsOf } from '../../state/selectors'
import { measured } from '../measures'
import { cropTitle } from '../titles'
import { isInOrder } from './bloom-defaults'

/** The day on which one batch of a bee best meets the bloom of the crop with most ground; null where nothing blooms. */
export function bestReleaseFor(
  plan: Plan,
  year: number,
  bee: BeeId,
): { readonly date: IsoDate; readonly name: string } | null {
  const grounds = new Map<string, number>()
  for (const planting of plantingsIn(plan, year)) {
    const bloom = bloomOf(plan, year, planting)
    if (bloom === undefined || !isInOrder(bloom)) continue
    const { crop } = planting.properties
    grounds.set(crop, (grounds.get(crop) ?? 0) + (measured(plan, planting).area ?? 0))
  }
  const [crop] = [...grounds].sort((a, b) => b[1] - a[1])[0] ?? []
  const planting = plantingsIn(plan, year).find(({ properties }) => properties.crop === crop)
  const bloom = planting && bloomOf(plan, year, planting)
  if (crop === undefined || bloom === undefined) return null
  const { day } = bestRelease(bloomWeight(bloomCurve(bloom, year)), settingsOf(plan).bees[bee])
  return { date: dateOfDay(day, year), name: cropTitle(plan, crop) }
}
