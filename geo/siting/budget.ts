import { nestingShare } from '../stocking/season-ground'
import { assumedPrices, costOf, mostCocoons, mostTubes, stockOf, usualFemales } from '../stocking/stock'
import { answerOf, type StockedPick } from './answer'
import { type Part, upperBound } from './bound'
import { worthOf } from './objective'
import { columnOf, placeStations } from './place-stations'
import type { Question } from './question'
import { matrixOf, type Setting } from './setting'
import { sharedOut } from './share-out'
import type { Caution, Suggestion } from './suggestion'

/** Sets of cocoons and stations that a budget buys. */
type Lot = { readonly stations: number; readonly sets: number }

type Laid = Lot & { readonly picks: readonly StockedPick[]; readonly value: number }

/** The most coverage for so much money, or from so many cocoons. Stations that were to move stay where they are. */
export function withinBudget(
  setting: Setting,
  question: Extract<Question, { readonly kind: 'money' | 'cocoons' }>,
): Suggestion {
  const means = meansOf(setting, question)
  let best: Laid | null = null
  // From the usual stock of a station outwards: more and smaller stations, then fewer and larger ones.
  for (const step of [1, -1]) {
    for (let stations = means.usual + (step < 0 ? -1 : 0); stations >= 1; stations += step) {
      const sets = means.setsFor(stations)
      if (setting.options.shouldStop?.() === true || sets < stations) break
      const laid = layOut(setting, { stations, sets }, { most: means.most, isRefined: false })
      if (best !== null && laid.value <= best.value * (1 + 1e-9)) break
      best = laid
      if (means.isFixed) break
    }
    if (means.isFixed) break
  }
  if (best === null) return answerOf(setting, [], { bound: nothingMore(setting), isProven: true, method: 'lagrangian' })
  const refined = layOut(setting, best, { most: means.most, isRefined: true })
  const found = refined.value > best.value ? refined : best
  const bound = boundOf(setting, found, means.pick)
  const cautions: Caution[] =
    found.picks.length < found.stations
      ? [{ kind: 'few-places', asked: found.stations, placed: found.picks.length }]
      : []
  const isProven = bound <= found.value * (1 + 1e-7)
  return answerOf(setting, found.picks, { bound, isProven, method: 'lagrangian', cautions })
}

/** What the budget buys, and the relaxation that bounds any way of spending it. */
function meansOf(setting: Setting, question: Extract<Question, { readonly kind: 'money' | 'cocoons' }>) {
  const { ground, options, placings } = setting
  const { settings } = ground
  const bee = settings.bees[placings[0]!.kind.bee]
  const { setOf = 1, prices = assumedPrices } = options
  const share = nestingShare(bee)
  const most = Math.max(1, mostCocoons(options.tubes ?? mostTubes, bee, settings.site, setOf) / setOf)
  const usualSets = Math.max(1, Math.round(usualFemales / Math.max(share, 1e-12) / setOf))
  const full = most * setOf * share
  if (question.kind === 'cocoons') {
    const sets = Math.floor(question.cocoons / setOf + 1e-9)
    const usual = Math.max(1, question.stations ?? Math.round(sets / usualSets))
    const total = sets * setOf * share
    const pick = (worth: Float64Array) => filled(worth, full, { most: usual, females: total })
    return { most, usual, isFixed: true, setsFor: () => sets, pick }
  }
  const costOfSets = (stations: number, sets: number) => {
    // The dearest way of sharing sets out rounds males and tubes up at every station.
    const each = costOf(stockOf(Math.ceil(sets / stations) * setOf, bee, settings.site), prices)
    const fewer = costOf(stockOf(Math.floor(sets / stations) * setOf, bee, settings.site), prices)
    const larger = sets % stations
    const rounding = stations * (prices.maleCocoon + prices.tube)
    return stations * prices.station + larger * each + (stations - larger) * fewer + rounding
  }
  const setsFor = (stations: number) => {
    let low = 0
    let high = most * stations
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if (costOfSets(stations, middle) <= question.amount) low = middle
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
    // A full station costs least for each female: as many full ones as the money buys, and a part of one more.
    const stations = question.amount / Math.max(prices.station + full * perFemale, 1e-9)
    return filled(worth, full, { most: Number.POSITIVE_INFINITY, females: stations * full })
  }
  return { most, usual: Math.min(usual, setting.sites.length), isFixed: false, setsFor, pick }
}

/** Females shared among the columns worth most, none above `full`. */
function filled(worth: Float64Array, full: number, { most, females }: { most: number; females: number }): Part[] {
  const order = Array.from(worth.keys()).sort((a, b) => worth[b]! - worth[a]! || a - b)
  const parts: Part[] = []
  let left = females
  for (const column of order) {
    if (parts.length >= most || left <= 0 || worth[column]! <= 0) break
    const amount = Math.min(full, left)
    parts.push({ column, amount })
    left -= amount
  }
  return parts
}

function layOut(setting: Setting, lot: Lot, { most, isRefined }: { most: number; isRefined: boolean }): Laid {
  const { setOf = 1 } = setting.options
  const share = nestingShare(setting.ground.settings.bees[setting.placings[0]!.kind.bee])
  const only = (value: number) => setting.placings.map((_, p) => (p === 0 ? value : 0))
  const equal = (lot.sets / lot.stations) * setOf * share
  const { picks } = placeStations(setting, only(equal), only(lot.stations), {
    isRefined,
    ...(!isRefined && { patience: 0 }),
  })
  const problem = matrixOf(setting, only(setOf * share), only(lot.stations))
  const columns = picks.map(pick => columnOf(setting, pick))
  const sets = sharedOut(problem, columns, { sets: lot.sets, most })
  const stocked = picks.map((pick, i) => ({ ...pick, cocoons: sets[i]! * setOf })).filter(({ cocoons }) => cocoons > 0)
  const all = columns.flatMap((column, i) => Array.from({ length: sets[i]! }, () => column))
  return { ...lot, picks: stocked, value: worthOf(problem, all) }
}

function boundOf(setting: Setting, { value, stations }: Laid, pick: (worth: Float64Array) => readonly Part[]): number {
  const only = (count: number) => setting.placings.map((_, p) => (p === 0 ? count : 0))
  const { shouldStop } = setting.options
  const problem = matrixOf(setting, only(1), only(stations))
  return Math.max(value, upperBound(problem, { best: value, pick, ...(shouldStop && { shouldStop }) }))
}

/** What is served already, where the budget buys nothing. */
function nothingMore({ cells, weight }: Setting): number {
  return cells.base.reduce((sum, served, i) => sum + weight[i]! * served, 0)
}
