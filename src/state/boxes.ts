import { judging } from '#geo/data/judging-figures'
import type { BeeId } from '#geo/data/own'
import type { Plan } from '#geo/plan/plan'
import type { CurvePoint } from '#geo/siting/curve'
import type { Progress, Question, Role, SuggestOptions } from '#geo/siting/question'
import type { Suggestion } from '#geo/siting/suggestion'
import type { LngLat } from '#geo/space/plane'
import type { StockOptions, StockResult } from '#geo/stocking/programme'
import { assumedPrices, type Prices } from '#geo/stocking/stock'
import type { IsoDate } from '#geo/time/day'

/** What can be asked: places for stations, or (`stock`) only cocoons for those that stand. */
export type AskKind = Question['kind'] | 'stock'

/** The question as it stands on the page; null = the default counts. Kept while the program runs, not in the plan. */
export type Ask = {
  readonly kind: AskKind
  /** New stations, and female cocoons in each. */
  readonly count: number
  readonly cocoonsEach: number | null
  /** Share of what each planting wants. */
  readonly target: number
  readonly amount: number
  /** Female cocoons to share out, and on how many stations. */
  readonly cocoons: number
  readonly spread: number | null
  readonly roles: Readonly<Record<string, Role>>
  readonly weights: Readonly<Record<string, number>>
  /** The grower's own prices; those not given are assumed. */
  readonly prices: Partial<Prices>
  /** Bee of new stations; null = the plan’s. */
  readonly bee: BeeId | null
  /** The one day on which new stations are stocked; null, or of another season = the dates of those that stand. */
  readonly date: IsoDate | null
  /** Without such a day: the dates that stations of the season have, or those that the release advice has for them. */
  readonly dates: 'season' | 'advice'
  readonly setOf: number
  readonly tubes: number | null
  /** For stock alone: tubes are bought as needed, those that hang there set no limit. */
  readonly isFree: boolean
  /** Metres between stations, null = default. */
  readonly spacing: number | null
  readonly mudWithin: number | null
  readonly isSheltered: boolean
  readonly withLanes: boolean
}

export type { CurvePoint }

/** A question for the engine as plain data. */
export type Wish = Omit<SuggestOptions, 'onProgress' | 'shouldStop' | 'prove'>

/** An answer, and what it answers. */
export type Suggested = {
  readonly plan: Plan
  readonly year: number
  readonly wish: Wish
  readonly suggestion: Suggestion
}

/** Fewest cocoons at the stations there are, and what that answers. */
export type Stocked = {
  readonly plan: Plan
  readonly year: number
  readonly options: StockOptions
  readonly result: StockResult
}

export type BoxesState = {
  readonly ask: Ask
  /** How far the search or proof is; null while none runs. */
  readonly progress: Progress | null
  readonly isProving: boolean
  /** Suggested stations that were put elsewhere by hand. */
  readonly moved: Readonly<Record<string, LngLat>>
  /** Suggested stations that are not taken. */
  readonly left: readonly string[]
  /** The suggested station that is looked at. */
  readonly chosen: string | null
  /** The map is shaded as it would be, not as it is. */
  readonly isShownAfter: boolean
  /** The shopping list has cocoons enough for nine times in ten, not for every other time. */
  readonly isSure: boolean
  /** Cocoons that the season has planned already need not be bought: for stock alone. */
  readonly isInHand: boolean
}

const firstAsk: Ask = {
  kind: 'stations',
  count: 2,
  cocoonsEach: null,
  target: judging.usualTarget,
  amount: 200,
  cocoons: 300,
  spread: null,
  roles: {},
  weights: {},
  prices: {},
  bee: null,
  date: null,
  dates: 'season',
  setOf: 1,
  tubes: null,
  isFree: false,
  spacing: null,
  mudWithin: null,
  isSheltered: false,
  withLanes: false,
}

/** Nothing under way, and no suggested station moved, left or looked at. */
export const untouched = { moved: {}, left: [], chosen: null, progress: null, isProving: false } as const

export const noBoxes: BoxesState = { ask: firstAsk, isShownAfter: true, isSure: false, isInHand: false, ...untouched }

/** For another plan: what belongs to its stations and plantings goes, prices and sizes stay. */
export function boxesForPlan(boxes: BoxesState): BoxesState {
  return { ...boxes, ...untouched, ask: { ...boxes.ask, roles: {}, weights: {}, bee: null, date: null } }
}

/** The engine's question. Roles and weights of things that are gone are left out. */
export function wishOf(ask: Ask, plan: Plan, year: number): Wish {
  const present = new Set(plan.features.map(({ id }) => id))
  const kept = <T>(of: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(of).filter(([id]) => present.has(id)))
  const { spacing, mudWithin, isSheltered, withLanes } = ask
  const date = dateIn(ask, year)
  return {
    question: questionOf(ask),
    roles: rolesOf(ask, kept(ask.roles)),
    weights: kept(ask.weights),
    prices: pricesOf(ask),
    setOf: ask.setOf,
    ...(ask.bee !== null && { bee: ask.bee }),
    ...(date !== null && { releases: [{ date, share: 1 }] }),
    ...(date === null && ask.dates === 'advice' && { dates: 'advice' as const }),
    ...(ask.tubes !== null && { tubes: ask.tubes }),
    places: {
      ...(spacing !== null && { spacing }),
      ...(mudWithin !== null && { mudWithin }),
      ...(isSheltered && { isSheltered }),
      ...(withLanes && { withLanes }),
    },
  }
}

/** The day set for new stations, if it is one of the season. */
export function dateIn({ date }: Ask, year: number): IsoDate | null {
  return date?.startsWith(`${year}-`) ? date : null
}

/** The engine's question where stations stay. */
export function stockWishOf(ask: Ask): StockOptions {
  const { target, setOf, tubes, isFree } = ask
  return { target, setOf, ...(tubes !== null && { tubes }), ...(isFree && { isFree }), prices: pricesOf(ask) }
}

/** Stations move only where places are asked for. */
function rolesOf({ kind }: Ask, roles: Ask['roles']): Ask['roles'] {
  if (canMove(kind)) return roles
  return Object.fromEntries(Object.entries(roles).map(([id, role]) => [id, role === 'move' ? 'keep' : role]))
}

export function canMove(kind: AskKind): boolean {
  return kind !== 'stock'
}

export function pricesOf({ prices }: Pick<Ask, 'prices'>): Prices {
  return { ...assumedPrices, ...prices }
}

function questionOf(ask: Ask): Question {
  const { kind, count, cocoonsEach, target, amount, cocoons, spread } = ask
  switch (kind) {
    case 'stations':
      return { kind, count, ...(cocoonsEach !== null && { cocoons: cocoonsEach }) }
    case 'target':
    case 'stock':
      return { kind: 'target', coverage: target }
    case 'money':
      return { kind, amount }
    case 'cocoons':
      return { kind, cocoons, ...(spread !== null && { stations: spread }) }
    default:
      return kind satisfies never
  }
}

/**
 * Whether an answer still answers the plan: all that a season's coverage hangs on is the same, by reference, so that an
 * answer is good again after an undo, and a new name for the plan does not spoil it.
 */
export function isAnswerTo(answer: Pick<Suggested, 'plan' | 'year'>, plan: Plan | null, year: number): boolean {
  if (plan === null || answer.year !== year) return false
  const { plan: before } = answer
  return (
    before.features === plan.features &&
    before.seasons === plan.seasons &&
    before.parameters === plan.parameters &&
    before.crops === plan.crops &&
    before.bee === plan.bee
  )
}
