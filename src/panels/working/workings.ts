import type { BeeParameterName } from '#geo/data/bees'
import type { BeeId } from '#geo/data/own'
import type { SiteParameterName } from '#geo/data/parameters'
import { isPlanting, type Plan } from '#geo/plan/plan'
import type { Range, Report, ReportRanges } from '#geo/report/report'
import { dateText } from '#geo/time/date-text'
import { significant } from '#geo/wording/plain'
import { cropsIn, featureById, settingsOf, stationSeasonOf, stationsInUse } from '../../state/selectors'
import type { BoxesFigure, FoundFigure, TimingFigure, WorkingTopic, YearsFigure } from '../../state/store'
import { areaText } from '../../text/units'
import { grouped, percent } from '../../text/words'
import { measured } from '../measures'
import { cropTitle } from '../titles'
import { limitAnswer, remedyRows } from './remedy-rows'
import { rules, titles } from './rules'

/** A figure that went in and is not a table's: from the drawing, or worked out before. */
export type Given = { readonly label: string; readonly text: string }

/** Which rows of the tables a figure hangs on. */
export type Uses = {
  readonly site: readonly SiteParameterName[]
  readonly bees: readonly BeeId[]
  readonly bee: readonly BeeParameterName[]
  readonly crops: readonly string[]
  readonly crop: readonly string[]
}

export type Working = {
  readonly title: string
  readonly of: string
  readonly answer: string
  readonly range: string | null
  readonly rule: readonly string[]
  readonly given: readonly Given[]
  readonly uses: Uses
  /** The verdict's own thresholds belong to it. */
  readonly isVerdict: boolean
}

type Context = {
  readonly plan: Plan
  readonly year: number
  readonly report: Report
  readonly ranges: ReportRanges | null
}

const nothing: Uses = { site: [], bees: [], bee: [], crops: [], crop: [] }

/** What the report has figures of; those of a suggestion are worked out beside it. */
type ReportTopic = {
  readonly figure: Exclude<WorkingTopic['figure'], BoxesFigure | TimingFigure | FoundFigure | YearsFigure>
  readonly id: string | null
}

/** How a figure of the report came about; null where the report does not have it (any more). */
export function workingOf(topic: ReportTopic, context: Context): Working | null {
  const { figure, id } = topic
  const body = id === null ? orchardBody(topic, context) : (plantingBody(topic, context) ?? stationBody(topic, context))
  if (body === null) return null
  const isVerdict = figure === 'coverage' || figure === 'reach' || figure === 'timingMatch'
  return { title: titles[figure], rule: rules[figure], isVerdict, ...body }
}

type Body = Pick<Working, 'of' | 'answer' | 'range' | 'given' | 'uses'>

function orchardBody({ figure }: ReportTopic, { plan, year, report, ranges }: Context): Body | null {
  const { orchard } = report
  const all = cropsIn(plan, year)
  const of = `The orchard in ${year}`
  const given: Given[] = [
    { label: 'Plantings counted', text: grouped(report.plantings.length) },
    { label: 'Wanted, all added up', text: exact(orchard.wanted) },
    { label: 'Supplied', text: exact(orchard.supplied) },
  ]
  const uses = usesOf(figure, { plan, year, crops: all })
  switch (figure) {
    case 'coverage':
      return { of, answer: share(orchard.coverage), range: shares(ranges?.orchard.coverage), given, uses }
    case 'reach':
      return { of, answer: share(orchard.reach), range: shares(ranges?.orchard.reach), given: given.slice(0, 2), uses }
    case 'wanted':
      return {
        of,
        answer: females(orchard.wanted),
        range: span(ranges?.orchard.wanted),
        given: given.slice(0, 1),
        uses,
      }
    case 'supplied':
      return {
        of,
        answer: females(orchard.supplied),
        range: span(ranges?.orchard.supplied),
        given: given.slice(0, 2),
        uses,
      }
    case 'shortBy':
      return { of, answer: females(orchard.shortBy), range: span(ranges?.orchard.shortBy), given, uses }
    case 'busiestDay': {
      const { busiestDay } = orchard
      if (busiestDay === null) return null
      const answer = `${females(busiestDay.wanted)} on ${dateText(busiestDay.date)}`
      return { of, answer, range: null, given: given.slice(0, 2), uses }
    }
    case 'rules':
      return { of, answer: 'By area, unless a planting has its own number per plant', range: null, given: [], uses }
    default:
      return null
  }
}

function plantingBody({ figure, id }: ReportTopic, { plan, year, report, ranges }: Context): Body | null {
  const result = report.plantings.find(planting => planting.id === id)
  const feature = id === null ? undefined : featureById(plan, id)
  if (result === undefined || feature === undefined || !isPlanting(feature)) return null
  const found = measured(plan, feature)
  const { properties } = feature
  const crop = cropTitle(plan, properties.crop)
  const own = properties.kind === 'bed' ? undefined : properties.femalesPerPlant
  const ground: Given[] = [
    { label: 'Crop', text: crop },
    ...(found.plants === null ? [] : [{ label: 'Plants', text: grouped(found.plants) }]),
    { label: 'Ground planted', text: areaText(result.area, plan.units) },
    { label: 'Vigour', text: percent(properties.vigour ?? 1) },
    ...(own === undefined ? [] : [{ label: 'Females per plant, set for it', text: grouped(own) }]),
  ]
  const numbers: Given[] = [
    { label: 'Wanted', text: exact(result.wanted) },
    { label: 'Supplied', text: exact(result.supplied) },
    { label: 'Short by', text: exact(result.shortBy) },
  ]
  const of = `${result.name}, ${crop}, in ${year}`
  const uses = usesOf(figure, { plan, year, crops: [properties.crop] })
  const range = ranges?.plantings[result.id]
  switch (figure) {
    case 'coverage':
      return {
        of,
        answer: share(result.coverage),
        range: shares(range?.coverage),
        given: [...ground, ...numbers],
        uses,
      }
    case 'reach':
      return { of, answer: share(result.reach), range: shares(range?.reach), given: ground, uses }
    case 'timingMatch':
      return { of, answer: share(result.timingMatch), range: shares(range?.timingMatch), given: [], uses }
    case 'wanted':
      return { of, answer: females(result.wanted), range: span(range?.wanted), given: ground, uses }
    case 'supplied':
      return { of, answer: females(result.supplied), range: span(range?.supplied), given: numbers.slice(0, 1), uses }
    case 'shortBy':
      return { of, answer: females(result.shortBy), range: span(range?.shortBy), given: numbers.slice(0, 2), uses }
    case 'limit': {
      const given = [{ label: 'Coverage as planned', text: share(result.coverage) }, ...remedyRows(result)]
      return { of, answer: limitAnswer(result), range: null, given, uses }
    }
    default:
      return null
  }
}

function stationBody({ figure, id }: ReportTopic, { plan, year, report, ranges }: Context): Body | null {
  const result = report.stations.find(station => station.id === id)
  if (result === undefined) return null
  const releases = stationSeasonOf(plan, year, result.id)?.releases ?? []
  const set = releases.reduce((sum, { females }) => sum + females, 0)
  const given: Given[] = [{ label: 'Female cocoons planned', text: grouped(set) }]
  const nesting: Given = { label: 'Nesting females', text: exact(result.females) }
  const of = `${result.name} in ${year}`
  const uses = usesOf(figure, { plan, year, crops: [], bees: [result.bee] })
  switch (figure) {
    case 'females':
      return { of, answer: females(result.females), range: span(ranges?.stations[result.id]?.females), given, uses }
    case 'cocoons': {
      const answer = `${grouped(result.femaleCocoons)} female and ${grouped(result.maleCocoons)} male`
      return { of, answer, range: null, given: [...given, nesting], uses }
    }
    case 'tubes': {
      const there = { label: 'Tubes there', text: result.tubes === null ? 'not said' : grouped(result.tubes) }
      const range = span(ranges?.stations[result.id]?.tubesWanted)
      return { of, answer: `${grouped(result.tubesWanted)} wanted`, range, given: [nesting, there], uses }
    }
    default:
      return null
  }
}

function usesOf(
  figure: ReportTopic['figure'],
  { plan, year, crops, bees }: { plan: Plan; year: number; crops: readonly string[]; bees?: readonly BeeId[] },
): Uses {
  const inUse = bees ?? [
    ...new Set(stationsInUse(plan, year).map(({ id }) => stationSeasonOf(plan, year, id)?.bee ?? plan.bee)),
  ]
  const species = inUse.length > 0 ? inUse : [plan.bee]
  const known = crops.filter(crop => settingsOf(plan).crops[crop] !== undefined)
  const flight: readonly BeeParameterName[] = ['lag', 'spreadDays', 'nestingLife']
  const nesting: readonly BeeParameterName[] = ['emergence', 'establishment']
  const wanted: Uses = { ...nothing, crops: known, crop: ['stockingRate'] }
  const supplied: Uses = {
    site: ['backgroundBlossom', 'referenceCropShare'],
    bees: species,
    bee: ['typicalForagingRadius', 'maxForagingRange', 'effectiveness', ...nesting, ...flight],
    crops: known,
    crop: ['blossomDensity', 'appeal'],
  }
  switch (figure) {
    case 'wanted':
    case 'busiestDay':
      return { ...wanted, crop: ['stockingRate', 'spacing', 'rowSpacing'] }
    case 'supplied':
      return supplied
    case 'coverage':
    case 'shortBy':
    case 'limit':
      return { ...supplied, crop: ['stockingRate', 'blossomDensity', 'appeal'] }
    case 'reach':
      return { ...nothing, bees: species, bee: ['typicalForagingRadius'] }
    case 'timingMatch':
      return { ...nothing, bees: species, bee: flight }
    case 'females':
      return { ...nothing, bees: species, bee: nesting }
    case 'cocoons':
      return { ...nothing, bees: species, bee: [...nesting, 'malesPerFemale'] }
    case 'tubes':
      return { ...nothing, bees: species, bee: ['tubesPerFemale'], site: ['spareTubes'] }
    case 'rules':
      return { ...wanted, crop: ['stockingRate', 'femalesPerPlant'] }
    default:
      return figure satisfies never
  }
}

/** Three figures at least: in the working nothing is rounded to what is honest, since here it is to be followed. */
function exact(value: number | null): string {
  if (value === null) return 'cannot be said'
  return grouped(Math.abs(value) < 100 ? significant(value, 3) : Math.round(value))
}

function females(value: number | null): string {
  return value === null ? exact(value) : `${exact(value)} ${value === 1 ? 'female' : 'females'}`
}

function share(value: number | null): string {
  return value === null ? 'cannot be said' : percent(value)
}

function span(range: Range | null | undefined): string | null {
  return range ? `${exact(range.low)} to ${exact(range.high)}` : null
}

function shares(range: Range | null | undefined): string | null {
  return range ? `${percent(range.low)} to ${percent(range.high)}` : null
}
