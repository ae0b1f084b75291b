import type { Units } from '#geo/plan/plan'
import type { Question, SuggestOptions } from '#geo/siting/question'
import type { Caution, SuggestedStation, Suggestion } from '#geo/siting/suggestion'
import { listed, significant } from '#geo/wording/plain'
import { lengthText } from '../../text/units'
import { capitalised, counted, grouped, percent, points } from '../../text/words'
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

/** A number of money for a sentence: three figures. */
function aboutMoney(amount: number): string {
  return `about ${money(significant(amount, 3))}`
}

/** The first few of many names: "Plums, Pears and 12 more". */
export function someOf(names: readonly string[], most = 4): string {
  if (names.length <= most + 1) return listed(names)
  return `${names.slice(0, most).join(', ')} and ${names.length - most} more`
}

/** "Three more stations lift coverage from about 57% to 81%; no three on these places can do better than 82%." */
export function answerSentence(
  suggestion: Suggestion,
  question: Question,
  roles: SuggestOptions['roles'] = {},
): string {
  const { stations, spared, before, after, reached, cost } = suggestion
  const given = suggestion.dropped.length - spared.length
  const fresh = stations.filter(station => station.new).length
  const reused = stations.filter(station => station.reused).length
  const moved = stations.length - fresh - reused
  if (stations.length === 0 && suggestion.dropped.length === 0) return emptySentence(suggestion, question)
  const parts = [
    fresh > 0 ? `${inWords(fresh).toLowerCase()} more ${fresh === 1 ? 'station' : 'stations'}` : '',
    reused > 0 ? `${inWords(reused).toLowerCase()} that ${reused === 1 ? 'stands' : 'stand'} unused` : '',
    moved > 0 ? (fresh > 0 ? `${inWords(moved).toLowerCase()} moved` : `moving ${counted(moved, 'station')}`) : '',
    spared.length > 0 ? `${inWords(spared.length).toLowerCase()} of yours spared` : '',
    given > 0 ? `${counted(given, 'station')} given up` : '',
  ].filter(Boolean)
  const isOne = parts.length === 1 && (fresh === 1 || reused === 1 || moved > 0)
  const subject = capitalised(listed(parts))
  if (before.coverage === null || after.coverage === null) return `${subject}; coverage cannot be said without bloom.`
  const change =
    percent(before.coverage) === percent(after.coverage)
      ? `${isOne ? 'leaves' : 'leave'} coverage at about ${percent(after.coverage)}`
      : `${verb(before.coverage, after.coverage, isOne)} coverage from about ${percent(before.coverage)} to ${percent(after.coverage)}`
  const target =
    question.kind !== 'target'
      ? ''
      : reached
        ? ` for ${aboutMoney(cost)}, at least ${percent(question.coverage)} in every planting`
        : `, short of ${percent(question.coverage)} in every planting`
  return `${subject} ${change}${target}; ${headBound(suggestion, question, moveWords({ question, roles }) !== '')}.`
}

function emptySentence({ reached, before }: Suggestion, question: Question): string {
  switch (question.kind) {
    case 'target':
      return reached
        ? `Every planting has at least ${percent(question.coverage)} already: nothing is needed.`
        : `No stations were found on these places that give every planting ${percent(question.coverage)}.`
    case 'money':
      return 'That is too little for a station with cocoons and tubes at these prices.'
    default:
      return before.coverage === null
        ? 'Nothing can be said without bloom dates.'
        : 'No place is free for a station within these limits.'
  }
}

function verb(before: number, after: number, isOne: boolean): string {
  if (after > before) return isOne ? 'lifts' : 'lift'
  return isOne ? 'lowers' : 'lower'
}

/** Which plantings an answer leaves short of the target, the worst first. */
export function shortWords({ stations, plantings }: Suggestion, target: number): string {
  const short = plantings
    .flatMap(({ name, after }) => (after !== null && after < target - 1e-6 ? [{ name, after }] : []))
    .sort((a, b) => a.after - b.after)
  if (stations.length === 0 || short.length === 0) return ''
  return `Short of ${percent(target)}: ${someOf(short.map(({ name, after }) => `${name} (${finely(after)})`))}.`
}

function headBound(
  { bound, after, stations, reached }: Suggestion,
  question: Question,
  isWeighedTwice: boolean,
): string {
  if (question.kind === 'target') {
    if (reached !== true || bound.cost === undefined) return 'see below what stops it'
    // Of stations that may move, all or none were moved: no more is claimed.
    if (isWeighedTwice) return 'nothing found does it for less'
    return bound.proven
      ? 'nothing on these places does it for less'
      : `nothing on these places does it for less than ${aboutMoney(bound.cost)}`
  }
  const whose = rivals(question, stations.filter(station => station.new).length)
  if (bound.proven) return `${whose} can do better`
  if (bound.coverage === null || after.coverage === null) return 'how much better could be done is not known'
  if (bound.coverage - after.coverage < 0.005) return `${whose} can do better by half a point`
  return `${whose} can do better than ${ceiling(bound.coverage)}`
}

/** Who might do better: what the bound speaks of. */
function rivals({ kind }: Question, fresh: number): string {
  switch (kind) {
    case 'money':
      return 'no other way to spend it on these places'
    case 'cocoons':
      return 'no other way to share them out on these places'
    default:
      return fresh > 1 ? `no ${inWords(fresh).toLowerCase()} on these places` : 'no other of these places'
  }
}

/** How good the answer is, and how that is known. */
export function boundWords({ bound, after, places, cost, reached }: Suggestion, question: Question): string {
  const on = places.pitch === 0 ? `your own ${counted(places.count, 'place')}` : counted(places.count, 'place')
  const looked = `Looked at ${on}.`
  if (question.kind === 'target') {
    if (reached !== true || bound.cost === undefined) return looked
    if (bound.proven) return `Proven: among ${on}, nothing reaches it for less.`
    return `${looked} This costs ${money(cost)}; no choice among them that reaches it can cost less than ${money(Math.floor(bound.cost + 1e-9))}. ${methods[bound.method]}`
  }
  if (bound.proven) {
    const how =
      bound.method === 'solver' ? 'A general solver has tried all that could be better.' : 'Its bound meets it.'
    return `Proven: of all choices among ${on}, none does better ${means[question.kind]}. ${how}`
  }
  if (bound.coverage === null || after.coverage === null) return looked
  const gap = Math.max(0, bound.coverage - after.coverage) * 100
  const missed = gap < 0.05 ? 'under a tenth of a point' : `${(Math.ceil(gap * 10 - 1e-9) / 10).toFixed(1)} points`
  return `${looked} This reaches ${finely(after.coverage)}; no choice among them ${means[question.kind]} can exceed ${ceiling(bound.coverage, 1)}, so at most ${missed} may be missed. ${methods[bound.method]}`
}

/** Of a target where stations may move: what was weighed against what. */
export function moveWords({ question, roles = {} }: Pick<SuggestOptions, 'question' | 'roles'>): string {
  if (question.kind !== 'target' || !Object.values(roles).includes('move')) return ''
  return 'Stations that may move were weighed both ways: all left as they are, and all stocked anew. Moving only some of them was not tried. '
}

/** What was lost by looking at some places only; nothing is lost where all are the grower's own. */
export function thinningWords({ thinning, places: { pitch } }: Pick<Suggestion, 'thinning' | 'places'>): string {
  if (pitch === 0) return ''
  if (thinning === null) return 'What places between these would add has not been measured.'
  const { places, doubled, loss } = thinning
  if (doubled <= places) return 'There are no places between them.'
  const twice = `Among about twice as many places (${grouped(doubled)} for ${grouped(places)})`
  const found = Math.ceil(loss * 1000 - 1e-9) / 10
  return loss < 0.0005
    ? `${twice} nothing better was found.`
    : `${twice} the same search found ${found.toFixed(1)} points more.`
}

const means: Readonly<Record<Exclude<Question['kind'], 'target'>, string>> = {
  stations: 'with this stock',
  money: 'for this money',
  cocoons: 'with these cocoons',
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
      return `A station here would hold ${grouped(caution.tubes)} tubes. ${smallBeatLarge(caution.most)} Try more stations with fewer cocoons.`
    case 'more-than-wanted':
      return moreThanWanted(caution)
    case 'no-bloom':
      return `${someOf(caution.plantings.map(nameOf))} ${caution.plantings.length === 1 ? 'has' : 'have'} no bloom dates and ${caution.plantings.length === 1 ? 'is' : 'are'} left out of the question.`
    case 'not-moved':
      return `${someOf(caution.stations.map(nameOf))} ${caution.stations.length === 1 ? 'stays' : 'stay'} in place: a station without bees has none to take along, and for a target only those with the bees of the new ones are moved.`
    case 'no-layout':
      return `No layout was found that gives every planting ${percent(caution.coverage)} of what it wants, with up to ${caution.tubes} tubes a station. Allow more tubes or less distance between stations, set cocoons out on more dates, or ask for less.`
    case 'out-of-reach':
      return `Out of reach: ${someOf(caution.plantings.map(({ id, most }) => `${nameOf(id)} (at most ${percent(most)})`))}. No stock on these places does it; a place nearer, or a release nearer to its bloom, might.`
    default:
      return caution satisfies never
  }
}

/** Why not everything in one place, and on whose word. */
export function smallBeatLarge(most: number): string {
  return `Beyond about ${most} tubes (the best in a model of almond orchards, Koh et al.) a second place does more good than a larger one: 100 to 200 a station are common practice, and in trials bees stayed and bred better at many small stations than at few large ones (Bosch 1994; Artz et al. 2013; Boyle and Pitts-Singer 2017).`
}

/** More bees than the blossom can be counted on to feed: a warning, with what it rests on. */
export function moreThanWanted({ females, wanted }: { readonly females: number; readonly wanted: number }): string {
  return `With these there would be about ${roundly(females)} nesting females for the ${roundly(wanted)} that the plantings want, all added up. The blossom may not feed them all: a mason bee short of food raised fewer young, and lost more of them to parasites (Goodell 2003, from memory). Fewer cocoons, a lower target or more release dates ask for fewer bees. What plantings want comes from published stocking rates, not from a count of food.`
}

/** Why an answer cannot be accepted any more. */
export function staleWords(answered: number, year: number): string {
  return answered === year
    ? 'The plan has changed since. What is shown answers the plan before that, and cannot be accepted.'
    : `What is shown answers the season ${answered}, and cannot be accepted into ${year}.`
}

/** Whole, three figures. */
function roundly(value: number): string {
  return grouped(significant(Math.round(value), 3))
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
