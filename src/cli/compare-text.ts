import { judging } from '#geo/data/judging-figures'
import type { Plan } from '#geo/plan/plan'
import { pointsText } from '#geo/seasons/cause-text'
import type { Change, Comparison, PlantingComparison } from '#geo/seasons/compare'
import type { Spread } from '#geo/seasons/spread'
import { remarkTexts, type StationChange, stationChanges } from '#geo/seasons/station-change'
import { adviceText, stationStories } from '#geo/seasons/station-story'
import { oneLine } from '#geo/wording/plain'
import { type Column, pairs, table } from './table'
import { estimate, notKnown, percent } from './words'

/** A comparison in words and tables. */
export function compareText(plan: Plan, comparison: Comparison): string {
  const { years, orchard, reasons, plantings, stations } = comparison
  const [from, to] = years
  const { coverage, found } = orchard
  const name = oneLine(plan.name) || 'Plan without a name'
  const counted = stationChanges(plan, years, stations)
  const remarked = counted.flatMap(remarks)
  const stories = stationStories(plan, Math.max(from, to)).filter(({ advice }) => advice !== null)
  const why =
    reasons.length === 0
      ? []
      : ['', 'Why it changed', pairs(reasons.map(({ text, change }) => [text, pointsText(change)] as const))]
  return [
    `${name}, ${from} beside ${to}`,
    coverage.change === null
      ? 'The orchard’s coverage is not known in both seasons.'
      : `The orchard's coverage was ${percent(coverage.from)} and is ${percent(coverage.to)}: ${pointsText(coverage.change)}.`,
    ...why,
    '',
    'Orchard',
    table(heads(years), [
      ['Females wanted', estimate(orchard.wanted.from), estimate(orchard.wanted.to), ''],
      ['Females that reach them', estimate(orchard.supplied.from), estimate(orchard.supplied.to), ''],
      ['In reach', percent(orchard.reach.from), percent(orchard.reach.to), points(orchard.reach)],
      ['Coverage as planned', percent(coverage.from), percent(coverage.to), points(coverage)],
      ['Coverage as found', shares(found.from), shares(found.to), ''],
    ]),
    '',
    'Plantings',
    table(
      [left('Planting'), right(String(from)), right(String(to)), right('Change'), right('Timing'), left('Mostly by')],
      plantings.map(each => [
        oneLine(each.name),
        there(each, each.from, each.wanted.from),
        there(each, each.to, each.wanted.to),
        points(each),
        points(each.timingMatch),
        mostlyBy(each),
      ]),
    ),
    ...(counted.length === 0
      ? []
      : [
          '',
          'Stations counted in both seasons',
          table(
            [
              left('Station'),
              right('Capped'),
              right('Tubes a female cocoon'),
              right('Of those set out nested'),
              right('Cells lost'),
              right('Return'),
            ],
            counted.map(({ name: station, from: then, to: now, cappedEach }) => [
              oneLine(station),
              both(then.capped, now.capped, String),
              both(cappedEach.from, cappedEach.to, value => value.toFixed(1)),
              both(then.establishment?.mid ?? null, now.establishment?.mid ?? null, percent),
              both(then.lossShare?.share ?? null, now.lossShare?.share ?? null, percent),
              both(then.return, now.return, value => value.toFixed(1)),
            ]),
          ),
        ]),
    ...(remarked.length === 0
      ? []
      : ['', 'Written down where tubes changed most', pairs(remarked.map(([name, text]) => [name, text] as const))]),
    ...(stories.length === 0
      ? []
      : [
          '',
          'What the counts speak for',
          pairs(stories.map(story => [oneLine(story.name), adviceText(story)] as const)),
        ]),
    '',
  ].join('\n')
}

/** What was written down at a station whose tubes for each female clearly changed. */
function remarks({ name, times, remarks: both }: StationChange): [string, string][] {
  if (times === null || (times < judging.toldTimes && times > 1 / judging.toldTimes)) return []
  return both.flatMap(remarkTexts).map(text => [oneLine(name), oneLine(text)])
}

function heads([from, to]: readonly [number, number]): readonly Column[] {
  return [left(''), right(String(from)), right(String(to)), right('Change')]
}

function points({ change }: Change): string {
  return change === null ? '' : pointsText(change)
}

function shares(spread: Spread | null): string {
  return spread === null ? 'not counted' : `${percent(spread.low)} to ${percent(spread.high)}`
}

function there(_: PlantingComparison, coverage: number | null, wanted: number | null): string {
  return wanted === null ? 'not there' : percent(coverage)
}

function mostlyBy({ causes, change }: PlantingComparison): string {
  if (causes === null || change === null) return ''
  const [most] = Object.entries(causes).sort(([, a], [, b]) => Math.abs(b) - Math.abs(a))
  return most === undefined || Math.abs(most[1]) < 0.005 ? '' : `${most[0]} (${pointsText(most[1])})`
}

function both(from: number | null, to: number | null, text: (value: number) => string): string {
  const shown = (value: number | null) => (value === null ? notKnown : text(value))
  return `${shown(from)} > ${shown(to)}`
}

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })
