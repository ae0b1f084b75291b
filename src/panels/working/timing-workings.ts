import type { BeeParameterName } from '#geo/data/bees'
import type { Plan } from '#geo/plan/plan'
import { dateText } from '#geo/time/date-text'
import type { TimingFigure, WorkingTopic } from '../../state/store'
import type { Advised, Typical } from '../../state/timing'
import { withUnit } from '../../text/units'
import { counted, grouped, percent } from '../../text/words'
import { batchesText } from '../bloom/advice-words'
import { basisText, predictedText, predictionOf } from '../bloom/predicted-line'
import { cropTitle } from '../titles'
import { rules, titles } from './rules'
import type { Given, Uses, Working } from './workings'

type Context = {
  readonly plan: Plan
  readonly year: number
  readonly advised: Advised | null
  readonly typical: Typical | null
  /** Coverage of the orchard with the season's own weather. */
  readonly coverage: number | null
}

const figures: readonly string[] = [
  'advisedCoverage',
  'typicalCoverage',
  'predictedBloom',
] satisfies readonly TimingFigure[]

/** Whether a figure is one of the season's timing. */
export function isTimingFigure(figure: WorkingTopic['figure']): figure is TimingFigure {
  return figures.includes(figure)
}

const nothing: Uses = { site: [], bees: [], bee: [], crops: [], crop: [] }
const flight: readonly BeeParameterName[] = ['lag', 'spreadDays', 'nestingLife']

type Body = Pick<Working, 'of' | 'answer' | 'given' | 'uses'>

/** How a figure of advice or weather came about; null where there is none (any more). */
export function timingWorking(figure: TimingFigure, id: string | null, context: Context): Working | null {
  const body = bodyOf(figure, id, context)
  return body && { title: titles[figure], rule: rules[figure], range: null, isVerdict: false, ...body }
}

function bodyOf(figure: TimingFigure, id: string | null, context: Context): Body | null {
  switch (figure) {
    case 'advisedCoverage':
      return adviceBody(context)
    case 'typicalCoverage':
      return typicalBody(context)
    case 'predictedBloom':
      return id === null ? null : predictedBody(id, context)
    default:
      return figure satisfies never
  }
}

function predictedBody(crop: string, { plan, year }: Context): Body | null {
  const found = predictionOf(plan, year, crop)
  if (found === null) return null
  const { heat } = found
  const days = (value: number) => `${grouped(Math.round(value))} degree-days (°C)`
  const given: Given[] = [{ label: 'Taken', text: basisText(plan, found) }]
  if (heat !== null) {
    given.push(
      { label: 'Counted above', text: `${withUnit(heat.base, 'temperature', plan.units)} from ${dateText(heat.from)}` },
      { label: heat.isRescaled ? 'Total, by what you saw' : 'Total of the table', text: days(heat.total) },
      ...heat.seasons.map(seen => ({
        label: `You saw full bloom on ${dateText(seen.full)}`,
        text: days(seen.total),
      })),
      { label: heat.until === null ? 'So far' : `So far, to ${dateText(heat.until)}`, text: days(heat.sum) },
      ...(heat.bridged > 0 ? [{ label: 'Missing days bridged', text: String(heat.bridged) }] : []),
    )
  }
  return { of: `${cropTitle(plan, crop)} in ${year}`, answer: predictedText(found), given, uses: nothing }
}

function adviceBody({ advised }: Context): Body | null {
  const reached = advised?.advice.coverage ?? null
  if (advised === null || reached === null) return null
  const { advice, year, options } = advised
  const share = (value: number | null) => (value === null ? 'cannot be said' : percent(value))
  const given: Given[] = [
    ...advice.bees.flatMap(({ batches, stations, firstCrop }) => [
      { label: counted(stations.length, 'station'), text: batchesText(batches) },
      ...(firstCrop === null
        ? []
        : [{ label: `First to open there: ${firstCrop.name}`, text: dateText(firstCrop.date) }]),
    ]),
    { label: 'All at once when the first crop opens', text: share(advice.atFirstCrop) },
    { label: 'The plan’s own dates', text: share(advice.own) },
  ]
  const uses: Uses = { ...nothing, bees: advice.bees.map(({ bee }) => bee), bee: flight }
  const where = options.scope === 'orchard' ? 'All stations' : 'One station and what is in its range'
  return { of: `${where} in ${year}`, answer: `about ${percent(reached)}`, given, uses }
}

function typicalBody({ typical, coverage }: Context): Body | null {
  if (typical === null || typical.coverage === null) return null
  const given: Given[] = [
    { label: 'With the season’s weather', text: coverage === null ? 'cannot be said' : `about ${percent(coverage)}` },
  ]
  const bees = [typical.plan.bee]
  const uses: Uses = { ...nothing, site: ['typicalFlyingHours'], bees, bee: ['flightFrom', 'flightFull'] }
  return {
    of: `The orchard in ${typical.year}, without its weather`,
    answer: `about ${percent(typical.coverage)}`,
    given,
    uses,
  }
}
