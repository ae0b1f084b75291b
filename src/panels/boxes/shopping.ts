import type { Plan } from '#geo/plan/plan'
import { seasonOf } from '#geo/plan/plan'
import type { SuggestedStation } from '#geo/siting/suggestion'
import type { Prices } from '#geo/stocking/stock'
import { csvText } from '../../text/csv'

/** One line of what is to be bought. `bore` and `depth` in the words of the bee. */
export type ShoppingLine = {
  readonly item: string
  readonly count: number
  readonly price: number
  readonly sum: number
}

/** What the new stations among `stations` ask for; those that move have theirs. */
export function shoppingLines(
  stations: readonly SuggestedStation[],
  prices: Prices,
  tubeSize: string,
): readonly ShoppingLine[] {
  const fresh = stations.filter(station => station.new)
  const sum = (of: (station: SuggestedStation) => number) => fresh.reduce((total, each) => total + of(each), 0)
  const line = (item: string, count: number, price: number) => ({ item, count, price, sum: count * price })
  return [
    line('Stations', fresh.length, prices.station),
    line(
      'Female cocoons',
      sum(each => each.femaleCocoons),
      prices.femaleCocoon,
    ),
    line(
      'Male cocoons',
      sum(each => each.maleCocoons),
      prices.maleCocoon,
    ),
    line(
      `Tubes, ${tubeSize}`,
      sum(each => each.tubes),
      prices.tube,
    ),
  ].filter(({ count }) => count > 0)
}

export function totalOf(lines: readonly ShoppingLine[]): number {
  return lines.reduce((total, { sum }) => total + sum, 0)
}

export type LotLine = { readonly lot: string; readonly females: number; readonly males: number }

/** Cocoons that the season has planned already, by lot; males where they are written down. */
export function lotsOf(plan: Plan, year: number): readonly LotLine[] {
  const lots = new Map<string, LotLine>()
  for (const { releases = [] } of Object.values(seasonOf(plan, year)?.stations ?? {})) {
    for (const { lot = '', females, males = 0 } of releases) {
      const line = lots.get(lot) ?? { lot, females: 0, males: 0 }
      lots.set(lot, { lot, females: line.females + females, males: line.males + males })
    }
  }
  return [...lots.values()].sort((a, b) => (a.lot < b.lot ? -1 : 1))
}

/** The list as a table file. */
export function shoppingCsv(lines: readonly ShoppingLine[], lots: readonly LotLine[]): string {
  const cents = (amount: number) => Number(amount.toFixed(2))
  return csvText([
    ['Item', 'Number', 'Price each', 'Sum'],
    ...lines.map(({ item, count, price, sum }) => [item, count, cents(price), cents(sum)]),
    ['Total', '', '', cents(totalOf(lines))],
    ...(lots.length === 0 ? [] : [[''], ['Planned already, lot', 'Female cocoons', 'Male cocoons']]),
    ...lots.map(({ lot, females, males }) => [lot || 'without a lot', females, males]),
  ])
}

/** The same to be pasted into a letter. */
export function shoppingText(lines: readonly ShoppingLine[], money: (amount: number) => string): string {
  const rows = lines.map(({ item, count, price, sum }) => `${item}: ${count} at ${money(price)} = ${money(sum)}`)
  return [...rows, `Total: ${money(totalOf(lines))}`].join('\n')
}
