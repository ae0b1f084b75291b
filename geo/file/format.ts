import { z } from 'zod'
import { beeIds, bloomRegions } from '../data/own'
import { type FeatureKind, shareOutRules } from '../plan/plan'

/**
 * The stored shape of a plan file, version 1. It says which members have which type and no more: whether a spacing is
 * sensible or a date exists is asked in geo/plan/check.ts. Members that are not named here are allowed at every level.
 */
export const currentVersion = 1

const text = z.string()
const number = z.number()
const date = z.string().describe('Calendar date, ISO 8601: YYYY-MM-DD')
const bee = z.enum(beeIds)

const bloom = z
  .looseObject({
    first: date,
    full: date,
    end: date,
    observed: z.array(text).exactOptional().describe('Stages that were really seen: first, full, end'),
  })
  .meta({ id: 'bloom', description: 'First, full and end of bloom: BBCH 61, 65, 69' })

const release = z.looseObject({
  date,
  females: number.describe('Female cocoons set out'),
  males: number.exactOptional().describe('Male cocoons set out'),
  lot: text.exactOptional(),
})

const stationSeason = z.looseObject({
  bee: bee.exactOptional(),
  tubes: number.exactOptional(),
  bore: number.exactOptional().describe('mm'),
  depth: number.exactOptional().describe('mm'),
  material: text.exactOptional(),
  releases: z.array(release).exactOptional(),
})

const figure = number.nullable()
const weatherDay = z
  .tuple([date, figure, figure, figure, figure])
  .describe('Date, minimum degC, maximum degC, rain mm, wind m/s; null where unknown')

const nestCounts = {
  cells: figure.exactOptional(),
  females: figure.exactOptional().describe('Healthy cocoons; null = not counted'),
  males: figure.exactOptional(),
  losses: z.record(text, figure).exactOptional().describe('Cells lost, by cause'),
}

const stationRecord = z.looseObject({
  visits: z
    .array(
      z.looseObject({
        date,
        capped: figure.exactOptional(),
        mudWet: z.boolean().nullable().exactOptional(),
        damage: text.exactOptional(),
        note: text.exactOptional(),
      }),
    )
    .exactOptional(),
  takenIn: date.exactOptional(),
  opening: z
    .looseObject({
      date,
      tubesOpened: figure.exactOptional(),
      ...nestCounts,
      tubes: z.array(z.looseObject(nestCounts)).exactOptional().describe('Tube by tube'),
    })
    .exactOptional(),
})

const season = z.looseObject({
  year: number,
  appleFullBloom: date
    .exactOptional()
    .describe('Full bloom of apple that estimates count from; of this year or of an earlier one'),
  bloom: z.record(text, bloom).exactOptional().describe('By crop id, or by planting or forage id'),
  stations: z.record(text, stationSeason).exactOptional().describe('Stations in use this season, by id'),
  weather: z.looseObject({ days: z.array(weatherDay) }).exactOptional(),
  records: z.record(text, stationRecord).exactOptional().describe('By station id'),
  fruitSet: z
    .record(text, z.looseObject({ flowers: number, fruit: figure.exactOptional() }))
    .exactOptional()
    .describe('By planting id'),
  coldStore: z
    .looseObject({ from: date, temperature: number.exactOptional().describe('degC') })
    .exactOptional()
    .describe('Since when, and how cold, the cocoons set out this season were kept'),
  setAside: z
    .array(z.looseObject({ code: text, at: text, reason: text }))
    .exactOptional()
    .describe('Field checks that the grower has put aside: code and place of the problem, and why'),
  shareOut: z
    .looseObject({
      rule: z.enum(shareOutRules),
      shares: z.array(z.looseObject({ to: text, measure: figure.exactOptional(), cocoons: figure.exactOptional() })),
    })
    .exactOptional()
    .describe('Cocoons given away, by rule'),
})

const lot = z.looseObject({
  id: text,
  origin: text.exactOptional(),
  count: figure.exactOptional().describe('Cocoons of both sexes'),
  femaleShare: figure.exactOptional().describe('0 to 1'),
  station: text.exactOptional(),
  season: number.exactOptional().describe('Year'),
})

const ownCrop = z.looseObject({
  basedOn: text.exactOptional(),
  name: text.exactOptional(),
  stockingRate: number.exactOptional().describe('Females per hectare'),
  blossomDensity: number.exactOptional().describe('Flowers per square metre of planting'),
  appeal: number.exactOptional().describe('1 = average'),
  spacing: number.exactOptional().describe('m'),
  rowSpacing: number.exactOptional().describe('m'),
})

const position = z
  .tuple([number, number], number)
  .meta({ id: 'position', description: 'Longitude, latitude in degrees (WGS84)' })

const picture = z
  .looseObject({
    id: z.string().min(1),
    name: text.exactOptional(),
    width: number.describe('Pixels'),
    height: number.describe('Pixels'),
    corners: z.tuple([position, position, position]).describe('Top left, top right, bottom left'),
    opacity: number.exactOptional().describe('0 to 1'),
    isLocked: z.boolean().exactOptional(),
    isHidden: z.boolean().exactOptional(),
    isInFile: z.boolean().exactOptional().describe('Saved files hold the image'),
    image: text.exactOptional().describe('Data URL of a JPEG, PNG or WebP'),
  })
  .meta({ id: 'picture', description: 'A photograph, scan or sketch under the map' })

/** The `plan` member. Only `version` must be there; readPlan fills in the rest. */
export const planMember = z.looseObject({
  version: z.literal(currentVersion),
  name: text.exactOptional(),
  notes: text.exactOptional(),
  timeZone: text.exactOptional().describe('IANA time zone'),
  units: z.enum(['metric', 'us']).exactOptional().describe('For showing only; the file is always metric'),
  bee: bee.exactOptional().describe('Species of every station that names none'),
  bloomRegion: z.enum(bloomRegions).exactOptional(),
  parameters: z.record(text, z.union([number, z.record(text, number)])).exactOptional(),
  crops: z.record(text, ownCrop).exactOptional(),
  lots: z.array(lot).exactOptional().describe('Cocoons of one origin and season'),
  seasons: z.array(season).exactOptional(),
  pictures: z.array(picture).exactOptional().describe('The undermost first'),
  tiles: z
    .looseObject({ url: text.describe('With {z}, {x} and {y}') })
    .exactOptional()
    .describe('Map pictures of this ground; never fetched unasked'),
})

const point = z.looseObject({ type: z.literal('Point'), coordinates: position }).meta({ id: 'point' })
const multiPoint = z
  .looseObject({ type: z.literal('MultiPoint'), coordinates: z.array(position) })
  .meta({ id: 'multiPoint' })
const line = z.looseObject({ type: z.literal('LineString'), coordinates: z.array(position) }).meta({ id: 'line' })
const polygon = z
  .looseObject({ type: z.literal('Polygon'), coordinates: z.array(z.array(position)) })
  .meta({ id: 'polygon' })

// Programs that keep features as table rows write null for every cell left empty: in properties, null is "not given".
const maybeText = text.nullish()
const maybeNumber = number.nullish()
const maybeYear = maybeNumber.describe('Year')
const named = { name: maybeText }
const planted = { planted: maybeYear, removed: maybeYear }
const grown = { ...named, crop: text, cultivar: maybeText, vigour: maybeNumber.describe('0 to 1'), ...planted }
const inRows = {
  spacing: maybeNumber.describe('m'),
  rowSpacing: maybeNumber.describe('m'),
  count: maybeNumber,
  femalesPerPlant: maybeNumber,
}

function featureOf<K extends FeatureKind, G extends z.ZodType, P extends z.ZodRawShape>(
  kind: K,
  geometry: G,
  properties: P,
) {
  return z
    .looseObject({
      type: z.literal('Feature'),
      id: z.string().min(1).describe('Unique, never used again'),
      geometry,
      properties: z.looseObject({ kind: z.literal(kind), ...properties }),
    })
    .meta({ id: kind })
}

/** Shape of a feature of each kind. */
export const featureShapes = {
  row: featureOf('row', line, { ...grown, ...inRows }),
  block: featureOf('block', polygon, {
    ...grown,
    ...inRows,
    bearing: maybeNumber.describe('Degrees clockwise from true north, along the rows'),
  }),
  plant: featureOf('plant', z.discriminatedUnion('type', [point, multiPoint]), {
    ...grown,
    spread: maybeNumber.describe('Crown diameter, m'),
    femalesPerPlant: maybeNumber,
  }),
  bed: featureOf('bed', polygon, grown),
  station: featureOf('station', point, {
    ...named,
    height: maybeNumber.describe('m above ground'),
    facing: maybeNumber.describe('Degrees clockwise from true north'),
    overhang: maybeNumber.describe('mm'),
    support: z.enum(['post', 'wall', 'fence', 'branch']).nullish(),
    since: maybeYear,
    until: maybeYear,
  }),
  candidate: featureOf('candidate', point, named),
  forage: featureOf('forage', polygon, {
    ...named,
    blossomDensity: maybeNumber.describe('Flowers per square metre'),
    appeal: maybeNumber.describe('1 = average'),
    ...planted,
  }),
  mud: featureOf('mud', point, named),
  keepout: featureOf('keepout', polygon, { ...named, reason: maybeText }),
  boundary: featureOf('boundary', polygon, named),
  windbreak: featureOf('windbreak', line, named),
} as const satisfies Record<FeatureKind, z.ZodType>

/** Geometry types that a feature of each kind may have. */
export const geometryTypes: Readonly<Record<FeatureKind, readonly string[]>> = {
  row: ['LineString'],
  block: ['Polygon'],
  plant: ['Point', 'MultiPoint'],
  bed: ['Polygon'],
  station: ['Point'],
  candidate: ['Point'],
  forage: ['Polygon'],
  mud: ['Point'],
  keepout: ['Polygon'],
  boundary: ['Polygon'],
  windbreak: ['LineString'],
}

/** Properties of a feature that this version knows, in the order in which they are written. */
export function propertyNames(kind: FeatureKind): readonly string[] {
  return Object.keys(featureShapes[kind].shape.properties.shape)
}

export function isFeatureKind(kind: unknown): kind is FeatureKind {
  return typeof kind === 'string' && Object.hasOwn(featureShapes, kind)
}
