import { samplePlanting } from '../coverage/demand'
import { cropName, type Settings, settingsFor } from '../data/settings'
import { checkPlan } from '../plan/check'
import { type Feature, isPlanting, isStation, type Plan, type Planting } from '../plan/plan'
import { hasErrors } from '../problem'
import { type LngLat, type Plane, planeOf } from '../space/plane'
import { lineLength, polygonArea } from '../space/shape'
import { csvText } from './csv-text'
import { wktText } from './wkt'

/** Tables that a plan can be written as. */
export const csvTables = ['plantings', 'stations', 'plants'] as const
export type CsvTable = (typeof csvTables)[number]

type Cell = string | number

/**
 * One table of a plan as CSV (RFC 4180), metric, positions in degrees (WGS84). What is not known is an empty cell; that
 * is also all that a plan with errors has to say of lengths, areas and plants along rows, since they cannot be trusted.
 */
export function planTable(plan: Plan, table: CsvTable): string {
  const isSound = !hasErrors(checkPlan(plan))
  const settings = isSound ? settingsFor(plan) : null
  const plane = planeOf(plan.features)
  switch (table) {
    case 'plantings':
      return csvText(plantingRows(plan, settings, plane))
    case 'stations':
      return csvText(stationRows(plan))
    case 'plants':
      return csvText(plantRows(plan, settings, plane))
    default:
      return table satisfies never
  }
}

const plantingColumns = [
  'spacing',
  'rowSpacing',
  'bearing',
  'vigour',
  'femalesPerPlant',
  'planted',
  'removed',
  'count',
  'spread',
] as const

function plantingRows(plan: Plan, settings: Settings | null, plane: Plane): readonly (readonly Cell[])[] {
  const head = [
    ...['id', 'kind', 'name', 'crop', 'crop name', 'cultivar', 'plants', 'length (m)', 'area (m2)'],
    ...['spacing (m)', 'row spacing (m)', 'bearing', 'vigour', 'females per plant', 'planted', 'removed'],
    ...['count', 'spread (m)', 'longitude', 'latitude', 'geometry (WKT)'],
  ]
  const rows = plan.features.filter(isPlanting).map((planting): readonly Cell[] => {
    const { geometry, properties } = planting
    const figures = properties as Readonly<Record<string, unknown>>
    const isMeasured = settings !== null
    const length =
      isMeasured && geometry.type === 'LineString' ? rounded(lineLength(geometry.coordinates.map(plane.toMetres))) : ''
    const rings =
      isMeasured && geometry.type === 'Polygon' ? geometry.coordinates.map(ring => ring.map(plane.toMetres)) : []
    return [
      ...named(plan, planting),
      properties.kind === 'bed' ? '' : (plantsOf(planting, settings, plane)?.length ?? ''),
      length,
      rings.length === 0 ? '' : rounded(polygonArea(rings)),
      ...plantingColumns.map(name => cellOf(figures[name])),
      ...degrees(middleOf(planting)),
      wktText(geometry),
    ]
  })
  return [head, ...rows]
}

const stationColumns = ['height', 'facing', 'overhang', 'support', 'since', 'until'] as const

/** Stations, with their use in the latest season. */
function stationRows(plan: Plan): readonly (readonly Cell[])[] {
  const season = plan.seasons.toSorted((a, b) => a.year - b.year).at(-1)
  const head = [
    ...['id', 'name', 'longitude', 'latitude', 'height (m)', 'facing', 'overhang (mm)', 'support', 'since', 'until'],
    ...['season', 'bee', 'tubes', 'female cocoons'],
  ]
  const rows = plan.features.filter(isStation).map((station): readonly Cell[] => {
    const figures = station.properties as Readonly<Record<string, unknown>>
    const use = season?.stations?.[station.id]
    const inUse =
      use === undefined
        ? ['', '', '', '']
        : [
            season?.year ?? '',
            use.bee ?? plan.bee,
            use.tubes ?? '',
            use.releases?.reduce((sum, { females }) => sum + females, 0) ?? '',
          ]
    return [
      station.id,
      station.properties.name ?? '',
      ...degrees(station.geometry.coordinates),
      ...stationColumns.map(name => cellOf(figures[name])),
      ...inUse,
    ]
  })
  return [head, ...rows]
}

/** Every plant of rows, blocks and single plants; beds hold no plants that could be told apart. */
function plantRows(plan: Plan, settings: Settings | null, plane: Plane): readonly (readonly Cell[])[] {
  const head = ['planting', 'kind', 'name', 'crop', 'crop name', 'cultivar', 'plant', 'longitude', 'latitude']
  const rows = plan.features
    .filter(isPlanting)
    .flatMap(planting =>
      planting.properties.kind === 'bed'
        ? []
        : (plantsOf(planting, settings, plane) ?? []).map((position, i): readonly Cell[] => [
            ...named(plan, planting),
            i + 1,
            ...degrees(position),
          ]),
    )
  return [head, ...rows]
}

function named(plan: Plan, { id, properties }: Planting): readonly Cell[] {
  const { kind, name = '', crop, cultivar = '' } = properties
  return [id, kind, name, crop, cropName(crop, plan.crops), cultivar]
}

/** Places of the plants of a planting; null where they cannot be laid out. */
function plantsOf(planting: Planting, settings: Settings | null, plane: Plane): readonly LngLat[] | null {
  if (planting.geometry.type === 'Point') return [planting.geometry.coordinates]
  if (planting.geometry.type === 'MultiPoint') return planting.geometry.coordinates
  const crop = settings?.crops[planting.properties.crop]
  if (crop === undefined) return null
  const { points } = samplePlanting(planting, crop, plane)
  return Array.from({ length: points.length / 2 }, (_, i) =>
    plane.toLngLat({ x: points[2 * i]!, y: points[2 * i + 1]! }),
  )
}

/** Middle of a thing's own box, in degrees. */
function middleOf(feature: Feature): LngLat {
  return planeOf([feature]).centre
}

/** Nine decimals, as a plan file keeps them. */
function degrees([lng, lat]: LngLat): readonly Cell[] {
  return [Number(lng.toFixed(9)), Number(lat.toFixed(9))]
}

function rounded(metres: number): number {
  return Number(metres.toFixed(2))
}

function cellOf(value: unknown): Cell {
  return typeof value === 'string' || typeof value === 'number' ? value : ''
}
