import { bloomOf } from '../bloom/bloom'
import { dayOfSeason, type IsoDate } from '../time/day'
import type { AdvisedBatch, BeeAdvice } from './advice'
import { addOpenBlossom, isFedOn } from './open-forage'
import type { BeeGroup } from './schedule-search'
import type { TimingGround } from './timing-ground'

/** What gives the first nesting females of a batch most of their blossom near the stations; null = nothing drawn. */
export function leaningOn(ground: TimingGround, { bee, stations }: BeeGroup, date: IsoDate): AdvisedBatch['leansOn'] {
  const sums = new Map<number, number>()
  const day = dayOfSeason(date, ground.year)
  const values = ground.settings.bees[bee]
  // A station whose own blossom is not out yet waits, so that nothing near it counts for this day.
  for (const { near } of stations)
    if (isFedOn(ground, near, day, values)) addOpenBlossom(ground, near, day, values, sums)
  const [most] = [...sums].sort((a, b) => b[1] - a[1] || a[0] - b[0])
  if (most === undefined) return null
  const { id, name, group } = ground.demand.grounds[most[0]]!
  return { id, name, isForage: group.isForage }
}

/** The first planting to bloom among those near the stations, and the day on which a tenth of its flowers are open. */
export function firstCropOf({ demand, season }: TimingGround, { stations }: BeeGroup): BeeAdvice['firstCrop'] {
  let first: BeeAdvice['firstCrop'] = null
  const grounds = new Set(stations.flatMap(({ near }) => near.map(({ ground }) => ground)))
  for (const index of grounds) {
    const { id, name, crop, group } = demand.grounds[index]!
    const date = group.isForage ? undefined : bloomOf(season.bloom, id, crop)?.first
    if (date !== undefined && (first === null || date < first.date)) first = { id, name, date }
  }
  return first
}
