export const beeIds = ['osmia-lignaria', 'osmia-bicornis', 'osmia-cornuta', 'osmia-cornifrons'] as const
export type BeeId = (typeof beeIds)[number]

export const bloomRegions = ['maritime-northwest', 'continental', 'southern-england'] as const
export type BloomRegion = (typeof bloomRegions)[number]

/** A crop of the grower's own, or own figures for a built-in crop; what is missing comes from `basedOn`. */
export type OwnCrop = {
  readonly basedOn?: string
  readonly name?: string
  /** Females per hectare. */
  readonly stockingRate?: number
  /** Flowers per square metre of planting. */
  readonly blossomDensity?: number
  readonly appeal?: number
  /** Metres in the row, metres between rows. */
  readonly spacing?: number
  readonly rowSpacing?: number
}

/** The grower's own values: site parameters at the top, each species' under its id. */
export type OwnParameters = Readonly<Record<string, number | Readonly<Record<string, number>>>>
