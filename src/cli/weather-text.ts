import { bloomCurve } from '#geo/bloom/bloom'
import { heatOf } from '#geo/bloom/heat'
import { type PredictedBloom, predictedBloom } from '#geo/bloom/predict'
import { bees } from '#geo/data/bees'
import { chillNeeds } from '#geo/data/chill-needs'
import type { BeeId } from '#geo/data/own'
import { cropName, tableCropOf } from '#geo/data/settings'
import { isPlanting, isPresent, type Plan, seasonOf, type Units } from '#geo/plan/plan'
import { modelOf } from '#geo/report/model'
import type { Report } from '#geo/report/report'
import { dateText } from '#geo/time/date-text'
import { flyingTime, withoutWeather } from '#geo/weather/flying-time'
import { winterChill } from '#geo/weather/winter-chill'
import { oneLine, significant } from '#geo/wording/plain'
import { type Column, pairs, table } from './table'
import { shownUnit } from './units'
import { counted, estimate, grouped, notKnown, percent } from './words'

/** What the weather of a season says, for reading; no lines where it holds none. */
export function weatherText(plan: Plan, { year, orchard, stations }: Report, units: Units): readonly string[] {
  const days = seasonOf(plan, year)?.weather?.days.length ?? 0
  if (days === 0) return []
  const typical = modelOf(withoutWeather(plan, year), year)
  const without = typical.ok ? typical.value.report({ withLimits: false }).orchard.coverage : null
  const species = [...new Set(stations.map(({ bee }) => bee))]
  const lines: [string, string][] = [
    ['Coverage', `${percent(orchard.coverage)} in this weather, ${percent(without)} on typical spring days`],
    ...species.map((bee): [string, string] => [`Flying time, ${bees[bee].name}`, flyingText(plan, year, bee)]),
    ...chillLines(plan, year),
    ...heatLines(plan, year, units),
  ]
  return [
    '',
    `Weather (${counted(days, 'day')} in the plan; hours are rebuilt from each day's lowest and highest temperature)`,
    pairs(lines),
    ...bloomLines(plan, year, units),
  ]
}

/** Mean flying time over the days on which something grown blooms and the weather is known. */
function flyingText(plan: Plan, year: number, bee: BeeId): string {
  const flying = flyingTime(plan, year, bee)
  if (flying === null) return notKnown
  const grown = cropsOf(plan, year)
  const open = Object.entries(seasonOf(plan, year)?.bloom ?? {})
    .filter(([key]) => grown.includes(key) || plan.features.some(({ id }) => id === key))
    .flatMap(([, bloom]) => {
      const { start, values } = bloomCurve(bloom, year)
      return Array.from(values, (_, i) => start + i)
    })
  const known = [...new Set(open)].filter(day => flying.known[day - flying.start] === 1)
  if (known.length === 0) return notKnown
  const mean = known.reduce((sum, day) => sum + flying.values[day - flying.start]!, 0) / known.length
  return `${percent(mean)} of a typical spring day's, over ${counted(known.length, 'day')} of bloom with weather`
}

function chillLines(plan: Plan, year: number): [string, string][] {
  const chill = winterChill(plan, year)
  if (chill === null) return []
  const { from, until, portions, hours, utah, growingHours, missing } = chill
  const least = missing > 0 ? `at least; ${counted(missing, 'day')} missing` : 'estimated'
  const figures = [
    `${estimate(portions)} portions`,
    `${estimate(hours)} chilling hours`,
    `${grouped(Math.round(utah))} Utah units`,
    `${grouped(significant(growingHours, 2))} growing degree hours since New Year`,
  ].join(', ')
  const needs = cropsOf(plan, year).flatMap(crop => {
    const need = chillNeeds[tableCropOf(crop, plan.crops)?.id ?? '']
    if (need === undefined) return []
    const range = need.low === need.high ? `${need.value}` : `${need.low} to ${need.high}`
    return [`${oneLine(cropName(crop, plan.crops))} ${range} ${need.unit === 'h' ? 'hours' : 'portions'}`]
  })
  const told: [string, string][] = [['Winter chill', `${figures} (${dateText(from)} to ${dateText(until)}, ${least})`]]
  return needs.length === 0 ? told : [...told, ['Chill needed', `${needs.join(', ')}, by cultivar`]]
}

/** Degree-days up to the last day of weather, by both ways of counting, for comparing with other services. */
function heatLines(plan: Plan, year: number, units: Units): [string, string][] {
  const [sums, bases] = [shownUnit('degC d', units), shownUnit('degC', units)]
  const lines = cropsOf(plan, year).flatMap(crop => {
    const heat = heatOf(plan, year, crop)
    if (heat === null || heat.until === null) return []
    const label = `Heat over ${bases.text(heat.base)} ${bases.unit}`
    const [mean, sine] = [heat.sum, heat.sumBySine].map(sum => sums.text(significant(sum, 3)))
    const span = `${dateText(heat.from)} to ${dateText(heat.until)}`
    return [[label, `${mean} ${sums.unit} by daily means, ${sine} by single sine (${span})`] as [string, string]]
  })
  return [...new Map(lines.map(line => [line.join(), line])).values()]
}

/** Full bloom as the plan has it, and as the weather has it. */
function bloomLines(plan: Plan, year: number, units: Units): readonly string[] {
  const rows = cropsOf(plan, year).flatMap(crop => {
    const found = predictedBloom(plan, year, crop)
    if (found === null) return []
    const given = seasonOf(plan, year)?.bloom?.[crop]
    const spread = found.before === found.after ? `${found.before}` : `${found.before} earlier, ${found.after} later`
    return [
      [
        oneLine(cropName(crop, plan.crops)),
        given === undefined ? notKnown : dateText(given.full),
        dateText(found.bloom.full),
        found.basis === 'observed' ? 'seen' : spread,
        basisText(found, units) +
          (found.asCrop === null ? '' : `, as for ${oneLine(cropName(found.asCrop, plan.crops))}`),
      ],
    ]
  })
  if (rows.length === 0) return []
  const left = (head: string): Column => ({ head, align: 'left' })
  const columns = [left('Crop'), left('In the plan'), left('Estimate'), left('Give or take, days'), left('From')]
  return ['', 'Full bloom (the count uses the dates in the plan; estimates stand beside them)', table(columns, rows)]
}

function basisText({ basis, heat }: PredictedBloom, units: Units): string {
  switch (basis) {
    case 'observed':
      return 'the date seen'
    case 'degree-days': {
      const own = heat!.seasons.map(({ full }) => dateText(full)).join(', ')
      const [sum, base] = [shownUnit('degC d', units), shownUnit('degC', units)]
      const degrees = `${sum.text(significant(heat!.total, 3))} ${sum.unit} over ${base.text(heat!.base)} ${base.unit}`
      const total = `${degrees} from ${dateText(heat!.from)}`
      return heat!.isRescaled ? `${total}, by full bloom seen on ${own}` : `${total}, a total from elsewhere`
    }
    case 'apple-observed':
      return "apple's full bloom as seen"
    case 'apple-degree-days':
      return "apple's full bloom by heat"
    case 'calendar':
      return heat?.until ? `the usual calendar; heat so far ${heatSoFar(heat)}` : 'the usual calendar'
    default:
      return basis satisfies never
  }
}

function heatSoFar({ sum, total, until }: NonNullable<PredictedBloom['heat']>): string {
  return `${percent(Math.min(1, sum / total))} of what it takes, up to ${dateText(until!)}`
}

function cropsOf(plan: Plan, year: number): readonly string[] {
  const grown = plan.features.filter(isPlanting).filter(feature => isPresent(feature, year))
  return [...new Set(grown.map(({ properties }) => properties.crop))]
}
