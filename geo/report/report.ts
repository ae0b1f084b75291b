import type { BeeId } from '../data/own'
import type { Problem } from '../problem'
import type { IsoDate } from '../time/day'

/** What holds a planting back; `none` where nothing would help by more than 0.02 of coverage. */
export type Limit = 'distance' | 'timing' | 'numbers' | 'competition' | 'unserved' | 'none'

/** Females are blue orchard bee females that nest, unless said otherwise; shares are 0 to 1; null = cannot be said. */
export type PlantingResult = {
  readonly id: string
  readonly name: string
  readonly crop: string
  readonly points: number
  /** Square metres. */
  readonly area: number
  readonly wanted: number
  /** null without bloom dates: what cannot be computed is not zero. */
  readonly supplied: number | null
  readonly coverage: number | null
  readonly reach: number | null
  readonly timingMatch: number | null
  readonly shortBy: number | null
  readonly limit: Limit | null
  readonly gains: {
    readonly distance: number | null
    readonly timing: number | null
    readonly numbers: number | null
    readonly competition: number | null
  }
}

/** `females` nest, in the station's own species; cocoons are the whole numbers that the season's releases ask for. */
export type StationResult = {
  readonly id: string
  readonly name: string
  readonly bee: BeeId
  readonly females: number
  readonly femaleCocoons: number
  readonly maleCocoons: number
  readonly tubesWanted: number
  /** null where the plan does not say how many tubes there are. */
  readonly tubes: number | null
}

export type OrchardResult = {
  readonly wanted: number
  /** Over the plantings whose bloom is known; null where none is. */
  readonly supplied: number | null
  readonly coverage: number | null
  readonly reach: number | null
  readonly shortBy: number | null
  /** null where nothing blooms. */
  readonly busiestDay: { readonly date: IsoDate; readonly wanted: number } | null
}

/** The coverage result of one season, as the command line prints it and the worker answers it. */
export type Report = {
  readonly plan: string
  readonly year: number
  readonly orchard: OrchardResult
  readonly plantings: readonly PlantingResult[]
  readonly stations: readonly StationResult[]
  readonly problems: readonly Problem[]
}

/** Lowest and highest value that a figure takes over the ranges of the parameters. */
export type Range = { readonly low: number; readonly high: number }

/** How far one parameter, taken to its low and high end, moves the orchard's coverage. */
export type Influence = { readonly parameter: string; readonly low: number; readonly high: number }

/** Ranges of one line's figures; null where the figure itself is null. */
export type LineRanges = {
  readonly wanted: Range
  readonly supplied: Range | null
  readonly coverage: Range | null
  readonly reach: Range | null
  readonly shortBy: Range | null
}

/** Ranges of a report's figures. */
export type ReportRanges = {
  readonly orchard: LineRanges
  readonly plantings: Readonly<Record<string, LineRanges & { readonly timingMatch: Range | null }>>
  readonly stations: Readonly<Record<string, { readonly females: Range; readonly tubesWanted: Range }>>
  /** Strongest first. */
  readonly influences: readonly Influence[]
}

/** Demand points for drawing, in the order of the plantings' own points: typed arrays, no objects per plant. */
export type PointCloud = {
  /** lng, lat, lng, lat, … in degrees. */
  readonly lngLat: Float64Array
  /** Crown or cell diameter in metres, per planting. */
  readonly plantings: readonly {
    readonly id: string
    readonly start: number
    readonly end: number
    readonly size: number
    readonly isBed: boolean
  }[]
}

/** Coverage 0 to 1 of every point of the cloud, same order; 1 where nothing is wanted, -1 where it cannot be said. */
export type PointCoverage = Float32Array
