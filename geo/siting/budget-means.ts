import { nestingShare } from '../stocking/season-ground'
import { assumedPrices, costOf, mostCocoons, mostTubes, stockOf, usualFemales } from '../stocking/stock'
import type { Part } from './bound'
import type { Question } from './question'
import { openingOf, type Setting } from './setting'
import { femalesOfMovers } from './stock-of-placings'

export type BudgetQuestion = Extract<Question, { readonly kind: 'money' | 'cocoons' }>

/** What a budget buys. Cocoons come in sets. */
export type Means = {
  /** Sets that one station holds at most, and nesting females of one set. */
  readonly most: number
  readonly unit: number
  /** Stations that the usual stock makes of it; `isFixed`: no other number is asked about. */
  readonly usual: number
  readonly isFixed: boolean
  /** Sets for so many stations, of which so many have to be bought. */
  setsFor(stations: number, bought: number): number
  /** The columns worth most that the budget buys, and some more where that is simpler: see `upperBound`. */
  pick(worth: Float64Array): Part[]
  /** What a solver is to keep to: cost of opening each place and of a female, and the sum of both that may be spent. */
  readonly limits: readonly {
    readonly opening: readonly number[]
    readonly perFemale: number
    readonly most: number
  }[]
}

export function meansOf(setting: Setting, question: BudgetQuestion): Means {
  const { ground, options, placings, sites, unused } = setting
  const { settings } = ground
  const bee = settings.bees[placings[0]!.kind.bee]
  const { setOf = 1, prices = assumedPrices } = options
  const share = nestingShare(bee)
  const most = Math.max(1, mostCocoons(options.tubes ?? mostTubes, bee, settings.site, setOf) / setOf)
  const usualSets = Math.max(1, Math.round(usualFemales / Math.max(share, 1e-12) / setOf))
  const full = most * setOf * share
  const unit = setOf * share
  if (question.kind === 'cocoons') {
    const sets = Math.floor(question.cocoons / setOf + 1e-9)
    const usual = Math.max(1, question.stations ?? Math.round(sets / usualSets))
    const total = sets * unit
    const pick = (worth: Float64Array) => filled(setting, worth, full, { most: usual, females: total })
    const limits = [
      { opening: sites.map(() => 0), perFemale: 1, most: total },
      { opening: sites.map(() => 1), perFemale: 0, most: usual },
    ]
    return { most, unit, usual, isFixed: true, setsFor: () => sets, pick, limits }
  }
  const costOfSets = (stations: number, bought: number, sets: number) => {
    // The dearest way of sharing sets out rounds males and tubes up at every station.
    const each = costOf(stockOf(Math.ceil(sets / stations) * setOf, bee, settings.site), prices)
    const fewer = costOf(stockOf(Math.floor(sets / stations) * setOf, bee, settings.site), prices)
    const larger = sets % stations
    const rounding = stations * (prices.maleCocoon + prices.tube)
    return bought * prices.station + larger * each + (stations - larger) * fewer + rounding
  }
  const setsFor = (stations: number, bought: number) => {
    if (stations === 0) return 0
    let low = 0
    let high = most * stations
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if (costOfSets(stations, bought, middle) <= question.amount) low = middle
      else high = middle - 1
    }
    return low
  }
  const stock = stockOf(usualSets * setOf, bee, settings.site)
  const usual = Math.max(1, Math.round(question.amount / Math.max(prices.station + costOf(stock, prices), 1e-9)))
  const perFemale =
    (prices.femaleCocoon + bee.malesPerFemale * prices.maleCocoon) / Math.max(share, 1e-12) +
    bee.tubesPerFemale * (1 + settings.site.spareTubes) * prices.tube
  const pick = (worth: Float64Array) => {
    // A full station costs least for each female: as many full ones as the money buys, and a part of one more. Stations
    // that stand unused are as good as their price in hand.
    const amount = question.amount + unused.size * prices.station
    const stations = amount / Math.max(prices.station + full * perFemale, 1e-9)
    return filled(setting, worth, full, { most: Number.POSITIVE_INFINITY, females: stations * full })
  }
  const limits = [{ opening: openingOf(setting, prices.station), perFemale, most: question.amount }]
  return { most, unit, usual: Math.min(usual, sites.length), isFixed: false, setsFor, pick, limits }
}

/** Females shared among the columns of new stations worth most, none above `full`, and each mover at its best place. */
function filled(
  setting: Setting,
  worth: Float64Array,
  full: number,
  { most, females }: { readonly most: number; readonly females: number },
): Part[] {
  const sites = setting.sites.length
  const order = Array.from({ length: sites }, (_, site) => site).sort((a, b) => worth[b]! - worth[a]! || a - b)
  const parts: Part[] = []
  let left = females
  for (const column of order) {
    if (parts.length >= most || left <= 0 || worth[column]! <= 0) break
    const amount = Math.min(full, left)
    parts.push({ column, amount })
    left -= amount
  }
  const movers = femalesOfMovers(setting).map((_, m) => {
    let best = (m + 1) * sites
    for (let column = best; column < (m + 2) * sites; column += 1) if (worth[column]! > worth[best]!) best = column
    return { column: best, amount: 1 }
  })
  return [...parts, ...movers]
}
