import type { BeeId } from '../data/own'
import type { IsoDate } from '../time/day'

/** `orchard`, or the id of one station. */
export type AdviceScope = string

export type AdviceOptions = {
  /** Whose batches are asked about: all stations in use, or one; the others then stay as the plan has them. */
  readonly scope: AdviceScope
  /** At most so many batches; fewer where more would cover nothing more. */
  readonly batches: 1 | 2 | 3
}

/** A share of a station's own cocoons and the day they are set out. Shares of a station add up to 1. */
export type DatedShare = { readonly date: IsoDate; readonly share: number }

export type AdvisedBatch = DatedShare & {
  /** What gives the first nesting females most of their blossom: a planting or a forage area; null = nothing drawn. */
  readonly leansOn: { readonly id: string; readonly name: string; readonly isForage: boolean } | null
}

/** Dates for all the stations in question that hold one bee. */
export type BeeAdvice = {
  readonly bee: BeeId
  readonly stations: readonly string[]
  readonly batches: readonly AdvisedBatch[]
  /** The first planting to bloom in these stations' range, and the day its bloom begins. */
  readonly firstCrop: { readonly id: string; readonly name: string; readonly date: IsoDate } | null
}

/** Release dates found by working out the coverage of many. */
export type Advice = {
  readonly year: number
  readonly scope: AdviceScope
  readonly bees: readonly BeeAdvice[]
  readonly stations: readonly { readonly id: string; readonly batches: readonly DatedShare[] }[]
  /**
   * Coverage of the plantings in question: the whole orchard, or those in range of the one station. With these dates,
   * with all set out at once when the first crop's bloom begins, and with the plan's own dates. null where no cocoons
   * are set out yet: the date is then the best for the first bees.
   */
  readonly coverage: number | null
  readonly atFirstCrop: number | null
  readonly own: number | null
  /** Nothing better was found than the plan's own dates: these are they. */
  readonly isOwn: boolean
  /** Some of the plan's own dates come when no blossom near the station feeds the first females: they are no measure. */
  readonly isOwnUnfed: boolean
}
