import type { LngLat } from '../space/plane'
import { localFrame, mostCorners, type PolygonFault, polygonFault } from '../space/ring'
import { lineLength } from '../space/shape'
import { shortened } from './place'
import { type Feature, type Geometry, isForage, isPlanting, nameOf, type Plan } from './plan'
import type { ReportProblem } from './report-problem'

/** Beyond this from the rest a feature is asked whether its longitude and latitude are swapped, m. */
const farAway = 100_000
/** Above the first distances lose their last digits, above the second the flat plane means nothing; km. */
const wide = 10
const tooWide = 500
/** A line of less is a point, m. */
const leastLength = 0.001

/** Ids, positions and outlines of everything drawn; whether all of it lies where it can be measured. */
export function checkGround(plan: Plan, report: ReportProblem): boolean {
  checkIds(plan.features, report)
  const placed = plan.features.filter(feature => isOnEarth(feature, report))
  const isSwapped = checkSwapped(placed, report)
  if (!isSwapped) checkWidth(placed, report)
  for (const feature of placed) checkGeometry(feature, report)
  return !isSwapped && placed.length === plan.features.length
}

function checkIds(features: readonly Feature[], report: ReportProblem): void {
  const counts = new Map<string, number>()
  for (const { id } of features) counts.set(id, (counts.get(id) ?? 0) + 1)
  for (const [id, count] of counts) if (count > 1) report('error', 'id-repeated', id, { id: shortened(id), count })
}

/** All positions of a geometry. */
export function positionsOf(geometry: Geometry): readonly LngLat[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates]
    case 'MultiPoint':
    case 'LineString':
      return geometry.coordinates
    case 'Polygon':
      return geometry.coordinates.flat()
    default:
      return geometry satisfies never
  }
}

export function isPosition([lng, lat]: LngLat): boolean {
  return Math.abs(lng) <= 180 && Math.abs(lat) <= 90
}

function isOnEarth(feature: Feature, report: ReportProblem): boolean {
  const wrong = positionsOf(feature.geometry).find(position => !isPosition(position))
  if (wrong === undefined) return true
  const [lng, lat] = wrong
  const values = { name: word(feature), lng, lat, isSwapped: isPosition([lat, lng]) }
  report('error', 'position-off-earth', feature.id, values)
  return false
}

/** One middle for all, so that a few swapped features do not shift it. */
function checkSwapped(features: readonly Feature[], report: ReportProblem): boolean {
  const firsts = features.flatMap(({ geometry }) => positionsOf(geometry).slice(0, 1))
  if (firsts.length < 3) return false
  const middle: LngLat = [median(firsts.map(([lng]) => lng)), median(firsts.map(([, lat]) => lat))]
  const toLocal = localFrame(middle)
  const away = (position: LngLat): number => {
    const { x, y } = toLocal(position)
    return Math.hypot(x, y)
  }
  let found = false
  for (const feature of features) {
    const swapped = positionsOf(feature.geometry).find(position => {
      const [lng, lat] = position
      return isPosition([lat, lng]) && away(position) > farAway && away([lat, lng]) <= farAway
    })
    if (swapped === undefined) continue
    const [lng, lat] = swapped
    report('error', 'lon-lat-swapped', feature.id, {
      name: word(feature),
      lng,
      lat,
      kilometres: kilometres(away(swapped)),
    })
    found = true
  }
  return found
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
}

function checkWidth(features: readonly Feature[], report: ReportProblem): void {
  const all = features.flatMap(({ geometry }) => positionsOf(geometry))
  const first = all[0]
  if (first === undefined) return
  let [west, south] = first
  let [east, north] = first
  for (const [lng, lat] of all) {
    west = Math.min(west, lng)
    east = Math.max(east, lng)
    south = Math.min(south, lat)
    north = Math.max(north, lat)
  }
  const { x, y } = localFrame([west, (south + north) / 2])([east, north])
  const width = Math.max(x, 2 * y)
  if (width <= wide * 1000) return
  const isTooWide = width > tooWide * 1000
  const values = { kilometres: kilometres(width), limit: isTooWide ? tooWide : wide }
  report(isTooWide ? 'error' : 'warning', isTooWide ? 'plan-too-wide' : 'plan-wide', '', values)
}

function kilometres(metres: number): number {
  return Number((metres / 1000).toPrecision(3))
}

const polygonCodes = {
  short: 'ring-short',
  open: 'ring-open',
  long: 'ring-long',
  crossing: 'ring-crossing',
  flat: 'ring-flat',
  outside: 'hole-outside',
  overlap: 'holes-overlap',
} as const satisfies Record<PolygonFault, string>

function checkGeometry(feature: Feature, report: ReportProblem): void {
  const { geometry, id } = feature
  // What is not counted can be odd without harm to the result.
  const severity = isPlanting(feature) || isForage(feature) ? 'error' : 'warning'
  const name = word(feature)
  switch (geometry.type) {
    case 'Point':
      return
    case 'MultiPoint':
      if (geometry.coordinates.length === 0) report(severity, 'no-positions', id, { name })
      return
    case 'LineString': {
      const { coordinates } = geometry
      const start = coordinates[0]
      if (start === undefined || coordinates.length < 2) {
        report(severity, 'line-short', id, { name, count: coordinates.length })
      } else if (!(lineLength(coordinates.map(localFrame(start))) >= leastLength)) {
        report(severity, 'line-flat', id, { name })
      }
      return
    }
    case 'Polygon': {
      const found = polygonFault(geometry.coordinates)
      if (found === null) return
      const { fault, ring } = found
      report(severity, polygonCodes[fault], id, { name, ring, limit: mostCorners })
      return
    }
    default:
      geometry satisfies never
  }
}

function word(feature: Feature): string {
  return shortened(nameOf(feature))
}
