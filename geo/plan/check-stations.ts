import { type BeeParameterName, bees } from '../data/bees'
import { type BeeId, beeIds } from '../data/own'
import { type BeeSettings, ownNumber, ownOfBee, settingsFor } from '../data/settings'
import { sourceText } from '../data/thresholds'
import { checkSite, type Surroundings } from './check-site'
import { limitFault, releaseLimits, seasonYear, stationLimits } from './limits'
import { shortened } from './place'
import { isStation, nameOf, type Plan, type Station, type StationSeason } from './plan'
import type { ReportProblem } from './report-problem'

/**
 * Field checks of the stations in use: where they stand, how they are built, what is put into them. With `year`, of that
 * season only. None of it stops a result; what is not given is not judged. `isMeasurable` false = distances mean nothing.
 */
export function checkStations(
  plan: Plan,
  year: number | undefined,
  isMeasurable: boolean,
  report: ReportProblem,
): void {
  const drawn = new Map(plan.features.filter(isStation).map(station => [station.id, station]))
  const { bees: settings } = settingsFor({ parameters: plan.parameters, crops: {} })
  const used = new Set<Station>()
  const seen = new Set<number>()
  for (const season of plan.seasons) {
    // Of a season that is there twice only the first is used.
    if (seen.has(season.year) || (year !== undefined && season.year !== year)) continue
    seen.add(season.year)
    for (const [id, inSeason] of Object.entries(season.stations ?? {})) {
      const station = drawn.get(id)
      if (station === undefined) continue
      used.add(station)
      if (limitFault(season.year, seasonYear) === null) checkYears(station, season.year, report)
      const bee = inSeason.bee ?? plan.bee
      if (!beeIds.includes(bee)) continue
      checkNest({ plan, station, inSeason, year: season.year, bee, values: settings[bee] }, report)
    }
  }
  if (used.size === 0) return
  const surroundings = surroundingsOf(plan, isMeasurable)
  for (const station of used) checkSite(station, surroundings, report)
  if (surroundings.isMeasurable && surroundings.mud.length === 0) report('note', 'no-mud', '', {})
}

function surroundingsOf(plan: Plan, isMeasurable: boolean): Surroundings {
  const keepouts = isMeasurable ? plan.features.filter(feature => feature.properties.kind === 'keepout') : []
  const mud = isMeasurable ? plan.features.filter(feature => feature.properties.kind === 'mud') : []
  return {
    keepouts: keepouts.flatMap(feature =>
      feature.geometry.type === 'Polygon'
        ? [{ name: shortened(nameOf(feature)), rings: feature.geometry.coordinates }]
        : [],
    ),
    isMeasurable,
    mud: mud.flatMap(({ geometry }) => (geometry.type === 'Point' ? [geometry.coordinates] : [])),
  }
}

function checkYears(station: Station, year: number, report: ReportProblem): void {
  const { since, until } = station.properties
  const isEarly = since !== undefined && year < since
  const isLate = until !== undefined && year > until
  if (!isEarly && !isLate) return
  report('warning', 'station-not-there', station.id, {
    name: shortened(nameOf(station)),
    year,
    isEarly,
    limit: isEarly ? since : until!,
  })
}

type Nest = {
  readonly plan: Plan
  readonly station: Station
  readonly inSeason: StationSeason
  readonly year: number
  readonly bee: BeeId
  readonly values: BeeSettings
}

/** Bore, depth and number of tubes against what the season's bee wants. */
function checkNest({ plan, station, inSeason, year, bee, values }: Nest, report: ReportProblem): void {
  const { bore, depth, tubes, releases = [] } = inSeason
  const { boreMin, boreMax, depthMin, tubesPerFemale, emergence, establishment } = values
  const common = { name: shortened(nameOf(station)), year, bee: bees[bee].name }
  const source = (...names: BeeParameterName[]) => {
    const isOwn = (name: BeeParameterName) => ownNumber(ownOfBee(plan.parameters, bee), name) !== undefined
    const texts = names.map(name => (isOwn(name) ? "the plan's own value" : sourceText(bees[bee].parameters[name])))
    return [...new Set(texts.flatMap(text => text.split('; ')))].join('; ')
  }
  if (bore !== undefined && limitFault(bore, stationLimits.bore) === null && (bore < boreMin || bore > boreMax)) {
    const values = { ...common, bore, low: boreMin, high: boreMax, source: source('boreMin', 'boreMax') }
    report('warning', 'bore-unsuited', station.id, values)
  }
  if (depth !== undefined && limitFault(depth, stationLimits.depth) === null && depth < depthMin) {
    report('warning', 'tubes-short', station.id, { ...common, depth, limit: depthMin, source: source('depthMin') })
  }
  if (tubes === undefined || limitFault(tubes, stationLimits.tubes) !== null) return
  if (releases.some(({ females }) => limitFault(females, releaseLimits.females) !== null)) return
  const females = releases.reduce((sum, release) => sum + release.females, 0) * emergence * establishment
  // A product such as 0.8 x 0.35 x 100 may come out a hair over a whole number.
  const wanted = Math.ceil(females * tubesPerFemale - 1e-6)
  if (!(tubes < wanted) || !Number.isFinite(wanted)) return
  const figures = { tubes, females: Number(females.toFixed(females < 10 ? 1 : 0)), perFemale: tubesPerFemale, wanted }
  report('warning', 'tubes-few', station.id, { ...common, ...figures, source: source('tubesPerFemale') })
}
