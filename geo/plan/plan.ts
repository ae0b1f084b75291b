import type { BeeId, BloomRegion, OwnCrop, OwnParameters } from '../data/own'
import type { LngLat } from '../space/plane'
import type { IsoDate } from '../time/day'

export type Units = 'metric' | 'us'

/** The stages of a bloom in their order: BBCH 61, 65, 69. */
export const bloomStages = ['first', 'full', 'end'] as const
export type BloomStage = (typeof bloomStages)[number]

/** First, full and end of bloom: BBCH 61, 65, 69. first < full < end. */
export type Bloom = Readonly<Record<BloomStage, IsoDate>> & {
  /** Stages that were really seen; the other dates are defaults, predictions or guesses. A text that is no stage is kept. */
  readonly observed?: readonly string[]
}

/** One batch of cocoons set out on one day. `females` and `males` count cocoons, not nesting bees. */
export type Release = {
  readonly date: IsoDate
  readonly females: number
  readonly males?: number
  readonly lot?: string
}

/** How a station is used in one season. */
export type StationSeason = {
  readonly bee?: BeeId
  readonly tubes?: number
  /** Bore and depth of a tube, mm. */
  readonly bore?: number
  readonly depth?: number
  readonly material?: string
  readonly releases?: readonly Release[]
}

/** date, minimum degC, maximum degC, rain mm, wind m/s; null where unknown. */
export type WeatherDay = readonly [
  date: IsoDate,
  minimum: number | null,
  maximum: number | null,
  rain: number | null,
  wind: number | null,
]

export type Visit = {
  readonly date: IsoDate
  readonly capped?: number | null
  readonly mudWet?: boolean | null
  /** What was broken or gone, in the grower's words. */
  readonly damage?: string
  readonly note?: string
}

/** What was found in one tube or in several; null or absent = not counted, which is not zero. */
export type NestCounts = {
  readonly cells?: number | null
  /** Healthy cocoons. */
  readonly females?: number | null
  readonly males?: number | null
  /** Cells lost, by cause. */
  readonly losses?: Readonly<Record<string, number | null>>
}

export type Opening = NestCounts & {
  readonly date: IsoDate
  readonly tubesOpened?: number | null
  /** Tube by tube, where they were counted so. */
  readonly tubes?: readonly NestCounts[]
}

export type StationRecord = {
  readonly visits?: readonly Visit[]
  /** The day its nests were taken in; absent = left outside, or not written down. */
  readonly takenIn?: IsoDate
  readonly opening?: Opening
}

/** Cocoons of one origin and season. `releases[].lot` names one by its id. */
export type Lot = {
  readonly id: string
  /** Where they come from, in the grower's words. */
  readonly origin?: string
  /** Cocoons of both sexes. */
  readonly count?: number | null
  readonly femaleShare?: number | null
  /** The station and season whose nests they were taken from. */
  readonly station?: string
  readonly season?: number
}

export const shareOutRules = ['equal', 'area', 'hours', 'other'] as const

/** A photograph, scan or sketch that lies under the map. */
export type Picture = {
  readonly id: string
  readonly name?: string
  /** Size of the image, pixels. */
  readonly width: number
  readonly height: number
  /** Top left, top right and bottom left corner of the image: with them its place is whole, and cannot contradict itself. */
  readonly corners: readonly [LngLat, LngLat, LngLat]
  /** 0 to 1; absent = 1. */
  readonly opacity?: number
  /** It is not to be moved by mistake. */
  readonly isLocked?: boolean
  readonly isHidden?: boolean
  /** A saved file holds the image; else it stays on the device, known by the picture's id. */
  readonly isInFile?: boolean
  /** The image as a data URL; only in files, and where a device keeps nothing. */
  readonly image?: string
}

/** Cocoons given away out of a season's harvest, and the rule they were divided by. */
export type ShareOut = {
  readonly rule: (typeof shareOutRules)[number]
  readonly shares: readonly {
    readonly to: string
    /** What the rule goes by: m² of fruit, or hours; absent where shares are equal. */
    readonly measure?: number | null
    readonly cocoons?: number | null
  }[]
}

/** Cold began for the cocoons set out in a season on `from`; degC. */
export type ColdStore = { readonly from: IsoDate; readonly temperature?: number }

/** A field check that the grower has looked at and put aside, and why. `code` and `at` are those of its problem. */
export type SetAside = { readonly code: string; readonly at: string; readonly reason: string }

export type Season = {
  readonly year: number
  /** Day on which apple stood in full bloom, or is expected to, here or nearby; of this year or of an earlier one. */
  readonly appleFullBloom?: IsoDate
  /** Bloom by crop id, or by planting or forage id. A planting's own bloom goes before its crop's. */
  readonly bloom?: Readonly<Record<string, Bloom>>
  /** Stations in use this season, by station id. */
  readonly stations?: Readonly<Record<string, StationSeason>>
  readonly weather?: { readonly days: readonly WeatherDay[] }
  readonly records?: Readonly<Record<string, StationRecord>>
  readonly fruitSet?: Readonly<Record<string, FruitSet>>
  readonly shareOut?: ShareOut
  readonly coldStore?: ColdStore
  readonly setAside?: readonly SetAside[]
}

/** Flowers counted on a planting, and the fruit that came of them; null or absent = not counted yet. */
export type FruitSet = { readonly flowers: number; readonly fruit?: number | null }

type Planted = { readonly planted?: number; readonly removed?: number }
type Named = { readonly name?: string }
type Grown = Named & Planted & { readonly crop: string; readonly cultivar?: string; readonly vigour?: number }

export type RowProperties = Grown & {
  readonly kind: 'row'
  readonly spacing?: number
  readonly rowSpacing?: number
  readonly count?: number
  readonly femalesPerPlant?: number
}
export type BlockProperties = Grown & {
  readonly kind: 'block'
  readonly spacing?: number
  readonly rowSpacing?: number
  readonly count?: number
  readonly femalesPerPlant?: number
  /** Degrees clockwise from true north along the rows. */
  readonly bearing?: number
}
export type PlantProperties = Grown & {
  readonly kind: 'plant'
  /** Crown diameter, m. */
  readonly spread?: number
  readonly femalesPerPlant?: number
}
export type BedProperties = Grown & { readonly kind: 'bed' }
export type StationProperties = Named & {
  readonly kind: 'station'
  /** Height above ground, m; facing, degrees from north; overhang of the roof, mm. */
  readonly height?: number
  readonly facing?: number
  readonly overhang?: number
  readonly support?: 'post' | 'wall' | 'fence' | 'branch'
  readonly since?: number
  readonly until?: number
}
export type ForageProperties = Named &
  Planted & {
    readonly kind: 'forage'
    /** Flowers per square metre; appeal 1 = average. */
    readonly blossomDensity?: number
    readonly appeal?: number
  }
export type CandidateProperties = Named & { readonly kind: 'candidate' }
export type MudProperties = Named & { readonly kind: 'mud' }
export type KeepoutProperties = Named & { readonly kind: 'keepout'; readonly reason?: string }
export type BoundaryProperties = Named & { readonly kind: 'boundary' }
export type WindbreakProperties = Named & { readonly kind: 'windbreak' }

export type PointGeometry = { readonly type: 'Point'; readonly coordinates: LngLat }
export type MultiPointGeometry = { readonly type: 'MultiPoint'; readonly coordinates: readonly LngLat[] }
export type LineGeometry = { readonly type: 'LineString'; readonly coordinates: readonly LngLat[] }
/** Outer ring first, then holes; every ring closed (first position repeated last). */
export type PolygonGeometry = { readonly type: 'Polygon'; readonly coordinates: readonly (readonly LngLat[])[] }
export type Geometry = PointGeometry | MultiPointGeometry | LineGeometry | PolygonGeometry

type FeatureOf<G extends Geometry, P> = {
  readonly type: 'Feature'
  readonly id: string
  readonly geometry: G
  readonly properties: P
}

export type Row = FeatureOf<LineGeometry, RowProperties>
export type Block = FeatureOf<PolygonGeometry, BlockProperties>
export type Plant = FeatureOf<PointGeometry | MultiPointGeometry, PlantProperties>
export type Bed = FeatureOf<PolygonGeometry, BedProperties>
export type Station = FeatureOf<PointGeometry, StationProperties>
export type Candidate = FeatureOf<PointGeometry, CandidateProperties>
export type Forage = FeatureOf<PolygonGeometry, ForageProperties>
export type Mud = FeatureOf<PointGeometry, MudProperties>
export type Keepout = FeatureOf<PolygonGeometry, KeepoutProperties>
export type Boundary = FeatureOf<PolygonGeometry, BoundaryProperties>
export type Windbreak = FeatureOf<LineGeometry, WindbreakProperties>

export type Planting = Row | Block | Plant | Bed
export type Feature = Planting | Station | Candidate | Forage | Mud | Keepout | Boundary | Windbreak
export type FeatureKind = Feature['properties']['kind']

/**
 * A plan in memory: the `plan` member of the file beside the features, both just as the file has them.
 * Members this version does not know stay where they were found and are written back.
 */
export type Plan = {
  readonly version: 1
  readonly name: string
  readonly notes: string
  readonly timeZone: string
  readonly units: Units
  readonly bee: BeeId
  readonly bloomRegion: BloomRegion
  readonly parameters: OwnParameters
  readonly crops: Readonly<Record<string, OwnCrop>>
  readonly lots?: readonly Lot[]
  /** What lies under the map, the undermost first. */
  readonly pictures?: readonly Picture[]
  /** Where map pictures of this ground can be had; asked for only on a device whose user chose so. */
  readonly tiles?: { readonly url: string }
  readonly seasons: readonly Season[]
  readonly features: readonly Feature[]
  /**
   * Unknown members beside `type`, `plan` and `features` at the top of the file. Under `plan` those of the plan member
   * itself, under `features` the features of kinds unknown here or without a place.
   */
  readonly besides: Readonly<Record<string, unknown>>
}

const plantingKinds: ReadonlySet<FeatureKind> = new Set(['row', 'block', 'plant', 'bed'])

export function isPlanting(feature: Feature): feature is Planting {
  return plantingKinds.has(feature.properties.kind)
}

export function isStation(feature: Feature): feature is Station {
  return feature.properties.kind === 'station'
}

export function isForage(feature: Feature): feature is Forage {
  return feature.properties.kind === 'forage'
}

/** Whether a planting or forage area stands in the ground in `year`: planted <= year < removed. */
export function isPresent(feature: Planting | Forage, year: number): boolean {
  const { planted, removed } = feature.properties
  return (planted === undefined || planted <= year) && (removed === undefined || year < removed)
}

export function seasonOf(plan: Plan, year: number): Season | undefined {
  return plan.seasons.find(season => season.year === year)
}

/** Whether a stage of a bloom was really seen. */
export function isObserved(bloom: Bloom, stage: BloomStage): boolean {
  return bloom.observed?.includes(stage) ?? false
}

/** The name a person gave, or else the id. */
export function nameOf(feature: Feature): string {
  return feature.properties.name || feature.id
}
