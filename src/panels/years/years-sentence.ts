import { type Plan, seasonOf } from '#geo/plan/plan'
import { orchardYearOf } from '../../state/selectors'
import { counted, grouped, honest, rangeText } from '../../text/words'
import { returnText } from './found-figures'
import { lastCount, recordedStations, recordIn } from './records'

/** What was counted in a season, in one sentence. What was not counted is told, never taken for zero. */
export function yearsSentence(plan: Plan, year: number): string {
  const season = seasonOf(plan, year)
  const stations = recordedStations(plan, year)
  if (stations.length === 0) return `No nest station is in use in ${year}, so there is nothing to count yet.`
  const counts = stations.flatMap(({ id }) => lastCount(recordIn(season, id).visits ?? [], null) ?? [])
  if (counts.length === 0) return `No capped tubes have been counted in ${year} yet.`
  const capped = counts.reduce((sum, count) => sum + count.capped, 0)
  const of =
    counts.length === stations.length
      ? `at ${stations.length === 1 ? 'the one station' : `all ${grouped(stations.length)} stations`}`
      : `at ${grouped(counts.length)} of ${counted(stations.length, 'station')}; the others were not counted`
  const orchard = orchardYearOf(plan, year)
  if (orchard.nested !== null && orchard.return !== null) {
    const some =
      orchard.counted < orchard.stations
        ? ` at the ${grouped(orchard.counted)} of ${counted(orchard.stations, 'station')} that were counted`
        : ''
    const opened = orchard.opened < orchard.stations ? ` at the ${counted(orchard.opened, 'station')} opened` : ''
    return `About ${honest(orchard.nested.mid)} females nested in ${year}${some}, between ${rangeText(orchard.nested.low, orchard.nested.high, honest).replace(' to ', ' and ')}; each female set out left ${returnText(orchard.return)} daughters${opened}.`
  }
  return `In ${year}, ${counted(capped, 'tube')} ${capped === 1 ? 'was' : 'were'} capped at the last count, ${of}.`
}
