import type { BeeId } from '../data/own'
import type { Parameter } from '../data/parameter'
import { seasonWork } from '../data/season-work'
import { sourceText } from '../data/thresholds'
import { adviceFigures } from '../data/timing-figures'
import { type FlightSettings, flightCurve, type NestingBatch } from '../flight/flight'
import { shortened } from '../plan/place'
import { dayOfSeason, type IsoDate } from '../time/day'
import { groundsWithin } from './open-forage'
import type { TimingGround } from './timing-ground'

/** A stocked station as the checks of dates see it. */
export type Flying = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly batches: readonly { readonly date: IsoDate; readonly day: number; readonly females: number }[]
  /** Blooms of the grounds near it. */
  readonly near: readonly { readonly bloom: number }[]
  /** Last day on which a fair share of its females is at work, by the dates of release. */
  readonly lastDay: number
}

/** Stations of the season that hold bees, in the order of the plan. */
export function flyingStations(ground: TimingGround): readonly Flying[] {
  const { supplies, settings, year, demand } = ground
  return supplies.flatMap(({ id, name, bee, season, input }): Flying[] => {
    const values = settings.bees[bee]
    const batches = (season.releases ?? [])
      .filter(({ females }) => females > 0)
      .map(({ date, females }) => ({ date, day: dayOfSeason(date, year), females }))
      .sort((a, b) => a.day - b.day)
    if (batches.length === 0) return []
    const near = groundsWithin(ground, input, adviceFigures.forageReach.value).map(index => ({
      bloom: demand.grounds[index]!.group.bloom!,
    }))
    const lastDay = lastBusyDay(batches, values)
    return [{ id, name: shortened(name), bee, batches, near, lastDay }]
  })
}

/** The last day on which a fair share of the females of a station's best day is still at work, in typical weather. */
export function lastBusyDay(batches: readonly NestingBatch[], values: FlightSettings): number {
  const days = batches.map(({ day }) => day)
  // Five lives after the last has begun, less than a hundredth is left.
  const to = Math.max(...days) + Math.ceil(values.lag + 4 * values.spreadDays + 5 * values.nestingLife)
  const flight = flightCurve(batches, values, Math.min(...days), to)
  const over = seasonWork.flightOver.value * Math.max(...flight.values)
  return flight.start + flight.values.findLastIndex(females => females >= over)
}

/** A figure's value and source, as the sentences tell them; with `limit`, another of its ends than the value. */
export function told(
  figure: Pick<Parameter, 'value' | 'source'>,
  limit = figure.value,
): { readonly limit: number; readonly source: string } {
  return { limit, source: sourceText(figure) }
}
