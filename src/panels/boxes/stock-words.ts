import type { StockResult } from '#geo/stocking/programme'
import { listed } from '#geo/wording/plain'
import { about, counted, grouped, honest, percent } from '../../text/words'

/** "About 1,090 female cocoons at 4 stations give every planting 90%; no stock that does it has under 490 nesting females." */
export function stockSentence(result: StockResult): string {
  const { stations, plantings, target, reached, after } = result
  const cocoons = stations.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)
  if (stations.length === 0) return 'No station is in use this season, so there is nothing to stock.'
  const stock = `${grouped(cocoons)} female cocoons at ${counted(stations.length, 'station')}`
  if (reached) return `${stock} give every planting about ${percent(target)} or more.`
  const stopping = plantings.filter(({ isStopping }) => isStopping).map(({ name }) => name)
  const whom = stopping.length > 3 ? counted(stopping.length, 'planting') : listed(stopping)
  const reach = after.coverage === null ? '' : `; ${stock} bring the orchard to about ${percent(after.coverage)}`
  return `No stock at these stations reaches ${percent(target)} everywhere: ${whom || 'some plantings'} ${stopping.length === 1 ? 'stops' : 'stop'} it${reach}.`
}

/**
 * How few it is, and how few it could be at best. The bound needs no solver: it is the answer of a linear programme that
 * is solved to its end.
 */
export function fewestWords({ females, bound }: StockResult): string {
  const rounded = honest(females) === honest(bound)
  const few = rounded
    ? 'no stock of these stations that does as much has fewer by more than rounding up to whole sets'
    : `no stock of these stations that does as much has under ${honest(bound)}; the rest is rounding up to whole sets`
  return `${capitalisedAbout(females)} nesting females; ${few}. That is the answer of a linear programme, worked out to its end: there is nothing left for a solver to prove.`
}

function capitalisedAbout(value: number): string {
  const text = about(value)
  return text.charAt(0).toUpperCase() + text.slice(1)
}
