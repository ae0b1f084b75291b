import type { Plan } from '#geo/plan/plan'
import type { PointCloud, PointCoverage, Report } from '#geo/report/report'
import type { Comparison } from '#geo/seasons/compare'
import type { Care, Projection } from '#geo/seasons/project'

/** What the page Years shows besides its overview and its forms: one year beside another, or the seasons to come. */
export type YearLook = 'compare' | 'ahead'

/** What the map shows while two seasons are compared: the season itself, the change, or a second map with the other season. */
export type ChangeMap = 'season' | 'change' | 'beside'

export type YearsState = {
  readonly look: YearLook | null
  /** The season that the one looked at is held against; null, or one that is gone = the season before it. */
  readonly against: number | null
  readonly map: ChangeMap
  /** Whether the map of change writes each planting's points beside its name. */
  readonly hasNumbers: boolean
  readonly ahead: Ahead
}

/** The question after the seasons to come; null = as the plan says, or the default. */
export type Ahead = {
  readonly care: Care
  readonly seasons: number
  readonly shareKept: number | null
  readonly target: number | null
}

export const noYears: YearsState = {
  look: null,
  against: null,
  map: 'season',
  hasNumbers: false,
  ahead: { care: 'takenIn', seasons: 5, shareKept: null, target: null },
}

/** Two seasons beside each other, and what was asked. */
export type Compared = {
  readonly plan: Plan
  readonly from: number
  readonly to: number
  readonly comparison: Comparison
}

/** The season that is held against, point by point, for the map. */
export type OtherSeason = {
  readonly plan: Plan
  readonly year: number
  readonly cloud: PointCloud
  readonly evaluation: { readonly report: Report; readonly coverage: PointCoverage }
}

/** The seasons to come both ways, and what was asked. */
export type Projected = {
  readonly plan: Plan
  readonly from: number
  readonly ahead: Ahead
  readonly ways: Readonly<Record<Care, Projection>>
}
