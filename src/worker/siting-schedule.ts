import { idAfter } from '#geo/siting/accept'
import { type BoxesState, type Suggested, stockWishOf, wishOf } from '../state/boxes'
import { answerNow, planStocked, planWith, stockNow } from '../state/boxes-actions'
import type { PlannerState, PlannerStore } from '../state/store'
import type { SitingEngine } from './siting-engine'

/** Seconds that a proof has before it is told as far as it has come. */
const proofTime = 600
/** Milliseconds from the last move of a suggested station to the full count. */
const settling = 250
/** The curve goes on to so many stations beyond those of the answer. */
const beyond = 3

type Siting = {
  readonly engine: SitingEngine
}

const running = new WeakMap<PlannerStore, Siting>()

/** Answers the question as it stands on the page. */
export function lookForPlaces(store: PlannerStore): void {
  const { document, view, boxes } = store.getState()
  if (document.plan === null) return
  const engine = running.get(store)?.engine
  if (boxes.ask.kind === 'stock') engine?.stock(document.plan, view.year, stockWishOf(boxes.ask))
  else engine?.look(document.plan, view.year, wishOf(boxes.ask, document.plan, view.year))
}

export function proveAnswer(store: PlannerStore): void {
  const answer = answerNow(store.getState())
  if (answer !== null) running.get(store)?.engine.prove(answer, proofTime)
}

export function stopLooking(store: PlannerStore): void {
  running.get(store)?.engine.stopLooking()
}

/** Coverage by number of stations, a few beyond those of the answer, each stocked like them. */
export function drawCurve(store: PlannerStore): void {
  const answer = answerNow(store.getState())
  if (answer === null) return
  const fresh = answer.suggestion.stations.filter(station => station.new || station.reused)
  const cocoons = fresh.reduce((sum, { femaleCocoons }) => sum + femaleCocoons, 0)
  if (fresh.length === 0 || cocoons === 0) return
  const each = Math.max(1, Math.round(cocoons / fresh.length))
  running.get(store)?.engine.curve(answer, mostOnCurve(answer), each)
}

/** New stations at the far end of an answer's curve. */
export function mostOnCurve({ suggestion }: Suggested): number {
  return suggestion.stations.filter(station => station.new).length + beyond
}

export function stopCurve(store: PlannerStore): void {
  running.get(store)?.engine.stopCurve()
}

/** Tries out what is suggested as it is taken, left and moved, and forgets answers with their plan. */
export function startSiting(store: PlannerStore, engine: SitingEngine): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  let tried: Trial | null = null

  const tryNow = (): void => {
    clearTimeout(timer)
    const state = store.getState()
    const answer = answerNow(state)
    if (answer === null) return
    tried = trialOf(answer, state.boxes)
    engine.tryOut(planWith(answer, state.boxes), answer.year)
  }

  const onChange = (now: Watched): void => {
    const { answer, moved, left } = now
    if (answer === null) {
      clearTimeout(timer)
      tried = null
      return
    }
    if (tried === null || !isSameAnswer(tried.answer, answer) || tried.left !== left) {
      tryNow()
      return
    }
    const [id, ...others] = Object.keys({ ...moved, ...tried.moved }).filter(each => moved[each] !== tried?.moved[each])
    if (id === undefined) return
    const at = moved[id]
    // One station under way is followed at once; the count from the ground up comes when it rests.
    if (at !== undefined && others.length === 0) engine.moveTried(idTried(tried, id), at)
    tried = { ...tried, moved }
    clearTimeout(timer)
    timer = setTimeout(tryNow, settling)
  }

  running.set(store, { engine })
  const stopWatching = [
    store.subscribe(watched, onChange, { equalityFn: isSame }),
    store.subscribe(
      ({ document }) => document.planId,
      () => engine.clear(),
    ),
    // A stock has nothing to be moved or left: it is tried once.
    store.subscribe(stockNow, answer => {
      if (answer !== null) engine.tryOut(planStocked(answer), answer.year)
    }),
  ]
  return () => {
    for (const stop of stopWatching) stop()
    clearTimeout(timer)
    running.delete(store)
  }
}

type Trial = {
  readonly answer: Suggested
  readonly moved: BoxesState['moved']
  /** What was moved when the plan was last counted from the ground up. */
  readonly counted: BoxesState['moved']
  readonly left: BoxesState['left']
}

function trialOf(answer: Suggested, { moved, left }: BoxesState): Trial {
  return { answer, moved, counted: moved, left }
}

type Watched = Omit<Trial, 'answer' | 'counted'> & { readonly answer: Suggested | null }

function watched(state: PlannerState): Watched {
  return { answer: answerNow(state), moved: state.boxes.moved, left: state.boxes.left }
}

/** An answer of which more has become known has the stations that it had. */
function isSameAnswer(a: Suggested, b: Suggested): boolean {
  return a.suggestion.stations === b.suggestion.stations && a.plan === b.plan
}

function isSame(a: Watched, b: Watched): boolean {
  return a.answer === b.answer && a.moved === b.moved && a.left === b.left
}

/** The id of a suggested station in the plan that was counted. */
function idTried({ answer, counted }: Trial, id: string): string {
  const { plan, year, suggestion } = answer
  const station = suggestion.stations.find(each => each.id === id)
  return station === undefined ? id : idAfter(plan, year, { ...station, at: counted[id] ?? station.at })
}
