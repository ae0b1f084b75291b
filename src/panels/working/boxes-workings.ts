import type { BeeId } from '#geo/data/own'
import type { SuggestedStation } from '#geo/siting/suggestion'
import type { Stock } from '#geo/stocking/stock'
import { chanceOf } from '#geo/stocking/sure'
import { significant } from '#geo/wording/plain'
import type { Ask, BoxesState, Stocked, Suggested } from '../../state/boxes'
import { placeNames } from '../../state/boxes-actions'
import { featureById } from '../../state/selectors'
import type { BoxesFigure, WorkingTopic } from '../../state/store'
import { grouped, percent } from '../../text/words'
import { boundWords, ceiling, finely } from '../boxes/answer-words'
import { money, priceNames } from '../boxes/ask-words'
import { type Shopping, shoppingForPlaces, shoppingForStock } from '../boxes/shopping'
import { titleOf } from '../titles'
import { rules, titles } from './rules'
import type { Given, Uses, Working } from './workings'

type Context = {
  readonly suggested: Suggested | null
  readonly stocked: Stocked | null
  readonly boxes: BoxesState
}

const figures: readonly string[] = [
  'wouldBe',
  'bound',
  'gain',
  'placeCocoons',
  'placeTubes',
  'cost',
  'sure',
] satisfies readonly BoxesFigure[]

/** Whether a figure is one of a suggestion. */
export function isBoxesFigure(figure: WorkingTopic['figure']): figure is BoxesFigure {
  return figures.includes(figure)
}

type BoxesTopic = { readonly figure: BoxesFigure; readonly id: string | null }

const nothing: Uses = { site: [], bees: [], bee: [], crops: [], crop: [] }

/** How a figure of a suggestion came about; null where the suggestion does not have it. */
export function boxesWorking({ figure, id }: BoxesTopic, { suggested, stocked, boxes }: Context): Working | null {
  const body =
    suggested !== null
      ? bodyOf(figure, id, suggested, boxes)
      : stocked !== null
        ? stockBody(figure, id, stocked, boxes)
        : null
  if (body === null) return null
  const rule = suggested === null && figure === 'bound' ? stockRule : rules[figure]
  return { title: titles[figure], rule, range: null, isVerdict: false, ...body }
}

type Body = Pick<Working, 'of' | 'answer' | 'given' | 'uses'>

function bodyOf(figure: BoxesFigure, id: string | null, answer: Suggested, boxes: BoxesState): Body | null {
  const { suggestion, year, plan } = answer
  const station = suggestion.stations.find(each => each.id === id)
  switch (figure) {
    case 'wouldBe': {
      const row =
        id === null
          ? { name: 'The orchard', before: suggestion.before.coverage, after: suggestion.after.coverage }
          : suggestion.plantings.find(planting => planting.id === id)
      if (row === undefined) return null
      const given = [
        { label: 'Now', text: row.before === null ? 'cannot be said' : finely(row.before) },
        ...(id === null ? weightsOf(answer) : []),
      ]
      const text = row.after === null ? 'cannot be said' : `about ${finely(row.after)}`
      return { of: `${row.name} in ${year}, as suggested`, answer: text, given, uses: nothing }
    }
    case 'bound': {
      const { bound, places } = suggestion
      const text = bound.proven
        ? 'Proven best'
        : bound.coverage === null
          ? 'Not known'
          : `At most ${ceiling(bound.coverage, 1)}`
      const pitch = places.pitch === 0 ? 'your own' : `about ${significant(places.pitch, 2)} m`
      const given = [
        { label: 'Places looked at', text: grouped(places.count) },
        { label: 'Apart', text: pitch },
        ...weightsOf(answer),
      ]
      return { of: boundWords(suggestion, answer.wish.question), answer: text, given, uses: nothing }
    }
    case 'cost':
      return costBody('New stations that are taken', shoppingForPlaces(answer, boxes), boxes)
    case 'sure':
      return sureBody(`New stations that are taken, ${year}`, shoppingForPlaces(answer, boxes), id)
    case 'gain':
    case 'placeCocoons':
    case 'placeTubes':
      if (station === undefined) return null
      return stationBody(figure, station, {
        name: placeNames(plan, suggestion.stations).get(station.id)?.name ?? station.id,
        gains: station.gains,
        year,
      })
    default:
      return figure satisfies never
  }
}

/** The weights that plantings were given, where they do not all count alike. */
function weightsOf({ plan, wish, suggestion }: Suggested): Given[] {
  const weights = wish.weights ?? {}
  const own = suggestion.plantings.filter(({ id }) => (weights[id] ?? 1) !== 1)
  if (own.length === 0) return []
  const names = own.map(({ id, name }) => {
    const feature = featureById(plan, id)
    return { label: `Each female at ${feature ? titleOf(feature) : name} counts`, text: timesText(weights[id] ?? 1) }
  })
  return own.length < suggestion.plantings.length
    ? [...names, { label: 'Each female at any other planting counts', text: timesText(1) }]
    : names
}

function timesText(weight: number): string {
  return weight === 0 ? 'not at all' : weight === 1 ? 'once' : `${grouped(weight)} times`
}

function costBody(of: string, { lines, total }: Shopping, { ask }: BoxesState): Body {
  const given: Given[] = [
    ...lines.map(({ item, count, price, sum }) => ({
      label: item,
      text: `${grouped(count)} at ${money(price)}: ${money(sum)}`,
    })),
    ...assumedOf(ask),
  ]
  return { of, answer: money(total), given, uses: { ...nothing, site: ['spareTubes'] } }
}

function sureBody(of: string, { sure }: Shopping, id: string | null): Body | null {
  const found = sure.find(({ bee }) => bee === id)
  if (found === undefined) return null
  const { bee, females, share, cocoons, sure: many } = found
  const chance = (count: number) => `${grouped(count)} cocoons: ${percent(chanceOf(count, females, share))}`
  const given: Given[] = [
    { label: 'Nesting females counted on', text: grouped(females) },
    { label: 'Chance that a cocoon gives one', text: percent(share) },
    { label: 'Chance of as many or more', text: `${chance(cocoons)}; ${chance(many)}` },
  ]
  const uses: Uses = { ...nothing, bees: [bee], bee: ['emergence', 'establishment'] }
  return { of, answer: `${grouped(many)} female cocoons`, given, uses }
}

const stockRule: readonly string[] = [
  'Service is in proportion to the bees at a station, so the fewest nesting females for a target are the answer to a linear programme: as few as possible in all, each planting served with what the target asks, no station over what its tubes hold.',
  'Coverage never counts more at a plant than it wants, which the plain programme does not know: it is therefore asked again with cuts until the true coverage holds. Then cocoons are rounded to whole sets, checked by the true coverage, and topped up where it falls short.',
  'The bound is the programme’s own: no stock that does as much has fewer nesting females.',
]

function stockBody(figure: BoxesFigure, id: string | null, stocked: Stocked, boxes: BoxesState): Body | null {
  const { result, year } = stocked
  const station = result.stations.find(each => each.id === id)
  switch (figure) {
    case 'bound': {
      const given = [{ label: 'Nesting females of this answer', text: exactly(result.females) }]
      return {
        of: `All stations in ${year}`,
        answer: `${exactly(result.bound)} females at least`,
        given,
        uses: nothing,
      }
    }
    case 'cost':
    case 'sure': {
      const shopping = shoppingForStock(stocked, boxes)
      if (figure === 'sure') return sureBody(`All stations in ${year}`, shopping, id)
      return costBody(`Cocoons and tubes of all stations in ${year}`, shopping, boxes)
    }
    case 'placeCocoons':
    case 'placeTubes':
      return station === undefined ? null : stationBody(figure, station, { name: station.name, gains: [], year })
    case 'wouldBe': {
      const planting = result.plantings.find(each => each.id === id)
      const coverage = id === null ? result.after.coverage : (planting?.coverage ?? null)
      if (coverage === null) return null
      const of = `${planting?.name ?? 'The orchard'} in ${year}, with this stock`
      return { of, answer: `about ${finely(coverage)}`, given: [], uses: nothing }
    }
    case 'gain':
      return null
    default:
      return figure satisfies never
  }
}

function exactly(females: number): string {
  return grouped(significant(females, 4))
}

function assumedOf({ prices }: Ask): Given[] {
  const assumed = priceNames.filter(({ name }) => prices[name] === undefined).map(({ label }) => label.toLowerCase())
  return assumed.length === 0 ? [] : [{ label: 'Prices assumed', text: assumed.join('; ') }]
}

function stationBody(
  figure: 'gain' | 'placeCocoons' | 'placeTubes',
  { females, femaleCocoons, maleCocoons, tubes, bee, sure }: Stock & { readonly bee: BeeId; readonly sure: number },
  { name, gains, year }: { readonly name: string; readonly gains: SuggestedStation['gains']; readonly year: number },
): Body {
  const of = `${name}, suggested for ${year}`
  const nesting: Given = { label: 'Nesting females', text: grouped(significant(females, 3)) }
  switch (figure) {
    case 'gain': {
      const sum = gains.reduce((total, each) => total + each.females, 0)
      const given = gains.map(({ name: label, females: more }) => ({ label, text: grouped(significant(more, 3)) }))
      return { of, answer: `${grouped(significant(sum, 3))} females served`, given, uses: nothing }
    }
    case 'placeCocoons':
      return {
        of,
        answer: `${grouped(femaleCocoons)} female and ${grouped(maleCocoons)} male`,
        given: [nesting, { label: 'Female cocoons to be nine times in ten sure here', text: grouped(sure) }],
        uses: { ...nothing, bees: [bee], bee: ['emergence', 'establishment', 'malesPerFemale'] },
      }
    case 'placeTubes':
      return {
        of,
        answer: grouped(tubes),
        given: [nesting],
        uses: { ...nothing, bees: [bee], bee: ['tubesPerFemale'], site: ['spareTubes'] },
      }
    default:
      return figure satisfies never
  }
}
