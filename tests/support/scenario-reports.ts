import geographiclib from 'geographiclib-geodesic'
import { readPlan } from '#geo/file/read'
import { isStation, type Plan, seasonOf } from '#geo/plan/plan'
import { pointCloud } from '#geo/report/cloud'
import { evaluate } from '#geo/report/evaluate'
import type { PlantingResult, Report } from '#geo/report/report'
import { scenarioText } from './scenario-maker'

/** What the example plans, as they are kept, come to. */

const { WGS84 } = geographiclib.Geodesic

export const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

export function scenarioPlan(name: string): Plan {
  const outcome = readPlan(scenarioText(name))
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

export function scenarioReport(name: string, year: number): Report {
  const outcome = evaluate(scenarioPlan(name), year)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

export function planting(report: Report, id: string): PlantingResult {
  return report.plantings.find(row => row.id === id)!
}

/** Geodesic distances of one plant to the season's stations, m, by station. */
export type Distances = Readonly<Record<string, number>>

/** Every plant's distances, by planting; measured on the ellipsoid, not in the plane that the engine works in. */
export function scenarioDistances(name: string, year: number): Readonly<Record<string, readonly Distances[]>> {
  const plan = scenarioPlan(name)
  const used = seasonOf(plan, year)!.stations!
  const stations = plan.features.filter(isStation).filter(({ id }) => Object.hasOwn(used, id))
  const cloud = pointCloud(plan, year)
  const plantDistances = (plant: number): Distances => {
    const [lng, lat] = [cloud.lngLat[2 * plant]!, cloud.lngLat[2 * plant + 1]!]
    const to = stations.map(({ id, geometry: { coordinates } }) => {
      return [id, WGS84.Inverse(lat, lng, coordinates[1], coordinates[0]).s12!] as const
    })
    return Object.fromEntries(to)
  }
  return Object.fromEntries(
    cloud.plantings.map(({ id, start, end }) => [
      id,
      Array.from({ length: end - start }, (_, i) => plantDistances(start + i)),
    ]),
  )
}

/** Distance to the nearest of the stations, m. */
export const nearest = (distances: Distances): number => Math.min(...Object.values(distances))

/** Share of values that are at most `most`. */
export const shareWithin = (values: readonly number[], most: number): number =>
  values.filter(value => value <= most).length / values.length
