import type { AdviceOptions } from '#geo/timing/advice'
import { isAnswerTo } from '../state/boxes'
import type { PlannerStore } from '../state/store'
import { lastOf } from './job-words'
import type { TimingEngine } from './timing-engine'

const running = new WeakMap<PlannerStore, TimingEngine>()

/** Looks for the best release dates of the plan as it is now. */
export function adviseRelease(store: PlannerStore, options: AdviceOptions): void {
  const { document, view } = store.getState()
  if (document.plan !== null) running.get(store)?.advise(document.plan, view.year, options)
}

export function stopAdvice(store: PlannerStore): void {
  running.get(store)?.stopAdvice()
}

/** Works out the season on typical days, unless that is known or under way. */
export function compareTypical(store: PlannerStore): void {
  const { document, view, results } = store.getState()
  const { plan, revision } = document
  if (plan === null) return
  const { typical } = results
  if (typical.status === 'running' && typical.revision === revision) return
  const known = lastOf(typical)
  if (typical.status !== 'failed' && known !== null && isAnswerTo(known, plan, view.year)) return
  running.get(store)?.typical(plan, view.year)
}

/** Forgets answers with their plan. */
export function startTiming(store: PlannerStore, engine: TimingEngine): () => void {
  running.set(store, engine)
  const stop = store.subscribe(
    ({ document }) => document.planId,
    () => engine.clear(),
  )
  return () => {
    stop()
    running.delete(store)
  }
}
