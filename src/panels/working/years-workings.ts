import type { BeeParameterName } from '#geo/data/bees'
import type { BeeId } from '#geo/data/own'
import type { Plan } from '#geo/plan/plan'
import type { Change, Comparison } from '#geo/seasons/compare'
import type { Care } from '#geo/seasons/project'
import { carriesText } from '#geo/seasons/project-text'
import { stationYears } from '#geo/seasons/record'
import { significant } from '#geo/wording/plain'
import type { WorkingTopic, YearsFigure } from '../../state/store'
import type { Compared, Projected } from '../../state/years'
import { grouped, percent } from '../../text/words'
import { bandText, careNames } from '../years/ahead/ahead-words'
import { changeText, foundText, shareText } from '../years/compare/compare-words'
import { rules, titles } from './rules'
import type { Given, Uses, Working } from './workings'

type Context = {
  readonly plan: Plan
  readonly compared: Compared | null
  readonly projected: Projected | null
  readonly care: Care
}

const figures: readonly string[] = [
  'seasonChange',
  'whyChanged',
  'coverageFoundBeside',
  'ahead',
] satisfies readonly YearsFigure[]

/** Whether a figure is one of several seasons. */
export function isYearsFigure(figure: WorkingTopic['figure']): figure is YearsFigure {
  return figures.includes(figure)
}

const nothing: Uses = { site: [], bees: [], bee: [], crops: [], crop: [] }
const growth: readonly BeeParameterName[] = [
  'emergence',
  'establishment',
  'tubesUsedPerFemale',
  'cellsPerTube',
  'femaleShare',
]

type Body = Pick<Working, 'of' | 'answer' | 'given' | 'uses'>

/** How a figure of several seasons came about; null where there is none (any more). */
export function yearsWorking(figure: YearsFigure, id: string | null, context: Context): Working | null {
  const { plan, compared, projected, care } = context
  const body =
    figure === 'ahead'
      ? projected && aheadBody(plan, projected, care)
      : compared && comparedBody(figure, id, plan, compared.comparison)
  return body && { title: titles[figure], rule: rules[figure], range: null, isVerdict: false, ...body }
}

function comparedBody(
  figure: Exclude<YearsFigure, 'ahead'>,
  id: string | null,
  plan: Plan,
  comparison: Comparison,
): Body | null {
  const { years, orchard, reasons } = comparison
  const of = `The orchard, ${years[0]} and ${years[1]}`
  switch (figure) {
    case 'seasonChange':
      return changeBody(id, comparison)
    case 'whyChanged': {
      const { change } = orchard.coverage
      const given = reasons.map(({ text, change: part }) => ({ label: text, text: finely(part) }))
      return { of, answer: change === null ? 'cannot be said' : changeText(change), given, uses: nothing }
    }
    case 'coverageFoundBeside': {
      const { from, to } = orchard.found
      const given = years.flatMap(year => countedOf(plan, year))
      const answer = `${foundText(from)} in ${years[0]}, ${foundText(to)} in ${years[1]}`
      return { of, answer, given, uses: { ...nothing, bees: beesOf(plan, years), bee: ['tubesUsedPerFemale'] } }
    }
    default:
      return figure satisfies never
  }
}

function countedOf(plan: Plan, year: number): Given[] {
  return stationYears(plan, year).flatMap(({ name, capped, nested }) =>
    nested === null
      ? []
      : [
          {
            label: `${name}, ${year}`,
            text: `${grouped(capped ?? 0)} capped: ${bandText(nested, value => grouped(significant(value, 2)))} females`,
          },
        ],
  )
}

function changeBody(id: string | null, { years, orchard, plantings }: Comparison): Body | null {
  const line = plantings.find(planting => planting.id === id)
  if (id !== null && line === undefined) return null
  const coverage: Change = line ?? orchard.coverage
  const { wanted, supplied, reach, shortBy } = line ?? orchard
  const shares = ({ from, to }: Change) => `${shareText(from)} in ${years[0]}, ${shareText(to)} in ${years[1]}`
  const counts = ({ from, to }: Change) => `${exact(from)} in ${years[0]}, ${exact(to)} in ${years[1]}`
  const causes = (line ?? orchard).causes
  const parts = causes === null ? [] : Object.entries(causes).filter(([, part]) => part !== 0)
  const given: Given[] = [
    { label: 'Coverage', text: shares(coverage) },
    { label: 'Females wanted', text: counts(wanted) },
    { label: 'Females supplied', text: counts(supplied) },
    { label: 'Short by', text: counts(shortBy) },
    { label: 'In reach', text: shares(reach) },
    ...(line === undefined ? [] : [{ label: 'In time', text: shares(line.timingMatch) }]),
    ...parts.map(([cause, part]) => ({
      label: `Part: ${causeLabels[cause as keyof typeof causeLabels]}`,
      text: finely(part),
    })),
  ]
  const { change } = coverage
  const answer = change === null ? 'Not known, or not there, in both seasons' : changeText(change)
  return { of: `${line?.name ?? 'The orchard'}, ${years[0]} and ${years[1]}`, answer, given, uses: nothing }
}

const causeLabels = {
  plantings: 'what stands in the ground',
  stations: 'station places',
  stock: 'stock and batches',
  bloom: 'bloom dates',
  weather: 'weather',
  parameters: 'figures',
} as const

function aheadBody(plan: Plan, { from, ways }: Projected, care: Care): Body {
  const projection = ways[care]
  const keeping: BeeParameterName = care === 'takenIn' ? 'keepingTakenIn' : 'keepingOutside'
  const given: Given[] = [
    { label: 'Care', text: careNames[care] },
    {
      label: 'Share of each harvest kept',
      text: care === 'outside' ? 'all, each station its own' : percent(projection.shareKept),
    },
    ...stationYears(plan, from).map(({ name, released, capped, daughters }) => ({
      label: `${name}, ${from}`,
      text: `${grouped(released.females)} female cocoons set out; ${capped === null ? 'tubes not counted' : `${grouped(capped)} capped`}; ${daughters === null ? 'nests not opened' : `${grouped(Math.round(daughters.count))} daughters found`}`,
    })),
  ]
  const uses: Uses = {
    ...nothing,
    bees: beesOf(plan, [from]),
    bee: [...growth, keeping, 'tubesPerFemale'],
    site: ['spareTubes'],
  }
  return { of: `All stations after ${from}`, answer: carriesText(projection, percent), given, uses }
}

function beesOf(plan: Plan, years: readonly number[]): readonly BeeId[] {
  return [...new Set(years.flatMap(year => stationYears(plan, year).map(({ bee }) => bee)))]
}

/** In the working a part is told to a tenth of a point, so that the sum can be followed. */
function finely(part: number): string {
  const tenths = Math.round(Math.abs(part) * 1000) / 10
  if (tenths === 0) return part === 0 ? 'none' : 'under 0.1 points'
  return `${part > 0 ? '+' : '−'}${tenths.toFixed(1)} points`
}

function exact(value: number | null): string {
  if (value === null) return 'not there'
  return grouped(Math.abs(value) < 100 ? significant(value, 3) : Math.round(value))
}
