import type { BeeId } from '../data/own'
import type { BeeSettings, SiteSettings } from '../data/settings'
import { cocoonsFor, wholeUp } from '../stocking/cocoons'
import { tubesFor } from '../stocking/tubes'
import type { CandidateOptions } from './candidates'
import { nestingShare, type ReleaseShare } from './season-ground'
import type { Solver } from './solver'

/** What the grower asks. Cocoons are female cocoons; males are bought beside them. */
export type Question =
  /** So many more stations, each with `cocoons` (without: enough for 50 nesting females). */
  | { readonly kind: 'stations'; readonly count: number; readonly cocoons?: number }
  /** At least this share of what every planting wants, at the least cost. */
  | { readonly kind: 'target'; readonly coverage: number }
  /** The most coverage for so much money. */
  | { readonly kind: 'money'; readonly amount: number }
  /** The most coverage from so many cocoons, on `stations` (without: about 50 nesting females each). */
  | { readonly kind: 'cocoons'; readonly cocoons: number; readonly stations?: number }

/** The grower's own prices, in any currency. */
export type Prices = {
  readonly station: number
  readonly femaleCocoon: number
  readonly maleCocoon: number
  readonly tube: number
}

/** Assumed, for the proportion between a station and what is in it; the grower's own go before. */
export const assumedPrices: Prices = { station: 30, femaleCocoon: 1, maleCocoon: 0.5, tube: 0.25 }

export type Role = 'keep' | 'move' | 'drop'

export type SuggestOptions = {
  readonly question: Question
  /** What becomes of existing stations; those not named are kept. */
  readonly roles?: Readonly<Record<string, Role>>
  /** How much one female at a planting counts, by id; 1 unless told. */
  readonly weights?: Readonly<Record<string, number>>
  readonly prices?: Prices
  /** Female cocoons are sold in sets of so many. */
  readonly setOf?: number
  /** Most tubes that a new station holds. */
  readonly tubes?: number
  readonly bee?: BeeId
  /** Release dates of new stations; without, those of the season in their proportion, or the best single day. */
  readonly releases?: readonly ReleaseShare[]
  readonly places?: CandidateOptions
  readonly seed?: number
  /** A general solver asked to prove the answer, and the seconds it has. */
  readonly prove?: { readonly solver: Solver; readonly timeLimit: number }
  readonly onProgress?: (progress: Progress) => void
  readonly shouldStop?: () => boolean
}

/** How far it is: coverage of the best answer so far and what none can exceed, where known. */
export type Progress = {
  readonly stage: 'places' | 'search' | 'bound' | 'proof' | 'report'
  readonly coverage: number | null
  readonly bound: number | null
}

/** Nesting females at a station unless the grower says otherwise: 30 to 70 a shelter (common practice, no source). */
export const usualFemales = 50
/** More tubes than this at one place bring less than a second place does (Koh et al.: about 200 tubes a site). */
export const mostTubes = 200

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
export function costOf({ femaleCocoons, maleCocoons, tubes }: Stock, prices: Prices): number {
  return femaleCocoons * prices.femaleCocoon + maleCocoons * prices.maleCocoon + tubes * prices.tube
}
