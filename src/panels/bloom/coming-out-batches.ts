import { bees } from '#geo/data/bees'
import type { Wintering } from '#geo/data/emergence-figures'
import type { BeeId } from '#geo/data/own'
import { settingsFor } from '#geo/data/settings'
import { type BatchEmergence, batchEmergence } from '#geo/flight/emergence'
import { type Plan, seasonOf } from '#geo/plan/plan'
import { dayOfSeason, type IsoDate, isIsoDate } from '#geo/time/day'
import { stationsInUse } from '../../state/selectors'

/** Cocoons of one bee that are set out on one day, over all stations: they come out alike. */
export type ComingBatch = BatchEmergence & {
  readonly bee: BeeId
  readonly date: IsoDate
  readonly day: number
  /** Cocoons; males are null where no batch says how many. */
  readonly femaleCocoons: number
  readonly maleCocoons: number | null
}

/** How each batch of a season comes out, by bee and date. */
export function comingBatches(plan: Plan, year: number, wintering: Wintering): readonly ComingBatch[] {
  const uses = seasonOf(plan, year)?.stations ?? {}
  const sums = new Map<string, { bee: BeeId; date: IsoDate; females: number; males: number | null }>()
  for (const { id } of stationsInUse(plan, year)) {
    const bee = uses[id]?.bee ?? plan.bee
    for (const { date, females, males } of uses[id]?.releases ?? []) {
      if (!Object.hasOwn(bees, bee) || !isIsoDate(date) || females + (males ?? 0) <= 0) continue
      const key = `${bee} ${date}`
      const sum = sums.get(key) ?? { bee, date, females: 0, males: null }
      sum.females += females
      if (males !== undefined) sum.males = (sum.males ?? 0) + males
      sums.set(key, sum)
    }
  }
  const [low, value, high] = (['low', null, 'high'] as const).map(
    end => settingsFor(plan, end === null ? {} : { 'bee.lag': end }).bees,
  ) as [
    ReturnType<typeof settingsFor>['bees'],
    ReturnType<typeof settingsFor>['bees'],
    ReturnType<typeof settingsFor>['bees'],
  ]
  return [...sums.values()]
    .sort((a, b) => a.bee.localeCompare(b.bee) || (a.date < b.date ? -1 : 1))
    .map(({ bee, date, females, males }) => {
      const lag = { low: low[bee].lag, value: value[bee].lag, high: high[bee].lag }
      const day = dayOfSeason(date, year)
      const out = batchEmergence(day, { bee, flight: value[bee], lag, wintering })
      return { ...out, bee, date, day, femaleCocoons: females, maleCocoons: males }
    })
}
