import type { BeeSettings, SiteSettings } from '../data/settings'
import { sitingDefaults } from '../data/siting-figures'
import type { Release } from '../plan/plan'
import { cocoonsFor, wholeUp } from './cocoons'
import { nestingShare, type ReleaseShare } from './season-ground'
import { tubesFor } from './tubes'

/** The grower's own prices, in any currency. */
export type Prices = {
  readonly station: number
  readonly femaleCocoon: number
  readonly maleCocoon: number
  readonly tube: number
}

/** Assumed, for the proportion between a station and what is in it; the grower's own go before. */
export const assumedPrices: Prices = {
  station: sitingDefaults.stationPrice,
  femaleCocoon: sitingDefaults.femaleCocoonPrice,
  maleCocoon: sitingDefaults.maleCocoonPrice,
  tube: sitingDefaults.tubePrice,
}

/** Nesting females at a station unless the grower says otherwise. */
export const usualFemales = sitingDefaults.usualFemales
/** More tubes than this at one place bring less than a second place does. */
export const mostTubes = sitingDefaults.mostTubes
/** Of a planting out of reach of a target, so much of the most that can be: the last of it would take bees without end. */
export const shareOfReach = sitingDefaults.shareOfReach

/** Whole things to buy for one station. */
export type Stock = {
  /** Nesting females that the whole cocoons come to. */
  readonly females: number
  readonly femaleCocoons: number
  readonly maleCocoons: number
  readonly tubes: number
}

/** Stock from whole female cocoons. */
export function stockOf(femaleCocoons: number, bee: BeeSettings, site: SiteSettings): Stock {
  const females = femaleCocoons * nestingShare(bee)
  const maleCocoons = wholeUp(femaleCocoons * bee.malesPerFemale)
  return { females, femaleCocoons, maleCocoons, tubes: tubesFor(females, bee.tubesPerFemale, site.spareTubes) }
}

/** Female cocoons for at least so many nesting females, in whole sets. */
export function cocoonsInSets(females: number, bee: BeeSettings, setOf: number): number {
  return setOf * wholeUp(cocoonsFor(females, bee).female / setOf)
}

/** Most female cocoons, in whole sets, whose females so many tubes are enough for. */
export function mostCocoons(tubes: number, bee: BeeSettings, site: SiteSettings, setOf: number): number {
  const females = tubes / (bee.tubesPerFemale * (1 + site.spareTubes))
  const share = nestingShare(bee)
  return share > 0 ? setOf * Math.floor(females / share / setOf + 1e-9) : 0
}

/** What stock costs, without the station itself. */
export function costOf({ femaleCocoons, maleCocoons, tubes }: Omit<Stock, 'females'>, prices: Prices): number {
  return femaleCocoons * prices.femaleCocoon + maleCocoons * prices.maleCocoon + tubes * prices.tube
}

/** Whole cocoons of each sex shared among release dates: the largest remainders get what is left over. */
export function releasesOf(stock: Stock, shares: readonly ReleaseShare[]): Release[] {
  const females = apportioned(stock.femaleCocoons, shares)
  const males = apportioned(stock.maleCocoons, shares)
  return shares
    .map(({ date }, i) => ({ date, females: females[i]!, males: males[i]! }))
    .filter(release => release.females > 0 || release.males > 0)
}

function apportioned(total: number, shares: readonly ReleaseShare[]): number[] {
  const exact = shares.map(({ share }) => total * share)
  const whole = exact.map(value => Math.floor(value + 1e-9))
  const order = Array.from(exact.keys()).sort((a, b) => exact[b]! - whole[b]! - (exact[a]! - whole[a]!) || a - b)
  const rest = total - whole.reduce((sum, value) => sum + value, 0)
  for (const i of order.slice(0, rest)) whole[i]! += 1
  return whole
}
