import { bloomCurve, bloomWeight } from '#geo/bloom/bloom'
import type { BeeId } from '#geo/data/own'
import { adviceFigures } from '#geo/data/timing-figures'
import { releaseDay } from '#geo/flight/release-day'
import type { Plan, Planting, Station } from '#geo/plan/plan'
import { nearestOnLine } from '#geo/siting/near'
import type { LngLat } from '#geo/space/plane'
import { dateOfDay, type IsoDate } from '#geo/time/day'
import { bloomOf, planeOfPlan, plantingsIn, settingsOf, stationSeasonOf } from '../../state/selectors'
import { measured } from '../measures'
import { cropTitle } from '../titles'
import { isInOrder } from './bloom-defaults'

export type BestRelease = { readonly date: IsoDate; readonly name: string }

/** The day on which one batch of a bee best meets the bloom of the crop with most ground; null where nothing blooms. */
function bestReleaseFor(plan: Plan, year: number, bee: BeeId, plantings = plantingsIn(plan, year)): BestRelease | null {
  const grounds = new Map<string, number>()
  for (const planting of plantings) {
    const bloom = bloomOf(plan, year, planting)
    if (bloom === undefined || !isInOrder(bloom)) continue
    const { crop } = planting.properties
    grounds.set(crop, (grounds.get(crop) ?? 0) + (measured(plan, planting).area ?? 0))
  }
  const [crop] = [...grounds].sort((a, b) => b[1] - a[1])[0] ?? []
  const planting = plantings.find(each => each.properties.crop === crop && isDated(plan, year, each))
  const bloom = planting && bloomOf(plan, year, planting)
  if (crop === undefined || bloom === undefined) return null
  const days = bloomWeight(bloomCurve(bloom, year))
  const day = releaseDay([{ days, weight: 1 }], settingsOf(plan).bees[bee])!
  return { date: dateOfDay(day, year), name: cropTitle(plan, crop) }
}

/** The same for one station: by what blooms within reach of its first females, or by all where nothing dated is so near. */
export function bestReleaseAt(plan: Plan, year: number, station: Station): BestRelease | null {
  const bee = stationSeasonOf(plan, year, station.id)?.bee ?? plan.bee
  return bestReleaseFor(plan, year, bee, datedNear(plan, year, station))
}

/** Plantings with bloom dates within reach of a station's first females, or all such where none is so near. */
export function datedNear(plan: Plan, year: number, station: Station): readonly Planting[] {
  const dated = plantingsIn(plan, year).filter(planting => isDated(plan, year, planting))
  const near = dated.filter(planting => isNear(plan, planting, station))
  return near.length > 0 ? near : dated
}

function isDated(plan: Plan, year: number, planting: Planting): boolean {
  const bloom = bloomOf(plan, year, planting)
  return bloom !== undefined && isInOrder(bloom)
}

function isNear(plan: Plan, planting: Planting, station: Station): boolean {
  const { toMetres } = planeOfPlan(plan)
  const at = toMetres(station.geometry.coordinates)
  return linesOf(planting).some(
    line => nearestOnLine(line.map(toMetres), at).distance <= adviceFigures.forageReach.value,
  )
}

function linesOf({ geometry }: Planting): readonly (readonly LngLat[])[] {
  switch (geometry.type) {
    case 'Point':
      return [[geometry.coordinates]]
    case 'MultiPoint':
      return geometry.coordinates.map(position => [position])
    case 'LineString':
      return [geometry.coordinates]
    case 'Polygon':
      return geometry.coordinates
    default:
      return geometry satisfies never
  }
}
