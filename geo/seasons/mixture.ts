import { bloomOf } from '../bloom/bloom'
import {
  type Bloom,
  type Feature,
  isForage,
  isPlanting,
  isPresent,
  isStation,
  type Plan,
  type Season,
  seasonOf,
} from '../plan/plan'
import { dateOfDay, dayOfSeason, type IsoDate } from '../time/day'
import { movedStock, type PlacedStock, stockOf, usageOf, usedStations } from './mixed-stock'

export const causeNames = ['plantings', 'stations', 'stock', 'bloom', 'weather', 'parameters'] as const
/** What may differ between two years. */
export type Cause = (typeof causeNames)[number]

/** The year from which each is taken. */
export type Mixture = Readonly<Record<Cause, number>>

/**
 * The plan as it would stand if each of the six were that of the year named, in the season of the weather's year. Dates
 * keep their day of the season (1 = 1 January), so a leap year shifts nothing.
 *
 * - `plantings`: which plantings and forage areas stand in the ground.
 * - `stations`: which stations are in use, and how the bees are spread over those that only one of the years uses
 *   (`movedStock`).
 * - `stock`: how many females of which bee are set out in which batches, and at stations in use in both years, where.
 * - `bloom`: the bloom dates. A planting that does not stand in the bloom's year, and for which that year has no dates,
 *   keeps those of its own.
 * - `weather`: the season's weather, where coverage reckons with it.
 * - `parameters`: the plan's figures; they hold for all years, so that they never differ.
 */
export function mixedPlan(plan: Plan, mixture: Mixture): { readonly plan: Plan; readonly year: number } {
  const year = mixture.weather
  const season = requiredSeason(plan, year)
  const [ofPlaces, ofStock] = [requiredSeason(plan, mixture.stations), requiredSeason(plan, mixture.stock)]
  const features = plan.features.map(feature => standing(feature, mixture.plantings, year))
  const doubles: Feature[] = []
  const stations: Record<string, NonNullable<Season['stations']>[string]> = {}
  const stock = movedStock(stockOf(plan, ofStock), stockOf(plan, ofPlaces))
  for (const [id, byBee] of stock) {
    const { releases: _, ...use } = usageOf(Object.hasOwn(ofPlaces.stations ?? {}, id) ? ofPlaces : ofStock, id)
    let place = id
    for (const [bee, batches] of byBee) {
      // A place that takes bees of two kinds is two stations, as far as coverage goes.
      if (place !== id) doubles.push({ ...plan.features.filter(isStation).find(each => each.id === id)!, id: place })
      const releases = [...batches].map(([day, females]) => ({ date: dateOfDay(day, year), females }))
      stations[place] = { ...use, bee, releases }
      // No id in a file holds such a sign.
      place = `${id}\u0000${bee}`
    }
  }
  const bloom = mixedBloom(plan, mixture, year)
  return {
    year,
    plan: { ...plan, features: [...features, ...doubles], seasons: [{ ...season, bloom, stations }] },
  }
}

/** Causes that do not differ between two years: their part is nothing, and need not be worked out. */
export function differingCauses(plan: Plan, a: number, b: number): readonly Cause[] {
  const [from, to] = [requiredSeason(plan, a), requiredSeason(plan, b)]
  const grown = plan.features.filter(feature => isPlanting(feature) || isForage(feature))
  const arePlantingsAlike = grown.every(feature => isPresent(feature, a) === isPresent(feature, b))
  const [usedThen, usedNow] = [usedStations(plan, from), usedStations(plan, to)]
  const areStationsAlike = usedThen.length === usedNow.length && usedThen.every(id => usedNow.includes(id))
  const isAlike: Readonly<Record<Cause, boolean>> = {
    plantings: arePlantingsAlike,
    stations: areStationsAlike,
    stock: textOf(stockOf(plan, from)) === textOf(stockOf(plan, to)),
    bloom: bloomText(from) === bloomText(to),
    weather: weatherText(from) === weatherText(to),
    parameters: true,
  }
  return causeNames.filter(cause => !isAlike[cause])
}

function requiredSeason(plan: Plan, year: number): Season {
  const season = seasonOf(plan, year)
  if (season === undefined) throw new RangeError(`no season ${year}`)
  return season
}

function standing(feature: Feature, source: number, year: number): Feature {
  if (!isPlanting(feature) && !isForage(feature)) return feature
  const isThere = isPresent(feature, source)
  if (isPresent(feature, year) === isThere) return feature
  const { planted: _, removed: __, ...properties } = feature.properties
  return { ...feature, properties: isThere ? properties : { ...properties, planted: year + 1 } } as Feature
}

function mixedBloom(plan: Plan, { bloom, plantings }: Mixture, year: number): Readonly<Record<string, Bloom>> {
  const ofBloom = requiredSeason(plan, bloom).bloom
  const ofPlantings = requiredSeason(plan, plantings).bloom
  const mixed: Record<string, Bloom> = {}
  for (const [key, each] of Object.entries(ofBloom ?? {})) mixed[key] = moved(each, bloom, year)
  for (const feature of plan.features) {
    if (!isPlanting(feature) && !isForage(feature)) continue
    if (!isPresent(feature, plantings) || isPresent(feature, bloom)) continue
    const crop = isPlanting(feature) ? feature.properties.crop : undefined
    if (bloomOf(ofBloom, feature.id, crop) !== undefined) continue
    const own = bloomOf(ofPlantings, feature.id, crop)
    if (own !== undefined) mixed[feature.id] = moved(own, plantings, year)
  }
  return mixed
}

function moved(bloom: Bloom, from: number, to: number): Bloom {
  const date = (each: IsoDate) => dateOfDay(dayOfSeason(each, from), to)
  return { ...bloom, first: date(bloom.first), full: date(bloom.full), end: date(bloom.end) }
}

function textOf(stock: PlacedStock): string {
  return JSON.stringify([...stock].map(([id, byBee]) => [id, [...byBee].map(([bee, days]) => [bee, [...days].sort()])]))
}

function bloomText({ bloom, year }: Season): string {
  const days = (each: Bloom) => [each.first, each.full, each.end].map(date => dayOfSeason(date, year))
  const entries = Object.entries(bloom ?? {}).map(([key, each]) => [key, ...days(each)].join(' '))
  return JSON.stringify(entries.sort())
}

function weatherText({ weather, year }: Season): string {
  return JSON.stringify((weather?.days ?? []).map(([date, ...figures]) => [dayOfSeason(date, year), ...figures]))
}
