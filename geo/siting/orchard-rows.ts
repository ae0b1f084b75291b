import type { CropSettings } from '../data/settings'
import { isPlanting, isPresent, type Planting } from '../plan/plan'
import type { Metres } from '../space/plane'
import { isInside, type Ring } from '../space/shape'
import type { SeasonGround } from '../stocking/season-ground'

/** A run of plants in one line, and the room to the next line. */
export type PlantRow = {
  readonly planting: string
  readonly plants: readonly Metres[]
  /** Metres between plants and between rows. */
  readonly spacing: number
  readonly rowSpacing: number
  /** Where the row begins, which way it runs (as north or east as it can) and how far; null for a single plant. */
  readonly way: { readonly from: Metres; readonly ux: number; readonly uy: number; readonly length: number } | null
}

/** A block's outline and the lines of its rows: how far each lies aside of the way they all run, ascending. */
type BlockRows = {
  readonly rings: readonly Ring[]
  readonly ux: number
  readonly uy: number
  readonly asides: Float64Array
}

/** Rows and outlines of what is planted, from which lanes and headlands follow. */
export type Planted = {
  readonly rows: readonly PlantRow[]
  /** Rows drawn one by one. */
  readonly single: readonly PlantRow[]
  readonly blocks: readonly BlockRows[]
  readonly beds: readonly (readonly Ring[])[]
  readonly plants: readonly Metres[]
}

export function plantedOn(ground: SeasonGround): Planted {
  const { plan, year, settings, plane, demand } = ground
  const byId = new Map(demand.grounds.map(each => [each.id, each]))
  const rows: PlantRow[] = []
  const single: PlantRow[] = []
  const blocks: BlockRows[] = []
  const beds: (readonly Ring[])[] = []
  const plants: Metres[] = []
  for (const feature of plan.features) {
    if (!isPlanting(feature) || !isPresent(feature, year)) continue
    const { points } = byId.get(feature.id)!
    const positions = Array.from({ length: points.length / 2 }, (_, i) => ({
      x: points[2 * i]!,
      y: points[2 * i + 1]!,
    }))
    const { geometry, properties } = feature
    if (properties.kind !== 'bed') for (const position of positions) plants.push(position)
    if (geometry.type === 'Polygon') {
      const rings = geometry.coordinates.map(ring => ring.map(plane.toMetres))
      if (properties.kind === 'bed') beds.push(rings)
      else {
        const own = rowsOf(feature, positions, settings.crops[properties.crop]!)
        rows.push(...own)
        blocks.push(blockRows(rings, own))
      }
    } else if (geometry.type === 'LineString') {
      const own = rowsOf(feature, positions, settings.crops[properties.crop]!)
      rows.push(...own)
      single.push(...own)
    }
  }
  return { rows, single, blocks, beds, plants }
}

/** Plants of a row or block line by line: in both, those of one line follow each other at most a spacing apart. */
function rowsOf({ id, properties }: Planting, positions: readonly Metres[], crop: CropSettings): PlantRow[] {
  if (properties.kind !== 'row' && properties.kind !== 'block') return []
  const { spacing = crop.spacing, rowSpacing = crop.rowSpacing } = properties
  if (properties.kind === 'row') {
    const [a, b] = positions
    const step = a === undefined || b === undefined ? spacing : Math.hypot(b.x - a.x, b.y - a.y)
    return positions.length === 0 ? [] : [rowOf(id, positions, step, rowSpacing)]
  }
  const rows: Metres[][] = []
  positions.forEach((position, i) => {
    const before = positions[i - 1]
    const isNext =
      before !== undefined && Math.hypot(position.x - before.x, position.y - before.y) <= spacing * (1 + 1e-6)
    if (isNext) rows.at(-1)!.push(position)
    else rows.push([position])
  })
  return rows.map(plants => rowOf(id, plants, spacing, rowSpacing))
}

/** Nearer to a row's line than this, a post stands in the row and not in the lane beside it, m. */
const inLine = 0.3

/**
 * Whether a place lies in a lane that tractors use: inside a block but not in one of its rows, or between two rows
 * that run side by side no farther apart than their spacing.
 */
export function isInLane({ single, blocks }: Planted, place: Metres): boolean {
  for (const { rings, ux, uy, asides } of blocks) {
    if (!isInside(rings, place)) continue
    const aside = ux * place.y - uy * place.x
    return !((asides[firstFrom(asides, aside - inLine)] ?? Number.POSITIVE_INFINITY) <= aside + inLine)
  }
  const sides = new Set<number>()
  for (const row of single) {
    const aside = asideOf(row, place)
    if (aside === null || Math.abs(aside) > row.rowSpacing * 1.1) continue
    if (Math.abs(aside) <= inLine) return false
    sides.add(Math.sign(aside))
  }
  return sides.size > 1
}

/** How far a place lies beside a row, left (+) or right (-) of its way; null where it lies past its ends. */
function asideOf({ way, spacing }: PlantRow, place: Metres): number | null {
  if (way === null) return null
  const { from, ux, uy, length } = way
  const along = (place.x - from.x) * ux + (place.y - from.y) * uy
  if (along < -spacing / 2 || along > length + spacing / 2) return null
  return ux * (place.y - from.y) - uy * (place.x - from.x)
}

function rowOf(planting: string, plants: readonly Metres[], spacing: number, rowSpacing: number): PlantRow {
  const first = plants[0]!
  const last = plants.at(-1)!
  const length = Math.hypot(last.x - first.x, last.y - first.y)
  const isForward = last.y - first.y > 1e-9 || (Math.abs(last.y - first.y) <= 1e-9 && last.x > first.x)
  const [from, to] = isForward ? [first, last] : [last, first]
  const way = length === 0 ? null : { from, ux: (to.x - from.x) / length, uy: (to.y - from.y) / length, length }
  return { planting, plants, spacing, rowSpacing, way }
}

function blockRows(rings: readonly Ring[], rows: readonly PlantRow[]): BlockRows {
  const { ux, uy } = rows.find(({ way }) => way !== null)?.way ?? { ux: 0, uy: 1 }
  const asides = Float64Array.from(rows, ({ plants }) => ux * plants[0]!.y - uy * plants[0]!.x).sort()
  return { rings, ux, uy, asides }
}

/** Index of the first of some ascending values that is at least `least`. */
function firstFrom(values: Float64Array, least: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (values[middle]! < least) low = middle + 1
    else high = middle
  }
  return low
}
