import { proxy } from 'comlink'
import type { Plan } from '#geo/plan/plan'
import type { Progress } from '#geo/siting/question'
import type { Suggestion } from '#geo/siting/suggestion'
import type { LngLat } from '#geo/space/plane'
import type { StockOptions } from '#geo/stocking/programme'
import { type CurvePoint, type Suggested, untouched, type Wish } from '../state/boxes'
import { changeBoxes } from '../state/boxes-actions'
import type { PlannerStore, ResultsState } from '../state/store'
import { brokenOff, lastOf, refusal } from './job-words'
import { Lane } from './lane'
import type { MakePort } from './protocol'

/** Looks for places, proves them, and tries out what they would do; results stand in the store. */
export type SitingEngine = {
  /** Answers a question. */
  look(plan: Plan, year: number, wish: Wish): void
  /** Fewest cocoons at the stations there are. */
  stock(plan: Plan, year: number, options: StockOptions): void
  /** Asks for the proof of an answer; until it comes, the answer stays. */
  prove(answer: Suggested, timeLimit: number): void
  /** Ends search or proof. The best answer so far is kept, or the one before, with the best bound that was reached. */
  stopLooking(): void
  /** The best of 0, 1, 2, … new stations with so many cocoons each. */
  curve(answer: Suggested, most: number, cocoonsEach: number): void
  stopCurve(): void
  /** Coverage of a plan that is only tried out. */
  tryOut(plan: Plan, year: number): void
  /** The plan last tried out, with one station elsewhere. */
  moveTried(id: string, at: LngLat): void
  /** Forgets all answers and ends what is under way. */
  clear(): void
  stop(): void
}

type Name = 'suggestion' | 'stock' | 'trial' | 'curve'

/** Whoever waits no longer for a search has it ended at once, ms. */
const patience = 100
/**
 * A trial that nobody waits for any more is rather let finish, ms: the next one then finds its worker loaded and the plan
 * there, which takes less than to begin with a new one.
 */
const patienceWithTrials = 10_000

export function createSitingEngine(store: PlannerStore, makePort: MakePort): SitingEngine {
  // A worker of its own: a search or proof may take long, and blocks the worker it runs in.
  const lane = new Lane(makePort, { patience })
  const trials = new Lane(makePort, { patience: patienceWithTrials })

  /** Trials are counted: of several that were asked for, the last one is meant. */
  let newestTrial = 0

  const set = <N extends Name>(name: N, job: ResultsState[N]): void =>
    store.setState(({ results }) => ({ results: { ...results, [name]: job } }))
  const revisionNow = (): number => store.getState().document.revision
  const keptAnswer = (): Suggested | null => lastOf(store.getState().results.suggestion)
  const ended = (): void => changeBoxes(store, { progress: null, isProving: false })

  /** Points of a curve that was stopped are of no use to the next one. */
  let stopListening = (): void => {}
  const withdrawCurve = (): void => {
    lane.withdraw('curve')
    stopListening()
  }

  /** The best answer so far of the search that is under way. */
  let soFar: Suggested | null = null

  /** Search and proof: at most one is under way. */
  const ask = (plan: Plan, year: number, wish: Wish, proof: { readonly timeLimit: number } | null): void => {
    const revision = revisionNow()
    const last = keptAnswer()
    lane.withdraw('suggest')
    set('suggestion', { status: 'running', last, revision })
    changeBoxes(store, { progress: { stage: 'places', coverage: null, bound: null }, isProving: proof !== null })
    // Words that were under way when the search was ended are of no use to the next one.
    let isListening = true
    soFar = null
    // Told before what thinning of places costs is known.
    let early: Suggested | null = null
    const onProgress = (progress: Progress, best: Suggestion | null): void => {
      if (!isListening || store.getState().boxes.progress === null) return
      if (best) soFar = { plan, year, wish, suggestion: best }
      if (best && progress.stage === 'report') {
        early = soFar
        show(best)
      } else changeBoxes(store, { progress })
    }
    const show = (suggestion: Suggestion): void => {
      const isKept = proof !== null && isSameLayout(suggestion, last)
      const value = early ?? { plan, year, wish, suggestion }
      // In one step: what was moved by hand belongs to the layout before.
      store.setState(({ results, boxes }) => ({
        results: { ...results, suggestion: { status: 'ready', value, revision } },
        boxes: { ...boxes, ...(isKept ? { progress: null, isProving: false } : untouched) },
      }))
    }
    /** The answer that was told early, with what has become known since; the rest stays the same, and tried out. */
    const complete = ({ thinning }: Suggestion): void =>
      store.setState(({ results }) => {
        const { suggestion: job } = results
        if (job.status !== 'ready' || job.value !== early) return {}
        const suggestion = { ...job.value.suggestion, thinning }
        return { results: { ...results, suggestion: { ...job, value: { ...job.value, suggestion } } } }
      })
    lane.request({
      kind: 'suggest',
      call: api => api.suggest(plan, year, wish, proof, proxy(onProgress)),
      onAnswer: outcome => {
        isListening = false
        if (!outcome.ok) {
          ended()
          set('suggestion', { status: 'failed', reason: refusal(outcome), last })
          return
        }
        if (early === null) show(outcome.value)
        else complete(outcome.value)
      },
      onFailure: reason => {
        isListening = false
        if (early !== null) return
        ended()
        set('suggestion', { status: 'failed', reason: brokenOff(reason), last })
      },
    })
    // The answer will be tried out at once.
    trials.warm()
  }

  /** One question has one answer: that to a question of the other sort goes. */
  const forgetOther = (name: 'suggestion' | 'stock'): void => {
    withdrawCurve()
    lane.withdraw(name === 'stock' ? 'stock' : 'suggest')
    set('curve', { status: 'idle' })
    for (const kind of ['try', 'move']) trials.withdraw(kind)
    if (store.getState().results[name].status !== 'idle') set('trial', { status: 'idle' })
    set(name, { status: 'idle' })
  }

  return {
    look(plan, year, wish) {
      forgetOther('stock')
      ask(plan, year, wish, null)
    },
    stock(plan, year, options) {
      const revision = revisionNow()
      forgetOther('suggestion')
      set('stock', { status: 'running', last: lastOf(store.getState().results.stock), revision })
      lane.withdraw('stock')
      lane.request({
        kind: 'stock',
        call: api => api.stock(plan, year, options),
        onAnswer: outcome => {
          if (!outcome.ok) return set('stock', { status: 'failed', reason: refusal(outcome), last: null })
          set('stock', { status: 'ready', value: { plan, year, options, result: outcome.value }, revision })
        },
        onFailure: reason => set('stock', { status: 'failed', reason: brokenOff(reason), last: null }),
      })
    },
    prove({ plan, year, wish }, timeLimit) {
      ask(plan, year, wish, { timeLimit })
    },
    stopLooking() {
      const { results, boxes } = store.getState()
      if (results.stock.status === 'running') {
        lane.withdraw('stock')
        set('stock', { status: 'idle' })
      }
      if (results.suggestion.status !== 'running') return
      lane.withdraw('suggest')
      const last = keptAnswer()
      const value = boxes.isProving ? last && tightened(last, boxes.progress) : (soFar ?? last)
      const isNew = value !== null && value === soFar
      const job = value === null ? idle : ({ status: 'ready', value, revision: revisionNow() } as const)
      // In one step: what was moved by hand belongs to the layout before.
      store.setState(state => ({
        results: { ...state.results, suggestion: job },
        boxes: { ...state.boxes, ...(isNew ? untouched : { progress: null, isProving: false }) },
      }))
      soFar = null
    },
    curve(answer, most, cocoonsEach) {
      const { plan, year, wish } = answer
      const revision = revisionNow()
      const points: CurvePoint[] = []
      let isListening = true
      const onPoint = (point: CurvePoint): void => {
        if (!isListening) return
        points.push(point)
        set('curve', { status: 'running', last: throughAnswer(points, answer, cocoonsEach), revision })
      }
      withdrawCurve()
      set('curve', { status: 'running', last: [], revision })
      stopListening = () => {
        isListening = false
      }
      lane.request({
        kind: 'curve',
        call: api => api.curve(plan, year, wish, { most, cocoons: cocoonsEach }, proxy(onPoint)),
        onAnswer: outcome => {
          isListening = false
          if (!outcome.ok) return set('curve', { status: 'failed', reason: refusal(outcome), last: null })
          const value = throughAnswer(outcome.value, answer, cocoonsEach)
          set('curve', { status: 'ready', value, revision })
        },
        onFailure: reason => {
          isListening = false
          set('curve', {
            status: 'failed',
            reason: brokenOff(reason),
            last: throughAnswer(points, answer, cocoonsEach),
          })
        },
      })
    },
    stopCurve() {
      withdrawCurve()
      const { curve } = store.getState().results
      if (curve.status !== 'running') return
      const value = curve.last ?? []
      set('curve', value.length > 1 ? { status: 'ready', value, revision: curve.revision } : { status: 'idle' })
    },
    tryOut(plan, year) {
      const revision = revisionNow()
      trials.withdraw('move')
      newestTrial += 1
      const trial = newestTrial
      set('trial', { status: 'running', last: lastOf(store.getState().results.trial), revision })
      trials.request({
        kind: 'try',
        call: api => api.tryPlan(plan, year),
        onAnswer: outcome => {
          // The one that was under way when another was asked for is shown until that one comes.
          if (trial !== newestTrial) {
            if (outcome.ok) set('trial', { status: 'running', last: outcome.value, revision })
          } else if (outcome.ok) set('trial', { status: 'ready', value: outcome.value, revision })
          else set('trial', { status: 'failed', reason: refusal(outcome), last: null })
        },
        onFailure: reason => {
          if (trial === newestTrial) set('trial', { status: 'failed', reason: brokenOff(reason), last: null })
        },
      })
    },
    moveTried(id, at) {
      trials.request({
        kind: 'move',
        call: api => api.moveStation(id, at),
        onAnswer: value => {
          if (value) set('trial', { status: 'running', last: value, revision: revisionNow() })
        },
        onFailure: reason => set('trial', { status: 'failed', reason: brokenOff(reason), last: null }),
      })
    },
    clear() {
      for (const kind of ['suggest', 'stock']) lane.withdraw(kind)
      withdrawCurve()
      for (const kind of ['try', 'move']) trials.withdraw(kind)
      for (const name of ['suggestion', 'stock', 'trial', 'curve'] as const) {
        if (store.getState().results[name].status !== 'idle') set(name, { status: 'idle' })
      }
      if (store.getState().boxes.progress !== null) ended()
    },
    stop() {
      lane.stop()
      trials.stop()
    },
  }
}

/**
 * A curve as found on unrefined places, not under an answer that is in hand: the answer to the same question stands at
 * its number, and no point lies under one before it.
 */
function throughAnswer(
  points: readonly CurvePoint[],
  { wish, suggestion }: Suggested,
  cocoonsEach: number,
): readonly CurvePoint[] {
  const fresh = suggestion.stations.filter(station => station.new || station.reused)
  const isSame = wish.question.kind === 'stations' && fresh.every(each => each.femaleCocoons === cocoonsEach)
  let least = 0
  return points.map(point => {
    const { coverage, bound } = point
    if (coverage === null) return point
    least = Math.max(least, coverage, isSame && point.count === fresh.length ? (suggestion.after.coverage ?? 0) : 0)
    return { ...point, coverage: least, bound: bound === null ? null : Math.max(bound, least) }
  })
}

const idle = { status: 'idle' } as const

/** The answer with the bound that a proof had come to when it was stopped. */
function tightened(answer: Suggested, progress: Progress | null): Suggested {
  const { suggestion } = answer
  const { bound, after } = suggestion
  const { costBound } = progress ?? {}
  if (costBound != null && bound.cost !== undefined && costBound > bound.cost) {
    return { ...answer, suggestion: { ...suggestion, bound: { ...bound, cost: costBound, method: 'solver' } } }
  }
  if (progress?.bound == null || bound.coverage === null || progress.bound >= bound.coverage) return answer
  const coverage = Math.max(progress.bound, after.coverage ?? 0)
  return { ...answer, suggestion: { ...suggestion, bound: { ...bound, coverage, method: 'solver' } } }
}

function isSameLayout(suggestion: Suggestion, before: Suggested | null): boolean {
  const places = ({ stations }: Suggestion) => JSON.stringify(stations.map(({ id, at }) => [id, at]))
  return before !== null && places(suggestion) === places(before.suggestion)
}
