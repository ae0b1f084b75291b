import type { BeeId } from '../data/own'
import type { ReleaseShare } from '../stocking/season-ground'
import type { Solver } from '../stocking/solver'
import type { Prices } from '../stocking/stock'
import type { CandidateOptions } from './candidates'
import type { Suggestion } from './suggestion'

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

/**
 * A station that moves needs no new station. It takes the bees it has along; for a target it is stocked anew, at the
 * price of its cocoons and tubes, or spared where the target does without it.
 */
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
  /** Release dates of new stations; without, those of the nearest stocked station, or the best single day. */
  readonly releases?: readonly ReleaseShare[]
  /** Dates of new places where none are given: those the season has, or those advised for it; of the nearest station. */
  readonly dates?: 'season' | 'advice'
  readonly places?: CandidateOptions
  readonly seed?: number
  /** A general solver asked to prove the answer, and the seconds it has. */
  readonly prove?: { readonly solver: Solver; readonly timeLimit: number }
  /** Told how far it is, now and then with the best answer so far, which is made only when it is asked for. */
  readonly onProgress?: (progress: Progress, best?: () => Suggestion) => void
  readonly shouldStop?: () => boolean
}

/**
 * How far it is: coverage of the best answer so far and what none can exceed, or, for a target, what it costs and what
 * none can cost less than; where known.
 */
export type Progress = {
  readonly stage: 'places' | 'search' | 'bound' | 'proof' | 'report'
  readonly coverage: number | null
  readonly bound: number | null
  readonly cost?: number | null
  readonly costBound?: number | null
}
