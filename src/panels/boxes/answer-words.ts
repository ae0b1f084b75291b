import type { Units } from '#geo/plan/plan'
import type { Caution, SuggestedStation, Suggestion } from '#geo/siting/suggestion'
import { lengthText } from '../../text/units'
import { about, capitalised, counted, honest, listed, percent, points } from '../../text/words'
import { money } from './ask-words'

const numbers = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten']

function inWords(count: number): string {
  return numbers[count] ?? String(count)
}

/** A bound, rounded up: what is said cannot be exceeded is never said too low. */
export function ceiling(share: number, digits = 0): string {
  const scale = 10 ** (2 + digits)
  return `${(Math.ceil(share * scale - 1e-9) / 10 ** digits).toFixed(digits)}%`
}

/** A share to a tenth of a percent, for what is compared closely. */
export function finely(share: number): string {
  return `${(share * 100).toFixed(1)}%`
}

/** "Three more stations lift coverage from about 57% to about 81%; no three on these places can do better than 82%." */
export function answerSentence(suggestion: Suggestion): string {
  const { stations, dropped, before, after, reached, cost } = suggestion
  const fresh = stations.filter(station => station.new).length
  const moved = stations.length - fresh
  if (stations.length === 0 && dropped.length === 0) return 'No place is free for a station within these limits.'
  const parts = [
    fresh > 0 ? `${inWords(fresh).toLowerCase()} more ${fresh === 1 ? 'station' : 'stations'}` : '',
    moved > 0 ? `${fresh > 0 ? '' : 'moving '}${counted(moved, 'station')}${fresh > 0 ? ' moved' : ''}` : '',
    dropped.length > 0 ? `${counted(dropped.length, 'station')} given up` : '',
  ].filter(Boolean)
  const isOne = parts.length === 1 && (fresh === 1 || (fresh === 0 && moved > 0))
  const subject = capitalised(listed(parts))
  if (before.coverage === null || after.coverage === null) return `${subject}; coverage cannot be said without bloom.`
  const change =
    percent(before.coverage) === percent(after.coverage)
      ? `${isOne ? 'leaves' : 'leave'} coverage at about ${percent(after.coverage)}`
      : `${verb(before.coverage, after.coverage, isOne)} coverage from about ${percent(before.coverage)} to ${percent(after.coverage)}`
  const target =
    reached === null
      ? ''
      : reached
        ? ` for about ${money(cost)}, enough in every planting`
        : ', short of what was asked'
  return `${subject} ${change}${target}; ${headBound(suggestion)}.`
}

function verb(before: number, after: number, isOne: boolean): string {
  if (after > before) return isOne ? 'lifts' : 'lift'
  return isOne ? 'lowers' : 'lower'
}

function headBound({ bound, after, stations, reached }: Suggestion): string {
  if (reached === true && bound.cost !== undefined) {
    return bound.proven ? 'nothing cheaper does it on these places' : `nothing under ${money(bound.cost)} can do it`
  }
  const fresh = stations.filter(station => station.new).length
  const whose = fresh > 0 ? `no ${inWords(fresh).toLowerCase()} on these places` : 'no other choice of these places'
  if (bound.proven) return `${whose} can do better`
  if (bound.coverage === null || after.coverage === null) return 'how much better could be done is not known'
  if (bound.coverage - after.coverage < 0.005) return `${whose} can do better by half a point`
  return `${whose} can do better than ${ceiling(bound.coverage)}`
}

/** How good the answer is, and how that is known. */
export function boundWords({ bound, after, places, cost }: Suggestion): string {
  const on = places.pitch === 0 ? `your own ${counted(places.count, 'place')}` : counted(places.count, 'place')
  if (bound.proven) {
    const how =
      bound.method === 'solver' ? 'A general solver has tried all that could be better.' : 'Its bound meets it.'
    return `Proven: of all choices among ${on}, none does better with this stock. ${how}`
  }
  if (bound.cost !== undefined && bound.cost > 0) {
    return `Looked at ${on}. This costs ${money(cost)}; no choice among them that reaches it can cost less than ${money(bound.cost)}. ${methods[bound.method]}`
  }
  if (bound.coverage === null || after.coverage === null) return `Looked at ${on}.`
  const gap = Math.max(0, bound.coverage - after.coverage) * 100
  return `Looked at ${on}. This reaches ${finely(after.coverage)}; no choice among them with this stock can exceed ${ceiling(bound.coverage, 1)}, so at most ${gap < 0.05 ? 'a twentieth of a point' : `${(Math.ceil(gap * 10 - 1e-9) / 10).toFixed(1)} points`} may be missed. ${methods[bound.method]}`
}

const methods: Readonly<Record<Suggestion['bound']['method'], string>> = {
  lagrangian: 'The bound comes from an easier question (Lagrangian relaxation), whose answer no true layout exceeds.',
  solver: 'The bound is as far as a general solver came.',
}

const where: Readonly<Record<SuggestedStation['source'], string>> = {
  own: 'One of your own places',
  station: 'Where it stands now',
  'row-end': 'At the end of a row',
  windbreak: 'Beside shelter',
  boundary: 'On the inner side of the boundary',
  'in-row': 'Between two plants of a row',
  open: 'On open ground',
}

/** Where a suggested station is and what it is near: "At the end of a row; morning side of North hedge, 2 m off; mud 31 m away." */
export function placeWords({ source, notes }: SuggestedStation, units: Units): string {
  const { shelter, mud, isInLane } = notes
  const parts = [
    where[source],
    isInLane ? 'in an alley that tractors may use' : '',
    shelter === null
      ? ''
      : `${shelter.side === 'morning' ? 'morning' : 'evening'} side of ${shelter.name}, ${lengthText(shelter.distance, units)} off`,
    mud === null ? 'no mud is drawn' : `mud ${lengthText(mud, units)} away`,
  ]
  return `${parts.filter(Boolean).join('; ')}.`
}

/** What there is to know beside the answer, each with a plain word on what to do. */
export function cautionText(caution: Caution, nameOf: (id: string) => string): string {
  switch (caution.kind) {
    case 'few-places':
      return `Only ${caution.placed} of ${caution.asked} stations found a place: the rest would stand nearer to others than is set, or on ground that is closed to them. Set less distance, or open more ground.`
    case 'large-stations':
      return `A station here would hold ${caution.tubes} tubes. Beyond about ${caution.most} a second place does more good than a larger one: try more stations with fewer cocoons.`
    case 'more-than-wanted':
      return `With these there would be ${about(caution.females)} nesting females, more than the ${honest(caution.wanted)} that the plantings want, all added up. The blossom may not feed them all: bees that lack food leave, and raise fewer young.`
    case 'no-bloom':
      return `${listed(caution.plantings.map(nameOf))} ${caution.plantings.length === 1 ? 'has' : 'have'} no bloom dates and ${caution.plantings.length === 1 ? 'is' : 'are'} left out of the question.`
    case 'out-of-reach':
      return `Out of reach: ${listed(caution.plantings.map(({ id, most }) => `${nameOf(id)} (at most ${percent(most)})`))}. No stock on these places does it; a place nearer, or a release nearer to its bloom, might.`
    default:
      return caution satisfies never
  }
}

/** "0.4 points less" for what is compared closely. */
export function closeChange(before: number, after: number): string {
  const tenths = Math.round((after - before) * 1000) / 10
  if (tenths === 0) return 'no difference'
  const amount = Math.abs(tenths).toFixed(1)
  return `${amount} ${amount === '1.0' ? 'point' : 'points'} ${tenths > 0 ? 'more' : 'less'}`
}

/** "+24 points", or that nothing can be said. */
export function changeWords(before: number | null, after: number | null): string {
  if (before === null || after === null) return 'cannot be said'
  return Math.round((after - before) * 100) === 0 ? 'no change' : points(after - before)
}
