import { bees } from '#geo/data/bees'
import { judging } from '#geo/data/judging-figures'
import { cropName } from '#geo/data/settings'
import type { Plan, Units } from '#geo/plan/plan'
import { limitNames } from '#geo/report/limit-names'
import type { OrchardResult, PlantingResult, Report, StationResult } from '#geo/report/report'
import { type RulesOfThumb, rulesOfThumb } from '#geo/report/rules'
import { dateText } from '#geo/time/date-text'
import { listed, oneLine } from '#geo/wording/plain'
import { type Column, pairs, table } from './table'
import { areaText } from './units'
import { weatherText } from './weather-text'
import { counted, estimate, grouped, notKnown, percent } from './words'

/** A share from which a planting counts as having enough; a sum of parts may fall short of it by its last bit. */
const enough = judging.enough - 1e-9

/** What holds a planting back. One that is in reach lacks nests close by, not reach. */
function heldBackBy({ limit, reach, coverage }: PlantingResult): string {
  if (limit === null) return notKnown
  if (limit === 'none' && coverage !== null && coverage < enough) return 'no single change is enough'
  return limit === 'distance' && (reach ?? 0) >= enough ? 'no nest close by' : limitNames[limit]
}

/** A season's coverage for reading: what it comes to, the orchard, its plantings and stations. */
export function coverageText(plan: Plan, report: Report, units: Units): string {
  const { orchard, plantings, stations, year } = report
  return [
    `${oneLine(report.plan) || 'Plan without a name'}, season ${year}`,
    summary(plantings),
    'Every figure is an estimate, see nestreach parameters. Females are nesting females; wanted, supplied and short by',
    'count blue orchard bee females, to which the other bees are converted. Plants with more than they want do not help',
    'those with too little, so wanted less supplied is not what is short.',
    '',
    'Orchard',
    orchardText(orchard),
    ...section('Plantings', plantings.length, () => plantingTable(plan, plantings, units)),
    ...section('Stations', stations.length, () => stationTable(stations)),
    ...weatherText(plan, report, units),
    ...clashes(plan, year),
    '',
  ].join('\n')
}

function section(head: string, count: number, text: () => string): readonly string[] {
  return count === 0 ? ['', `${head}: none in this season.`] : ['', head, text()]
}

/** The first sentence: what a grower asks first. */
function summary(plantings: readonly PlantingResult[]): string {
  const wanting = plantings.filter(({ wanted }) => wanted > 0)
  const known = wanting.filter(({ coverage }) => coverage !== null)
  const served = known.filter(({ coverage }) => coverage! >= enough)
  if (wanting.length === 0) return 'No planting wants bees in this season.'
  if (known.length === 0) return 'No planting has bloom dates, so no coverage can be worked out.'
  const unknown = wanting.length - known.length
  const without = unknown === 0 ? '' : ` ${counted(unknown, 'planting')} without bloom dates cannot be worked out.`
  const verb = served.length === 1 || known.length === 1 ? 'gets' : 'get'
  const first = `${served.length} of ${counted(known.length, 'planting')} ${verb} enough bees (90% or more of what is wanted)`
  if (served.length === known.length) return `${first}.${without}`
  const worst = known.reduce((a, b) => (b.shortBy! > a.shortBy! ? b : a))
  return `${first}; furthest from enough: ${oneLine(worst.name)}, ${females(worst.shortBy!)} short.${without}`
}

/** "about 38 females". */
function females(value: number): string {
  const figure = estimate(value)
  const about = value < 0.5 ? figure : `about ${figure}`
  return `${about} ${figure === '1' || figure === 'under 1' ? 'female' : 'females'}`
}

/** "830 females", or that it is not known. */
function counting(value: number | null): string {
  return value === null ? notKnown : `${estimate(value)} females`
}

function orchardText({ wanted, supplied, coverage, reach, shortBy, busiestDay }: OrchardResult): string {
  const busiest =
    busiestDay === null ? notKnown : `${dateText(busiestDay.date)}, with ${females(busiestDay.wanted)} wanted at once`
  return pairs([
    ['Wanted', counting(wanted)],
    ['Supplied', counting(supplied)],
    ['Coverage', percent(coverage)],
    ['In reach', percent(reach)],
    ['Short by', counting(shortBy)],
    ['Busiest day', busiest],
  ])
}

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })

function plantingTable(plan: Plan, plantings: readonly PlantingResult[], units: Units): string {
  const kinds = new Map(plan.features.map(feature => [feature.id, feature.properties.kind]))
  const columns = [
    left('Planting'),
    left('Crop'),
    right('Plants'),
    right('Area'),
    right('Wanted'),
    right('Supplied'),
    right('Coverage'),
    right('In reach'),
    right('In time'),
    right('Short by'),
    left('Held back by'),
  ]
  const rows = plantings.map(planting => [
    oneLine(planting.name),
    oneLine(cropName(planting.crop, plan.crops)),
    kinds.get(planting.id) === 'bed' ? 'bed' : grouped(planting.points),
    areaText(planting.area, units),
    estimate(planting.wanted),
    estimate(planting.supplied),
    percent(planting.coverage),
    percent(planting.reach),
    percent(planting.timingMatch),
    estimate(planting.shortBy),
    heldBackBy(planting),
  ])
  return table(columns, rows)
}

function stationTable(stations: readonly StationResult[]): string {
  const columns = [
    left('Station'),
    left('Bee'),
    right('Females'),
    right('Female cocoons'),
    right('Male cocoons'),
    right('Tubes wanted'),
    right('Tubes'),
  ]
  const rows = stations.map(station => [
    oneLine(station.name),
    bees[station.bee].name,
    estimate(station.females),
    String(station.femaleCocoons),
    String(station.maleCocoons),
    String(station.tubesWanted),
    station.tubes === null ? notKnown : String(station.tubes),
  ])
  return table(columns, rows)
}

type Clash = { readonly crop: string; plantings: number; byArea: number; low: number; high: number; inUse: Set<string> }

/** Crops for which a rate per area asks for fewer or more females than any number per plant in use. */
function clashes(plan: Plan, year: number): readonly string[] {
  const crops = new Map<string, Clash>()
  for (const rule of rulesOfThumb(plan, year)) {
    if (rule.byPlant !== null) add(crops, rule, rule.byPlant)
  }
  const rows = [...crops.values()]
    .filter(({ byArea, low, high }) => byArea < low || byArea > high)
    .map(({ crop, plantings, byArea, low, high, inUse }) => [
      oneLine(cropName(crop, plan.crops)),
      String(plantings),
      estimate(byArea),
      `${estimate(low)} to ${estimate(high)}`,
      listed([...inUse].map(rule => `by ${rule}`)),
    ])
  if (rows.length === 0) return []
  const columns = [left('Crop'), right('Plantings'), right('By area'), right('By plant'), left('In use')]
  return ['', 'Two rules of thumb that disagree (nesting females wanted)', table(columns, rows)]
}

function add(crops: Map<string, Clash>, { crop, byArea, inUse }: RulesOfThumb, byPlant: { low: number; high: number }) {
  const clash = crops.get(crop) ?? { crop, plantings: 0, byArea: 0, low: 0, high: 0, inUse: new Set<string>() }
  crops.set(crop, clash)
  clash.plantings += 1
  clash.byArea += byArea
  clash.low += byPlant.low
  clash.high += byPlant.high
  clash.inUse.add(inUse)
}
