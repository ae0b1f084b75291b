import { assumedPrices, costOf, type Prices, stockOf } from '../stocking/stock'
import type { Setting } from './setting'
import type { InHand } from './suggestion'

/** What stations that move and are stocked anew have by now: planned cocoons, and tubes that hang there. */
export function inHandOf({ ground, movers }: Pick<Setting, 'ground' | 'movers'>): InHand[] {
  const { settings, supplies } = ground
  return movers.map(({ id }) => {
    const { bee, season } = supplies.find(each => each.id === id)!
    const { releases = [] } = season
    const femaleCocoons = releases.reduce((sum, { females }) => sum + females, 0)
    const maleCocoons = releases.reduce((sum, { males = 0 }) => sum + males, 0)
    const tubes = season.tubes ?? stockOf(femaleCocoons, settings.bees[bee], settings.site).tubes
    return { id, femaleCocoons, maleCocoons, tubes }
  })
}

/** What that would cost to buy. */
export function worthInHand(inHand: readonly InHand[], prices: Prices = assumedPrices): number {
  return inHand.reduce((sum, each) => sum + costOf(each, prices), 0)
}

type Counts = Omit<InHand, 'id'>

/** What is left to buy of some stocks. */
export function stillToBuy(stocks: readonly Counts[], inHand: readonly InHand[]): Counts {
  const left = (of: (each: Counts) => number) =>
    Math.max(0, stocks.reduce((sum, each) => sum + of(each), 0) - inHand.reduce((sum, each) => sum + of(each), 0))
  return {
    femaleCocoons: left(each => each.femaleCocoons),
    maleCocoons: left(each => each.maleCocoons),
    tubes: left(each => each.tubes),
  }
}
