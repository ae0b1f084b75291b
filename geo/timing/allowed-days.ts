import type { Coverage } from '../coverage/coverage'
import type { Supply } from '../coverage/supply'
import { adviceFigures } from '../data/timing-figures'
import { endOf } from '../time/curve'
import { isFedOn, type NearBlossom, nearBlossom } from './open-forage'
import type { TimingGround } from './timing-ground'

/** A station whose batches are in question. */
export type Asked = {
  readonly supply: Supply
  /** Where it stands in the coverage that holds the stations in question. */
  readonly index: number
  /** Nesting females that its cocoons come to; 1 where none is set out yet. */
  readonly females: number
  readonly near: readonly NearBlossom[]
}

export function askedStations(ground: TimingGround, supplies: readonly Supply[], coverage: Coverage): readonly Asked[] {
  return supplies.map((supply, index) => ({
    supply,
    index,
    females: supply.input.females > 0 ? supply.input.females : 1,
    near: nearBlossom(ground, coverage, index, supply.input, adviceFigures.forageReach.value),
  }))
}

/** Days in order; each station's own among them, and those that have none. */
export type AllowedDays = {
  readonly days: readonly number[]
  /** For each day of the list the one, by its place in the list, on which a station is stocked when others are stocked on it. */
  readonly waits: ReadonlyMap<Asked, readonly number[]>
  /** Stations without blossom near them on any such day: nothing says when they may be stocked. */
  readonly bare: readonly Asked[]
}

/**
 * Days on which stations of one bee may be stocked: blossom near at least one must be open when its first females nest.
 * A station whose own blossom is not out yet waits for its first day; one whose blossom is over had its last.
 */
export function allowedDays(ground: TimingGround, stations: readonly Asked[]): AllowedDays {
  const { demand, settings } = ground
  const bee = settings.bees[stations[0]!.supply.bee]
  const blooms = demand.blooms.map(({ open }) => open)
  const from = Math.min(...blooms.map(({ start }) => start)) - Math.ceil(bee.lag)
  const to = Math.max(...blooms.map(endOf))
  const all = Array.from({ length: to - from }, (_, i) => from + i)
  const fed = new Map(stations.map(asked => [asked, all.filter(day => isFedOn(ground, asked.near, day, bee))]))
  const some = new Set([...fed.values()].flat())
  const days = some.size === 0 ? all : all.filter(day => some.has(day))
  const bare = stations.filter(asked => fed.get(asked)!.length === 0)
  const waits = new Map(
    stations.map(asked => {
      const own = fed.get(asked)!
      const waiting = days.map((day, i) => {
        const next = own.find(each => each >= day) ?? own.at(-1)
        return next === undefined ? i : days.indexOf(next)
      })
      return [asked, waiting]
    }),
  )
  return { days, waits, bare }
}
