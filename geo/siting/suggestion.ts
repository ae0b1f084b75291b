import type { BeeId } from '../data/own'
import type { Release } from '../plan/plan'
import type { LngLat } from '../space/plane'
import type { Stock } from '../stocking/stock'
import type { PlaceNotes } from './candidates'
import type { PlaceSource } from './places'

/** A station to add, or one that stands to be moved. */
export type SuggestedStation = Stock & {
  readonly id: string
  readonly at: LngLat
  /** A station to be bought; false: it stands already, and moves here unless it is `reused`. */
  readonly new: boolean
  /** It stands here unused and is taken into use. */
  readonly reused: boolean
  /** Its cocoons and tubes are to be bought; false: it brings those it has. */
  readonly bought: boolean
  readonly bee: BeeId
  /** Female cocoons with which these females nest nine times in ten: those told are enough every other time. */
  readonly sure: number
  /** Releases in whole cocoons. */
  readonly releases: readonly Release[]
  /** A sentence; what it is made of stands beside it. */
  readonly why: string
  readonly source: PlaceSource
  readonly notes: PlaceNotes
  /** Females served that would be lost without this station, by planting, most first; blue orchard bee females. */
  readonly gains: readonly { readonly id: string; readonly name: string; readonly females: number }[]
}

/** How a bound was come by: relaxation always, a solver's proof on demand. */
export type BoundMethod = 'lagrangian' | 'solver'

/** What is worth knowing beside the answer, worded by whoever shows it. */
export type Caution =
  /** Fewer places than stations asked for: spacing and limits leave no more room. */
  | { readonly kind: 'few-places'; readonly asked: number; readonly placed: number }
  /** More tubes at one place than about 200 do no more good than a second place would. */
  | { readonly kind: 'large-stations'; readonly tubes: number; readonly most: number }
  /** More females than the plantings want at once: the blossom will not feed them all. */
  | { readonly kind: 'more-than-wanted'; readonly females: number; readonly wanted: number }
  /** Stations that were to move and stay: they hold no bees to take along, or for a target another bee than the new ones. */
  | { readonly kind: 'not-moved'; readonly stations: readonly string[] }
  /** Plantings without bloom dates are left out of the question. */
  | { readonly kind: 'no-bloom'; readonly plantings: readonly string[] }
  /** No choice of places, this far apart and with so many tubes each, was found that reaches the target. */
  | { readonly kind: 'no-layout'; readonly coverage: number; readonly tubes: number }
  /** Plantings that stop a target, and the most that can be reached there. */
  | { readonly kind: 'out-of-reach'; readonly plantings: readonly { readonly id: string; readonly most: number }[] }

/**
 * What thinning places costs: as many stations with the same bees each were placed anew among about twice as many places,
 * and covered so much more (share of what is wanted).
 */
export type Thinning = { readonly places: number; readonly doubled: number; readonly loss: number }

/** Cocoons and tubes that a station has which moves and is stocked anew: they need not be bought. */
export type InHand = Omit<Stock, 'females'> & { readonly id: string }

/** The answer to a question of siting. Coverage is weighed as the grower weighs plantings. */
export type Suggestion = {
  readonly year: number
  readonly before: { readonly coverage: number | null }
  readonly after: { readonly coverage: number | null }
  /**
   * No layout on these places and with this stock covers more (for a target: costs less, see `cost`). `proven`: the
   * answer is the best there is.
   */
  readonly bound: {
    readonly coverage: number | null
    readonly proven: boolean
    readonly method: BoundMethod
    readonly cost?: number
  }
  readonly cost: number
  readonly stations: readonly SuggestedStation[]
  /** Stations that the grower gave up, and those to be moved that a target does without. */
  readonly dropped: readonly string[]
  /** Those of the dropped that the target does without. */
  readonly spared: readonly string[]
  /** What stations that are stocked anew, or spared, have; `cost` is without it. */
  readonly inHand: readonly InHand[]
  readonly plantings: readonly {
    readonly id: string
    readonly name: string
    readonly before: number | null
    readonly after: number | null
  }[]
  /** How many places were looked at, of which so many before finer ones round the best, and how far apart those lie, m; 0 for the grower's own. */
  readonly places: { readonly count: number; readonly thinned: number; readonly pitch: number }
  /** What looking at fewer places than there are costs; null where that was not measured. */
  readonly thinning: Thinning | null
  /** For a target: whether every planting reaches it. */
  readonly reached: boolean | null
  readonly cautions: readonly Caution[]
}
