import { fixedSource, sourceText, type Threshold, thresholds } from '../data/thresholds'
import type { LngLat } from '../space/plane'
import { localFrame } from '../space/ring'
import { isInside } from '../space/shape'
import { featureLimits, limitFault } from './limits'
import { shortened } from './place'
import { nameOf, type Station } from './plan'
import type { ReportProblem } from './report-problem'

/** What stations are measured against besides themselves. */
export type Surroundings = {
  readonly keepouts: readonly { readonly name: string; readonly rings: readonly (readonly LngLat[])[] }[]
  readonly mud: readonly LngLat[]
  /** false = positions are not to be trusted. */
  readonly isMeasurable: boolean
}

type Measured = 'height' | 'facing' | 'overhang'

/** Where a station stands and how it is put up. */
export function checkSite(
  station: Station,
  { keepouts, mud, isMeasurable }: Surroundings,
  report: ReportProblem,
): void {
  const { id, geometry, properties } = station
  const name = shortened(nameOf(station))
  const toLocal = localFrame(geometry.coordinates)
  const here = toLocal(geometry.coordinates)
  const area = keepouts.find(({ rings }) =>
    isInside(
      rings.map(ring => ring.map(toLocal)),
      here,
    ),
  )
  if (area !== undefined) report('warning', 'station-in-keepout', id, { name, area: area.name })
  // Figures that cannot be meant are told of elsewhere.
  const given = (key: Measured) => {
    const value = properties[key]
    return value !== undefined && limitFault(value, featureLimits.station[key]!) === null ? value : null
  }
  const height = given('height')
  const { heightMost, heightLeast, overhangLeast } = thresholds
  if (height !== null && height > heightMost.value) {
    report('warning', 'station-high', id, { name, height, ...against(heightMost) })
  } else if (height !== null && height < heightLeast.value) {
    report('note', 'station-low', id, { name, height, ...against(heightLeast) })
  }
  const facing = given('facing')
  if (facing !== null && isMeasurable) checkFacing(station, facing, report)
  const overhang = given('overhang')
  if (overhang !== null && overhang < overhangLeast.value) {
    report('warning', 'roof-short', id, { name, overhang, ...against(overhangLeast) })
  }
  if (properties.support === 'branch') {
    report('warning', 'station-sways', id, { name, source: sourceText({ source: fixedSource }) })
  }
  checkMud(station, mud, report)
}

function against(threshold: Threshold): { limit: number; source: string } {
  return { limit: threshold.value, source: sourceText(threshold) }
}

/** South of the equator the morning sun stands in the north-east: east and west stay, north and south change places. */
function checkFacing(station: Station, facing: number, report: ReportProblem): void {
  const isSouthern = station.geometry.coordinates[1] < 0
  const { facingFrom, facingTo, facingDoubtful } = thresholds
  const mirrored = (degrees: number) => turned(isSouthern ? 180 - degrees : degrees)
  const asNorthern = mirrored(facing)
  if (asNorthern >= facingFrom.value && asNorthern <= facingTo.value) return
  const isNearly = asNorthern > facingTo.value && asNorthern <= facingDoubtful.value
  const [low, high] = [mirrored(facingFrom.value), mirrored(facingTo.value)].sort((a, b) => a - b)
  report(isNearly ? 'note' : 'warning', 'facing-unsuited', station.id, {
    name: shortened(nameOf(station)),
    facing: turned(facing),
    low: low!,
    high: high!,
    isNearly,
    source: sourceText(facingFrom),
  })
}

/** Degrees from 0 up to 360. */
function turned(degrees: number): number {
  return ((degrees % 360) + 360) % 360
}

function checkMud(station: Station, mud: readonly LngLat[], report: ReportProblem): void {
  const toLocal = localFrame(station.geometry.coordinates)
  const nearest = mud.reduce((least, position) => {
    const { x, y } = toLocal(position)
    return Math.min(least, Math.hypot(x, y))
  }, Number.POSITIVE_INFINITY)
  const { mudNear, mudFar } = thresholds
  if (!Number.isFinite(nearest) || nearest <= mudNear.value) return
  const isFar = nearest > mudFar.value
  // Rounded up, so that what is over the limit also reads so.
  const figures = { name: shortened(nameOf(station)), metres: Math.ceil(nearest * 10) / 10, isFar }
  report(isFar ? 'warning' : 'note', 'mud-far', station.id, { ...figures, ...against(isFar ? mudFar : mudNear) })
}
