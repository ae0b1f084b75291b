import { bees } from '#geo/data/bees'
import type { Plan } from '#geo/plan/plan'
import type { Question } from '#geo/siting/question'
import type { Caution, Suggestion, Thinning } from '#geo/siting/suggestion'
import { dateText } from '#geo/time/date-text'
import { listed, oneLine } from '#geo/wording/plain'
import { type Column, pairs, table, wrapped } from './table'
import { counted, estimate, grouped, percent } from './words'

const left = (head: string): Column => ({ head, align: 'left' })
const right = (head: string): Column => ({ head, align: 'right' })

/** A suggestion for reading. */
export function suggestText(plan: Plan, question: Question, suggestion: Suggestion): string {
  const { year, before, after, stations, plantings, places, thinning, cautions } = suggestion
  const sure = stations.filter(({ bought }) => bought).reduce((sum, each) => sum + each.sure, 0)
  return [
    `${oneLine(plan.name) || 'Plan without a name'}, season ${year}`,
    summary(question, suggestion),
    verdict(question, suggestion),
    '',
    pairs([
      ['Coverage now', percent(before.coverage)],
      ['Coverage then', percent(after.coverage)],
      ...(sure === 0 ? [] : [['Nine times in ten sure', `with ${grouped(sure)} female cocoons to buy`] as const]),
      ['Places looked at', grouped(places.count)],
      ...(places.pitch === 0 ? [] : [['With twice as many', thinningText(thinning)] as const]),
    ]),
    '',
    'Stations to add',
    table(
      [
        left('Station'),
        right('East'),
        right('North'),
        left('Bee'),
        right('Female cocoons'),
        right('Male cocoons'),
        right('Tubes'),
      ],
      stations.map(({ id, at, bee, femaleCocoons, maleCocoons, tubes }) => [
        id,
        at[0].toFixed(6),
        at[1].toFixed(6),
        bees[bee].name,
        grouped(femaleCocoons),
        grouped(maleCocoons),
        grouped(tubes),
      ]),
    ),
    '',
    ...stations.map(({ id, why, releases }) => {
      const dates = listed(releases.map(({ date, females }) => `${grouped(females)} on ${dateText(date)}`))
      return wrapped(`${id}: ${oneLine(why)} Female cocoons: ${dates}.`, 100, '  ')
    }),
    '',
    'Plantings',
    table(
      [left('Planting'), right('Now'), right('Then')],
      plantings.map(planting => [oneLine(planting.name), percent(planting.before), percent(planting.after)]),
    ),
    ...cautions.map(caution => `\n${wrapped(cautionText(caution, plan), 100, '')}`),
    '',
  ].join('\n')
}

function summary(question: Question, { stations, after, reached, plantings }: Suggestion): string {
  if (stations.length === 0) {
    return reached === true
      ? 'Every planting has the target already.'
      : question.kind === 'target'
        ? `No layout was found that gives every planting ${percent(question.coverage)} of what it wants.`
        : 'There is no place for a station that would help.'
  }
  const cocoons = stations.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)
  const buys = `${counted(stations.length, 'station')} with ${grouped(cocoons)} female cocoons`
  if (question.kind !== 'target') return `${buys} would bring coverage to ${percent(after.coverage)}.`
  if (reached === true) return `${buys} would give every planting ${percent(question.coverage)} of what it wants.`
  const short = plantings.filter(planting => planting.after !== null && planting.after < question.coverage - 1e-6)
  return `${buys} would leave ${counted(short.length, 'planting')} under ${percent(question.coverage)}.`
}

/** How good the answer is: what no other could exceed. */
function verdict(question: Question, { bound, after, cost, stations, reached }: Suggestion): string {
  if (question.kind === 'target') {
    if (stations.length === 0 && reached !== true) return 'What it would cost is not known.'
    if (bound.cost === undefined || !Number.isFinite(bound.cost))
      return 'No stock at these places reaches the target everywhere.'
    if (bound.proven) return 'No other layout of these places costs less.'
    const share = cost > 0 ? (100 * (cost - bound.cost)) / cost : 0
    return `It costs at most ${share.toFixed(1)}% more than the cheapest layout of these places could.`
  }
  if (bound.proven) return 'Proven: no other layout of these places covers more.'
  return `No other layout of these places covers more than ${shareText(bound.coverage)}; this one covers ${shareText(after.coverage)}.`
}

/** What places between those that were looked at would add. */
function thinningText(thinning: Thinning | null): string {
  if (thinning === null) return 'not measured: it would take too long here'
  const { places, doubled, loss } = thinning
  if (doubled <= places) return 'there are no others'
  return loss < 0.0005 ? 'nothing better was found' : `${(100 * loss).toFixed(1)}% more would be covered`
}

/** Percent with one decimal: an answer and its bound often lie nearer than a whole one. */
function shareText(share: number | null): string {
  return share === null ? 'not known' : `${(100 * share).toFixed(1)}%`
}

function cautionText(caution: Caution, plan: Plan): string {
  const nameOf = (id: string) => oneLine(plan.features.find(feature => feature.id === id)?.properties.name || id)
  switch (caution.kind) {
    case 'few-places':
      return `There is room for ${counted(caution.placed, 'station')} only, not for ${caution.asked}: others would stand too near.`
    case 'large-stations':
      return `Stations of ${grouped(caution.tubes)} tubes are large: over ${caution.most} tubes, a second place does more good than more tubes.`
    case 'more-than-wanted':
      return `All stations together would hold ${estimate(caution.females)} nesting females for ${estimate(caution.wanted)} wanted: make sure that the blossom can feed them.`
    case 'not-moved':
      return `Stays where it is, having no bees to take along or other bees than the new ones: ${listed(caution.stations.map(nameOf))}.`
    case 'no-bloom':
      return `Left out, for they have no bloom dates: ${listed(caution.plantings.map(nameOf))}.`
    case 'no-layout':
      return `Stations stand too near one another, or ${caution.tubes} tubes each are too few: allow more tubes or less distance, set cocoons out on more dates, or ask for less than ${percent(caution.coverage)}.`
    case 'out-of-reach':
      return `Out of reach of the target from all places: ${listed(caution.plantings.map(({ id, most }) => `${nameOf(id)} (at most ${percent(most)})`))}.`
    default:
      return caution satisfies never
  }
}
