import type { Plan } from '#geo/plan/plan'
import type { Job, PlannerStore, ResultsState } from '../state/store'
import type { Ahead } from '../state/years'
import { brokenOff, lastOf, refusal } from './job-words'
import { Lane } from './lane'
import type { MakePort } from './protocol'

/** One year beside another and the seasons to come; results stand in the store. */
export type YearsEngine = {
  compare(plan: Plan, from: number, to: number): void
  /** The season that is held against, point by point. */
  otherSeason(plan: Plan, year: number): void
  project(plan: Plan, year: number, ahead: Ahead): void
  /** Takes back what is under way; answers that are there stay. */
  withdraw(): void
  /** Forgets all answers. */
  clear(): void
  stop(): void
}

const names = ['comparison', 'otherSeason', 'projection'] as const
type Name = (typeof names)[number]

/** Whoever waits no longer has the calculation ended soon, ms. */
const patience = 200

export function createYearsEngine(store: PlannerStore, makePort: MakePort): YearsEngine {
  // A worker of its own: up to 64 mixtures of two years must not hold up the coverage of the next edit.
  const lane = new Lane(makePort, { patience })
  const set = <N extends Name>(name: N, job: ResultsState[N]): void =>
    store.setState(({ results }) => ({ results: { ...results, [name]: job } }))
  const start = (name: Name): number => {
    const { document, results } = store.getState()
    lane.withdraw(name)
    set(name, { status: 'running', last: lastOf(results[name] as Job<unknown>), revision: document.revision } as never)
    return document.revision
  }
  const fail = (name: Name, reason: string): void => set(name, { status: 'failed', reason, last: null })
  const failedCall = (name: Name) => (reason: string) => fail(name, brokenOff(reason))

  return {
    compare(plan, from, to) {
      const revision = start('comparison')
      lane.request({
        kind: 'comparison',
        call: api => api.compare(plan, from, to),
        onAnswer: outcome => {
          if (!outcome.ok) return fail('comparison', refusal(outcome))
          set('comparison', { status: 'ready', value: { plan, from, to, comparison: outcome.value }, revision })
        },
        onFailure: failedCall('comparison'),
      })
    },
    otherSeason(plan, year) {
      const revision = start('otherSeason')
      lane.request({
        kind: 'otherSeason',
        call: async api => [await api.cloud(plan, year), await api.tryPlan(plan, year)] as const,
        onAnswer: ([cloud, outcome]) => {
          if (!outcome.ok) return fail('otherSeason', refusal(outcome))
          set('otherSeason', { status: 'ready', value: { plan, year, cloud, evaluation: outcome.value }, revision })
        },
        onFailure: failedCall('otherSeason'),
      })
    },
    project(plan, year, ahead) {
      const revision = start('projection')
      const { seasons, shareKept, target } = ahead
      const options = { ...(shareKept !== null && { shareKept }), ...(target !== null && { target }) }
      lane.request({
        kind: 'projection',
        call: async api =>
          [
            await api.project(plan, year, seasons, { ...options, care: 'takenIn' }),
            await api.project(plan, year, seasons, { ...options, care: 'outside' }),
          ] as const,
        onAnswer: ([takenIn, outside]) => {
          if (!takenIn.ok) return fail('projection', refusal(takenIn))
          if (!outside.ok) return fail('projection', refusal(outside))
          const ways = { takenIn: takenIn.value, outside: outside.value }
          set('projection', { status: 'ready', value: { plan, from: year, ahead, ways }, revision })
        },
        onFailure: failedCall('projection'),
      })
    },
    withdraw() {
      for (const name of names) {
        lane.withdraw(name)
        const job = store.getState().results[name]
        if (job.status !== 'running') continue
        // What answers an older question is told from it by the plan and the years it carries.
        const { last, revision } = job
        set(name, (last === null ? { status: 'idle' } : { status: 'ready', value: last, revision }) as never)
      }
    },
    clear() {
      for (const name of names) {
        lane.withdraw(name)
        if (store.getState().results[name].status !== 'idle') set(name, { status: 'idle' })
      }
    },
    stop() {
      lane.stop()
    },
  }
}
