import type { Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import type { Job, PlannerStore, ResultsState } from '../state/store'
import { brokenOff, lastOf, refusal } from './job-words'
import { Lane } from './lane'
import type { MakePort } from './protocol'

/** The results that follow every change of the plan. */
export type ResultName = 'report' | 'cloud' | 'ranges'

/** Computes results and keeps them in the store; a newer request of a kind ends the older one. */
export type Engine = {
  evaluate(plan: Plan, year: number): void
  cloud(plan: Plan, year: number): void
  ranges(plan: Plan, year: number): void
  /**
   * Coverage of the season last evaluated with one station elsewhere. Of several moves at most one is under way and only
   * the newest waits. The answers stand in `results.report` as `running`, until the next evaluation.
   */
  moveStation(id: string, at: LngLat): void
  /**
   * Who works where on a day of the season last evaluated. As with moves, at most one is under way and only the newest
   * waits; every answer is shown, so that days can be run through. null forgets the day.
   */
  day(day: number | null): void
  /** Results that no longer answer the plan: they stay to be seen, as `running`, and what was asked for them is withdrawn. */
  outdate(names: readonly ResultName[]): void
  /** A result that also answers the plan as it is now. */
  confirm(name: ResultName): void
  /** Forgets all results. */
  clear(): void
  stop(): void
}

/** After this many milliseconds a calculation that nobody wants any more is ended by force. */
const patience = 1000
/** Ranges take the processor from the report, so they are ended sooner. */
const patienceWithRanges = 250

export function createEngine(store: PlannerStore, makePort: MakePort): Engine {
  const main = new Lane(makePort, { patience })
  // A worker of its own: twenty-odd evaluations must not stand between an edit and its report.
  const aside = new Lane(makePort, { patience: patienceWithRanges })
  const laneOf = { report: main, cloud: main, ranges: aside } as const

  const set = <Name extends ResultName>(name: Name, job: ResultsState[Name]): void =>
    store.setState(({ results }) => ({ results: { ...results, [name]: job } }))
  const last = <Name extends ResultName>(name: Name) => lastOf(store.getState().results[name] as Job<unknown>)
  const run = (name: ResultName): number => {
    const { revision } = store.getState().document
    laneOf[name].withdraw(name)
    if (name === 'report') main.withdraw('move')
    set(name, { status: 'running', last: last(name), revision } as ResultsState[ResultName])
    return revision
  }
  const fail = (name: ResultName, reason: string): void =>
    set(name, { status: 'failed', reason, last: last(name) } as ResultsState[ResultName])
  const setDay = (day: ResultsState['day']): void => store.setState(({ results }) => ({ results: { ...results, day } }))
  const forgetDay = (): void => {
    main.withdraw('day')
    if (store.getState().results.day.status !== 'idle') setDay({ status: 'idle' })
  }
  const failedCall = (name: ResultName) => (reason: string) => fail(name, brokenOff(reason))

  return {
    evaluate(plan, year) {
      const revision = run('report')
      main.request({
        kind: 'report',
        call: api => api.evaluate(plan, year),
        onAnswer: outcome => {
          if (outcome.ok) set('report', { status: 'ready', value: outcome.value, revision })
          else fail('report', refusal(outcome))
        },
        onFailure: failedCall('report'),
      })
    },
    cloud(plan, year) {
      const revision = run('cloud')
      main.request({
        kind: 'cloud',
        call: api => api.cloud(plan, year),
        onAnswer: value => set('cloud', { status: 'ready', value, revision }),
        onFailure: failedCall('cloud'),
      })
    },
    ranges(plan, year) {
      const revision = run('ranges')
      aside.request({
        kind: 'ranges',
        call: api => api.ranges(plan, year),
        onAnswer: value => set('ranges', value ? { status: 'ready', value, revision } : { status: 'idle' }),
        onFailure: failedCall('ranges'),
      })
    },
    moveStation(id, at) {
      const { revision } = store.getState().document
      main.request({
        kind: 'move',
        call: api => api.moveStation(id, at),
        onAnswer: value => {
          if (value) set('report', { status: 'running', last: value, revision })
        },
        onFailure: failedCall('report'),
      })
    },
    day(day) {
      if (day === null) {
        forgetDay()
        return
      }
      const { revision } = store.getState().document
      main.request({
        kind: 'day',
        call: api => api.day(day),
        onAnswer: value => setDay(value ? { status: 'ready', value, revision } : { status: 'idle' }),
        onFailure: reason => setDay({ status: 'failed', reason: brokenOff(reason), last: null }),
      })
    },
    outdate(names) {
      for (const name of names) if (store.getState().results[name].status !== 'idle') run(name)
    },
    confirm(name) {
      const { document, results } = store.getState()
      const job = results[name]
      if (job.status === 'ready' && job.revision !== document.revision) {
        set(name, { ...job, revision: document.revision } as ResultsState[ResultName])
      }
    },
    clear() {
      main.withdraw('move')
      forgetDay()
      for (const name of ['report', 'cloud', 'ranges'] as const) {
        laneOf[name].withdraw(name)
        if (store.getState().results[name].status !== 'idle') set(name, { status: 'idle' })
      }
    },
    stop() {
      main.stop()
      aside.stop()
    },
  }
}
