import { acceptStock, type StockResult, stockFor } from '#geo/stocking/programme'
import { oneLine } from '#geo/wording/plain'
import { answer, jsonAnswer, type Planned } from './answer'
import { joined, latestYear, noSeasons, openedPlan } from './plan-file'
import { linesBeside, problemLines } from './problems'
import { type Column, pairs, table } from './table'
import { counted, estimate, grouped, notKnown, percent } from './words'

type Options = { readonly isJson: boolean; readonly year: number | null; readonly target: number | null }

/** Fewest bees for a target at the stations there are. */
export function stock(text: string, options: Options): Planned {
  const { plan, ofReading } = openedPlan(text)
  const year = options.year ?? (plan === null ? null : latestYear(plan))
  if (plan === null || year === null) {
    const problems = plan === null ? ofReading : [...ofReading, noSeasons]
    const answerless = options.isJson
      ? jsonAnswer({ year, problems }, problems)
      : answer('', problemLines(problems), problems)
    return { plan: null, answer: answerless }
  }
  const outcome = stockFor(plan, year, options.target === null ? {} : { target: options.target })
  const problems = joined(ofReading, outcome.problems)
  if (!outcome.ok) {
    const answerless = options.isJson
      ? jsonAnswer({ year, problems }, problems)
      : answer('', problemLines(problems), problems)
    return { plan: null, answer: answerless }
  }
  const result = outcome.value
  const told = options.isJson
    ? jsonAnswer({ ...result, problems }, problems)
    : answer(stockText(oneLine(plan.name) || 'Plan without a name', result), linesBeside(problems), problems)
  return { plan: acceptStock(result).apply(plan), answer: told }
}

function stockText(name: string, result: StockResult): string {
  const { year, target, reached, females, bound, before, after, stations, plantings } = result
  const stopping = plantings.filter(({ isStopping }) => isStopping)
  const first = reached
    ? `Every planting gets ${percent(target)} of what it wants from ${estimate(females)} nesting females.`
    : `${counted(stopping.length, 'planting')} cannot get ${percent(target)} of what ${stopping.length === 1 ? 'it wants' : 'they want'} at these stations.`
  const sure = stations.reduce((sum, each) => sum + each.sure, 0)
  return [
    `${name}, season ${year}`,
    first,
    `No stock of these stations does as much with fewer than ${estimate(bound)} nesting females.`,
    '',
    pairs([
      ['Coverage now', percent(before.coverage)],
      ['Coverage then', percent(after.coverage)],
      ['Nine times in ten sure', `with ${grouped(sure)} female cocoons`],
    ]),
    '',
    'Stations',
    table(
      [left('Station'), right('Female cocoons'), right('Male cocoons'), right('Tubes'), right('Tubes hold')],
      stations.map(each => [
        oneLine(each.name),
        grouped(each.femaleCocoons),
        grouped(each.maleCocoons),
        grouped(each.tubes),
        each.most === null ? 'no limit named' : `${grouped(each.most)} female cocoons`,
      ]),
    ),
    '',
    'Plantings',
    table(
      [left('Planting'), right('Coverage'), right('Short by'), right('At most')],
      plantings.map(each => [
        oneLine(each.name),
        percent(each.coverage),
        each.shortBy === null ? notKnown : estimate(each.shortBy),
        percent(each.most),
      ]),
    ),
    '',
  ].join('\n')
}

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })
