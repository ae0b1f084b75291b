import type { Coverage } from '../coverage/coverage'
import { serviceOfDay, workOfDay } from '../coverage/day'
import type { Demand } from '../coverage/demand'
import { nestingBatches, type Supply } from '../coverage/supply'
import type { BeeId } from '../data/own'
import type { Settings } from '../data/settings'
import { flightCurve } from '../flight/flight'
import { valueOn } from '../time/curve'

/** Points whose blossom is closed on the day, and points whose bloom is not known, in `DayReport.work`. */
export const closedWork = -2
export const unknownWork = -1

/**
 * Who works where on one day. What a day's blossom wants is its share of the season's wish: R times the bloom weight of
 * the day. What arrives against that has, weighed by open flowers, the point's coverage (uncapped) as its mean.
 */
export type DayReport = {
  /** Day of season. */
  readonly day: number
  /**
   * For every point of the cloud: what arrives against what its open flowers want, 0 to 1; 1 where nothing is wanted;
   * `closedWork`, `unknownWork`.
   */
  readonly work: Float32Array
  readonly plantings: readonly PlantingDay[]
  readonly stations: readonly StationDay[]
}

/** Blue orchard bee females; null = bloom not known. */
export type PlantingDay = {
  readonly id: string
  readonly name: string
  /** How far the bloom is open, against its own peak; 0 to 1. */
  readonly open: number | null
  readonly wanted: number | null
  readonly arriving: number | null
  /** Sum over the points of what arrives up to what is wanted, against the sum of what is wanted; null where nothing is. */
  readonly met: number | null
}

export type StationDay = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  /** Nesting females on the wing, in their own species; how long they can fly that day is another matter. */
  readonly females: number
  /** Shares of their work that go to drawn blossom, plantings and forage areas, largest first. */
  readonly work: readonly { readonly id: string; readonly share: number }[]
  /** Share that goes to blossom nobody drew; null where nothing is open within range. */
  readonly elsewhere: number | null
}

type Season = {
  readonly year: number
  readonly demand: Demand
  readonly supplies: readonly Supply[]
  readonly coverage: Coverage
  readonly settings: Settings
}

/** Work of one day of a season that is laid out. */
export function dayReport(season: Season, day: number): DayReport {
  const { demand, coverage } = season
  const { field } = coverage
  const service = serviceOfDay(coverage, day)
  const grounds = demand.grounds.filter(({ group }) => !group.isForage)
  const work = new Float32Array(field.groupStart[grounds.length]!)
  const plantings = grounds.map(({ id, name, group }, g): PlantingDay => {
    const start = field.groupStart[g]!
    const end = field.groupStart[g + 1]!
    if (group.bloom === null) {
      work.fill(unknownWork, start, end)
      return { id, name, open: null, wanted: null, arriving: null, met: null }
    }
    const { open, weight } = demand.blooms[group.bloom]!
    const want = group.wanted * valueOn(weight, day)
    const isOpen = valueOn(open, day) > 0
    let arriving = 0
    let met = 0
    for (let i = start; i < end; i += 1) {
      arriving += service[i]!
      met += Math.min(service[i]!, want)
      work[start + field.order[i]!] = !isOpen ? closedWork : want > 0 ? Math.min(1, service[i]! / want) : 1
    }
    const wanted = (end - start) * want
    return { id, name, open: valueOn(open, day), wanted, arriving, met: wanted > 0 ? Math.min(1, met / wanted) : null }
  })
  return {
    day,
    work,
    plantings,
    stations: season.supplies.map((supply, index) => stationDay(season, supply, index, day)),
  }
}

function stationDay(
  { year, demand, coverage, settings }: Season,
  supply: Supply,
  index: number,
  day: number,
): StationDay {
  const { id, name, bee } = supply
  const values = settings.bees[bee]
  const batches = nestingBatches(supply.season.releases ?? [], values, year)
  const females = flightCurve(batches, values, day, day + 1).values[0]!
  const shares = workOfDay(coverage, index, day)
  const work = (shares ?? [])
    .map((share, g) => ({ id: demand.grounds[g]!.id, share }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share)
  const drawn = work.reduce((sum, { share }) => sum + share, 0)
  return { id, name, bee, females, work, elsewhere: shares && Math.max(0, 1 - drawn) }
}
