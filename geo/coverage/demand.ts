import { bloomCurve, bloomOf, bloomWeight } from '../bloom/bloom'
import type { CropSettings, Settings } from '../data/settings'
import {
  type Bed,
  type Block,
  type Bloom,
  type Forage,
  isForage,
  isPlanting,
  isPresent,
  nameOf,
  type Plan,
  type Planting,
  seasonOf,
} from '../plan/plan'
import type { Problem } from '../problem'
import type { LngLat, Plane } from '../space/plane'
import { blockPoints, cellPoints, cellSide, type Points, rowPoints } from '../space/sample'
import type { BloomPair, Group } from './coverage'

/** Ground that is counted: a planting or a forage area, cut into demand points. */
export type Ground = {
  readonly id: string
  readonly name: string
  readonly crop: string
  readonly points: Points
  /** Ground that one point stands for, m2. */
  readonly area: number
  /** Diameter to draw a point with, m. */
  readonly size: number
  readonly isCell: boolean
  readonly group: Group
}

export type Demand = {
  /** Plantings in the order of the plan, then forage areas. */
  readonly grounds: readonly Ground[]
  readonly blooms: readonly BloomPair[]
  readonly problems: readonly Problem[]
}

/** What stands on the ground in `year`, what it wants and carries, and when it blooms. */
export function demandOf(plan: Plan, year: number, settings: Settings, plane: Plane): Demand {
  const season = seasonOf(plan, year)
  const problems: Problem[] = []
  const blooms = bloomList(year)
  const grounds: Ground[] = []
  for (const feature of plan.features) {
    if (!isPlanting(feature) || !isPresent(feature, year)) continue
    const crop = settings.crops[feature.properties.crop]
    // An unknown crop is an error that the plan's check has told before it comes to this.
    if (crop === undefined) throw new RangeError(`no figures for the crop ${feature.properties.crop}`)
    const sampled = samplePlanting(feature, crop, plane)
    const name = nameOf(feature)
    if (sampled.points.length === 0) {
      problems.push({ code: 'no-plants', severity: 'warning', at: feature.id, values: { name } })
    }
    const bloom = bloomOf(season?.bloom, feature.id, feature.properties.crop)
    if (bloom === undefined) {
      problems.push({ code: 'no-bloom', severity: 'warning', at: feature.id, values: { name, year } })
    }
    const vigour = feature.properties.vigour ?? 1
    const group = {
      wanted: wantedPerPoint(feature, crop, sampled.area) * vigour,
      blossom: sampled.area * crop.blossomDensity * crop.appeal * vigour,
      bloom: bloom === undefined ? null : blooms.indexOf(bloom),
      isForage: false,
    }
    grounds.push({ id: feature.id, name, crop: feature.properties.crop, ...sampled, group })
  }
  for (const feature of plan.features) {
    if (!isForage(feature) || !isPresent(feature, year)) continue
    const bloom = bloomOf(season?.bloom, feature.id, undefined)
    const name = nameOf(feature)
    if (bloom === undefined) {
      problems.push({ code: 'no-forage-bloom', severity: 'warning', at: feature.id, values: { name, year } })
      continue
    }
    const sampled = sampleCells(feature, plane)
    const { blossomDensity = 0, appeal = 1 } = feature.properties
    const group = {
      wanted: 0,
      blossom: sampled.area * blossomDensity * appeal,
      bloom: blooms.indexOf(bloom),
      isForage: true,
    }
    grounds.push({ id: feature.id, name, crop: '', ...sampled, group })
  }
  return { grounds, blooms: blooms.pairs, problems }
}

/** Equal blooms share one curve, however many plantings follow them. */
function bloomList(year: number): { readonly pairs: BloomPair[]; indexOf(bloom: Bloom): number } {
  const known = new Map<string, number>()
  const pairs: BloomPair[] = []
  return {
    pairs,
    indexOf(bloom) {
      const key = `${bloom.first} ${bloom.full} ${bloom.end}`
      const found = known.get(key)
      if (found !== undefined) return found
      const open = bloomCurve(bloom, year)
      pairs.push({ open, weight: bloomWeight(open) })
      known.set(key, pairs.length - 1)
      return pairs.length - 1
    },
  }
}

/** Females wanted at a mature point, R without vigour. */
function wantedPerPoint(planting: Planting, crop: CropSettings, area: number): number {
  if (planting.properties.kind !== 'bed' && planting.properties.femalesPerPlant !== undefined) {
    return planting.properties.femalesPerPlant
  }
  return (area * crop.stockingRate) / 10000
}

type Sampled = Pick<Ground, 'points' | 'area' | 'size' | 'isCell'>

/** Demand points of a planting, in metres, and the ground that each stands for. */
export function samplePlanting(planting: Planting, crop: CropSettings, plane: Plane): Sampled {
  const { properties, geometry } = planting
  switch (properties.kind) {
    case 'row': {
      const { spacing = crop.spacing, rowSpacing = crop.rowSpacing, count } = properties
      const line = (geometry.coordinates as readonly LngLat[]).map(plane.toMetres)
      return plants(rowPoints(line, { spacing, count }), spacing, rowSpacing)
    }
    case 'block': {
      const { spacing = crop.spacing, rowSpacing = crop.rowSpacing, bearing = 0 } = properties
      return plants(
        blockPoints(ringsOf(planting as Block, plane), { spacing, rowSpacing, bearing }),
        spacing,
        rowSpacing,
      )
    }
    case 'plant': {
      const positions = (geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates) as readonly LngLat[]
      const points = Float64Array.from(positions.map(plane.toMetres).flatMap(({ x, y }) => [x, y]))
      const { spread } = properties
      if (spread === undefined) return plants(points, crop.spacing, crop.rowSpacing)
      return { points, area: Math.PI * (spread / 2) ** 2, size: spread, isCell: false }
    }
    case 'bed':
      return sampleCells(planting as Bed, plane)
    default:
      return properties satisfies never
  }
}

function plants(points: Points, spacing: number, rowSpacing: number): Sampled {
  // Drawn a little smaller than the tighter spacing, so that neighbours stay apart to the eye.
  return { points, area: spacing * rowSpacing, size: 0.8 * Math.min(spacing, rowSpacing), isCell: false }
}

function sampleCells(feature: Bed | Forage, plane: Plane): Sampled {
  const { points, cellArea } = cellPoints(ringsOf(feature, plane))
  return { points, area: cellArea, size: cellSide, isCell: true }
}

function ringsOf(feature: Block | Bed | Forage, plane: Plane) {
  return feature.geometry.coordinates.map(ring => ring.map(plane.toMetres))
}
