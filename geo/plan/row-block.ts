import { type LngLat, type Metres, type Plane, planeOf } from '../space/plane'
import { bearing, offset } from '../space/shape'
import type { Feature, PolygonGeometry } from './plan'

/** A block as it is planted: a first row, and more rows beside it. */
export type RowLayout = {
  /** Where the first plant of the first row stands; the plan's plane. */
  readonly start: Metres
  /** Along the rows, degrees clockwise from north of the plane. */
  readonly bearing: number
  /** Plants in a row, and rows. */
  readonly plants: number
  readonly rows: number
  /** Metres in the row, metres between rows. */
  readonly spacing: number
  readonly rowSpacing: number
  /** On which side of the first row the others stand, seen along it. */
  readonly side: 'left' | 'right'
}

/**
 * The outline that samples to exactly these rows and plants: half a row spacing beyond the first and last row, half a
 * spacing beyond the first and last plant. Not closed; it runs along the first row first.
 */
export function outlineOfRows(layout: RowLayout): readonly Metres[] {
  const { spacing, rowSpacing } = layout
  const across = layout.bearing + (layout.side === 'right' ? 90 : -90)
  const corner = offset(offset(layout.start, layout.bearing, -spacing / 2), across, -rowSpacing / 2)
  const far = offset(corner, layout.bearing, layout.plants * spacing)
  const width = layout.rows * rowSpacing
  return [corner, far, offset(far, across, width), offset(corner, across, width)]
}

/** Digits of a bearing: a ten-thousandth of a degree is 0.2 mm in 100 m. */
const bearingSteps = 10_000

/**
 * The block's geometry, and its bearing in the plane that the plan has once the block is in it: adding things moves the
 * middle of a plan, and north there is not quite north here.
 */
export function rowBlock(
  layout: RowLayout,
  plane: Plane,
  features: readonly Feature[],
): { readonly geometry: PolygonGeometry; readonly bearing: number } {
  const corners: readonly LngLat[] = outlineOfRows(layout).map(at => plane.toLngLat(at))
  const ring = layout.side === 'right' ? corners.toReversed() : corners
  const geometry: PolygonGeometry = { type: 'Polygon', coordinates: [[...ring, ring[0]!]] }
  const { toMetres } = planeOf([...features, { geometry }])
  const along = bearing(toMetres(corners[0]!), toMetres(corners[1]!))
  return { geometry, bearing: (Math.round((along % 180) * bearingSteps) / bearingSteps) % 180 }
}
