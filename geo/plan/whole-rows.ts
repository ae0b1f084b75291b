import { ownFiguresOf, tableCropOf } from '../data/settings'
import { cut } from '../space/lines'
import { type LngLat, type Plane, planeOf } from '../space/plane'
import { plantsInRow } from '../space/sample'
import { lineLength } from '../space/shape'
import type { Feature, Plan, Row } from './plan'

/** Both ends of a row are kept to 1e-9 degrees, 0.11 mm: together they shorten it by less than this, m. */
const grain = 0.0003
/** How far a row then reaches past its last plant, so that no later rounding takes it, m. */
const margin = 0.001

/** Metres between the plants of a row: its own, else its crop's; null where neither is known. */
function spacingIn(plan: Plan, { properties }: Row): number | null {
  const { spacing, crop } = properties
  const usual = () => ownFiguresOf(crop, plan.crops).spacing ?? tableCropOf(crop, plan.crops)?.figures.spacing.value
  return spacing ?? usual() ?? null
}

function isSpaced(feature: Feature): feature is Row {
  return feature.properties.kind === 'row' && feature.properties.count === undefined
}

/**
 * Rows of a whole number of spacings keep the plant at their end: one whose length is such a multiple but for the rounding
 * of positions is made a millimetre longer. All others, and whatever is no row, stay as they are.
 */
export function wholeRows(plan: Plan, features: readonly Feature[]): readonly Feature[] {
  if (!features.some(isSpaced)) return features
  const plane = planeOf([...plan.features, ...features])
  const whole = features.map(feature => (isSpaced(feature) ? wholeRow(plan, feature, plane) : feature))
  return whole.some((feature, i) => feature !== features[i]) ? whole : features
}

function wholeRow(plan: Plan, row: Row, plane: Plane): Row {
  const spacing = spacingIn(plan, row)
  if (spacing === null || !(spacing > grain)) return row
  const length = lineLength(row.geometry.coordinates.map(plane.toMetres))
  const past = length - Math.round(length / spacing) * spacing
  // Written so that a row too far off to have a length is left alone as well.
  if (!(length > spacing / 2 && Math.abs(past) < grain)) return row
  return withLength(row, length - past + margin, plane)
}

/**
 * Things after they were moved or turned as one piece, in the order of those before. Rounding may have brought a row's end
 * to the other side of where its next plant begins: then the end is put back.
 */
export function withTheirPlants(plan: Plan, before: readonly Feature[], after: readonly Feature[]): readonly Feature[] {
  if (!before.some(isSpaced)) return after
  const changed = new Map(after.map(feature => [feature.id, feature]))
  const planes = [planeOf(plan.features), planeOf(plan.features.map(each => changed.get(each.id) ?? each))] as const
  return after.map((feature, i) => {
    const was = before[i]
    return was !== undefined && isSpaced(was) && isSpaced(feature) ? withPlantsOf(plan, was, feature, planes) : feature
  })
}

function withPlantsOf(plan: Plan, before: Row, after: Row, planes: readonly [Plane, Plane]): Row {
  const spacing = spacingIn(plan, before)
  if (spacing === null || !(spacing > 0)) return after
  const [was, is] = [before, after].map((row, i) =>
    plantsInRow(lineLength(row.geometry.coordinates.map(planes[i]!.toMetres)), spacing),
  ) as [number, number]
  if (is === was) return after
  return withLength(after, is < was ? (was - 1) * spacing + margin : was * spacing - margin, planes[1])
}

/** The last stretch longer or shorter, straight on; the other corners stay to the last digit. */
function withLength(row: Row, length: number, plane: Plane): Row {
  const { coordinates } = row.geometry
  const line = cut(coordinates.map(plane.toMetres), 0, length)
  const [lng, lat] = plane.toLngLat(line.at(-1)!)
  const [, , ...altitude] = coordinates.at(-1)!
  const end: LngLat = [Number(lng.toFixed(9)), Number(lat.toFixed(9)), ...altitude]
  return { ...row, geometry: { ...row.geometry, coordinates: [...coordinates.slice(0, line.length - 1), end] } }
}
