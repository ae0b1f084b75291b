import { thresholds } from '#geo/data/thresholds'
import type { Plan } from '#geo/plan/plan'
import { significant } from '#geo/wording/plain'
import type { Found } from '../../state/found'
import { orchardYearOf, stationStoriesOf, stationYearsOf } from '../../state/selectors'
import type { FoundFigure, WorkingTopic } from '../../state/store'
import { grouped, percent } from '../../text/words'
import { adviceWords, evidenceWords } from '../years/advice-words'
import { costText } from '../years/covered-cost-text'
import { causeLines, notCounted, orchardLines, shareSpreadText, stationLines } from '../years/found-figures'
import type { Given, Uses, Working } from './workings'

type Context = { readonly plan: Plan; readonly year: number; readonly found: Found | null }

const titles: Readonly<Record<FoundFigure, string>> = {
  nested: 'Females that nested',
  nestedShare: 'Share of the females set out that nested',
  cellsPerTube: 'Cells in a tube',
  daughterShare: 'Females among the cocoons',
  lost: 'Cells lost',
  harvest: 'Healthy cocoons',
  return: 'Daughters for each female set out',
  stockLeft: 'Stock after the share-out',
  coverageFound: 'Coverage as found',
  coveredCost: 'Cost of covered ground',
  advice: 'What the counts speak for',
}

const missing = 'Stations without a count are left out on both sides. What was not counted is never taken for none.'

const rules: Readonly<Record<FoundFigure, readonly string[]>> = {
  nested: [
    'Most tubes seen capped, divided by the tubes that a female fills. One female may fill one tube or several, so the range goes from the most that she fills to the least.',
    missing,
  ],
  nestedShare: [
    'Females that nested, divided by the female cocoons set out at the stations that were counted. More than all of them means that others moved in, or that each filled more tubes than most do.',
  ],
  cellsPerTube: ['Cells in the opened tubes, divided by the tubes opened.', missing],
  daughterShare: ['Healthy female cocoons, divided by healthy cocoons of both sexes.', missing],
  lost: [
    'Cells lost, over all causes, divided by the cells that were opened.',
    'Where tubes were written down one by one and some stay closed, the range says where the share of all tubes lies, 19 times in 20. Tubes differ more than cells do, so it is reckoned from how much the tubes differ.',
    missing,
  ],
  harvest: [
    'Healthy cocoons counted in the opened tubes. Where some capped tubes stay closed, they are taken to hold on average what the opened ones held; the range, if there is one, says how far that may be off, 19 times in 20.',
    missing,
  ],
  return: [
    'Healthy female cocoons found, divided by the female cocoons set out at the stations that were opened. Over 1 the stock grows by itself, before the losses of winter.',
    missing,
  ],
  stockLeft: [
    'Healthy cocoons found at all stations that were opened, less those written down as given away. Winter takes its part yet.',
  ],
  coverageFound: [
    'The season is counted again by the same rule as coverage everywhere here, with the females that nested in place of those that the plan reckons with, at each station that was counted; at the others as planned.',
    'The range is that of the females that nested; how sure coverage itself is, stands under Coverage.',
  ],
  coveredCost: [
    'A station, its cocoons and its tubes, each times its price, for all stations in use; divided by the ground of each planting times its coverage as planned.',
    'Prices are the ones that you typed. It is no quotation, and no promise of a crop.',
  ],
  advice: [
    'Move or turn: for as many females set out, it filled far fewer tubes than all stations together, two seasons running. Rest: many cells were lost, and clearly more than the season before. Clean: many cells were lost. Keep: none of these.',
    'Counts speak of what happened, not why: look at sun, mud, wind and rain before you move a station, and never while bees nest in it.',
  ],
}

/** Whether a figure is one of what was found. */
export function isFoundFigure(figure: WorkingTopic['figure']): figure is FoundFigure {
  return Object.hasOwn(titles, figure)
}

const nothing: Uses = { site: [], bees: [], bee: [], crops: [], crop: [] }

/** How a figure of what was found came about; null where there is none (any more). */
export function foundWorking(figure: FoundFigure, id: string | null, context: Context): Working | null {
  const body = bodyOf(figure, id, context)
  return body && { title: titles[figure], rule: rules[figure], range: null, isVerdict: false, ...body }
}

type Body = Pick<Working, 'of' | 'answer' | 'given' | 'uses'>

function bodyOf(figure: FoundFigure, id: string | null, context: Context): Body | null {
  const { plan, year, found } = context
  if (figure === 'advice') return id === null ? null : adviceBody(id, context)
  if (figure === 'coverageFound' || figure === 'coveredCost') {
    if (found === null || found.year !== year) return null
    const { coverage, costPerCoveredHectare: cost } = found.record
    if (figure === 'coveredCost') {
      return cost === null
        ? null
        : { of: `The orchard in ${year}`, answer: costText(cost, plan.units), given: [], uses: nothing }
    }
    if (coverage.found === null) return null
    const given = [
      { label: 'Coverage as planned', text: coverage.planned === null ? 'cannot be said' : percent(coverage.planned) },
    ]
    return { of: `The orchard in ${year}`, answer: shareSpreadText(coverage.found), given, uses: nothing }
  }
  const stations = stationYearsOf(plan, year)
  const station = stations.find(each => each.id === id)
  if (id !== null && station === undefined) return null
  const lines = station ? stationLines(station) : orchardLines(orchardYearOf(plan, year))
  const line = lines.find(each => each.figure === figure)
  if (line === undefined) return null
  const of = `${station ? station.name : 'All stations counted'} in ${year}`
  const counts = station ?? { ...orchardYearOf(plan, year), tubesOpened: null }
  const bees = [...new Set((station ? [station] : stations).map(({ bee }) => bee))]
  const uses: Uses =
    figure === 'nested' || figure === 'nestedShare' ? { ...nothing, bees, bee: ['tubesUsedPerFemale'] } : nothing
  const females = typeof counts.released === 'number' ? counts.released : counts.released.females
  const given: Given[] = [
    { label: 'Capped tubes', text: counts.capped === null ? notCounted : grouped(counts.capped) },
    { label: 'Female cocoons set out', text: grouped(females) },
    ...(counts.tubesOpened === null ? [] : [{ label: 'Tubes opened', text: grouped(counts.tubesOpened) }]),
    ...(counts.cellsPerTube === null
      ? []
      : [{ label: 'Cells in a tube', text: grouped(significant(counts.cellsPerTube, 3)) }]),
    ...(figure === 'lost' && counts.losses !== null
      ? causeLines(counts.losses).map(({ cause, cells }) => ({ label: cause, text: grouped(cells) }))
      : []),
  ]
  return { of, answer: line.text, given, uses }
}

function adviceBody(id: string, { plan, year }: Context): Body | null {
  const story = stationStoriesOf(plan, year).find(each => each.id === id)
  if (story === undefined) return null
  const { lossHigh, lossRise, cappedPoor } = thresholds
  const range = ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) =>
    `${percent(value)}, our own choice between ${percent(low)} and ${percent(high)}`
  const given: Given[] = [
    ...story.evidence.map(evidence => ({ label: `Found in ${evidence.year}`, text: evidenceWords(evidence) })),
    { label: 'Many cells lost: over', text: range(lossHigh) },
    { label: 'Clearly more than before: by over', text: range(lossRise) },
    { label: 'Far fewer tubes: under', text: range(cappedPoor) },
  ]
  return { of: `${story.name}, up to ${year}`, answer: adviceWords(story), given, uses: nothing }
}
