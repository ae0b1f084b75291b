import type { Plan } from '#geo/plan/plan'
import type { AdviceOptions } from '#geo/timing/advice'
import type { PlannerStore, ResultsState } from '../state/store'
import { brokenOff, lastOf, refusal } from './job-words'
import { Lane } from './lane'
import type { MakePort } from './protocol'

/** Advice on release dates, and coverage as it would be on typical days; results stand in the store. */
export type TimingEngine = {
  advise(plan: Plan, year: number, options: AdviceOptions): void
  stopAdvice(): void
  /** The season without its weather, for comparison. */
  typical(plan: Plan, year: number): void
  /** Forgets all answers and ends what is under way. */
  clear(): void
  stop(): void
}

type Name = 'advice' | 'typical'

/** Whoever waits no longer has the search ended soon, ms. */
const patience = 200

export function createTimingEngine(store: PlannerStore, makePort: MakePort): TimingEngine {
  // A worker of its own: a search over dates must not hold up the coverage of the next edit.
  const lane = new Lane(makePort, { patience })
  const set = <N extends Name>(name: N, job: ResultsState[N]): void =>
    store.setState(({ results }) => ({ results: { ...results, [name]: job } }))
  const revisionNow = (): number => store.getState().document.revision

  return {
    advise(plan, year, options) {
      const revision = revisionNow()
      const last = lastOf(store.getState().results.advice)
      lane.withdraw('advice')
      set('advice', { status: 'running', last, revision })
      lane.request({
        kind: 'advice',
        call: api => api.releaseAdvice(plan, year, options),
        onAnswer: outcome => {
          if (!outcome.ok) return set('advice', { status: 'failed', reason: refusal(outcome), last: null })
          const { value: advice, problems } = outcome
          set('advice', { status: 'ready', value: { plan, year, options, advice, problems }, revision })
        },
        onFailure: reason => set('advice', { status: 'failed', reason: brokenOff(reason), last: null }),
      })
    },
    stopAdvice() {
      lane.withdraw('advice')
      const { advice } = store.getState().results
      if (advice.status !== 'running') return
      const { last, revision } = advice
      set('advice', last === null ? { status: 'idle' } : { status: 'ready', value: last, revision })
    },
    typical(plan, year) {
      const revision = revisionNow()
      lane.withdraw('typical')
      set('typical', { status: 'running', last: lastOf(store.getState().results.typical), revision })
      lane.request({
        kind: 'typical',
        call: api => api.typicalCoverage(plan, year),
        onAnswer: coverage => set('typical', { status: 'ready', value: { plan, year, coverage }, revision }),
        onFailure: reason => set('typical', { status: 'failed', reason: brokenOff(reason), last: null }),
      })
    },
    clear() {
      for (const name of ['advice', 'typical'] as const) {
        lane.withdraw(name)
        if (store.getState().results[name].status !== 'idle') set(name, { status: 'idle' })
      }
    },
    stop() {
      lane.stop()
    },
  }
}
