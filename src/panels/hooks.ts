import { useCallback, useMemo } from 'react'
import type { Edit } from '#geo/plan/edits'
import { placeOf } from '#geo/plan/home'
import { type Plan, type Season, seasonOf } from '#geo/plan/plan'
import { type LngLat, type Plane, planeAt } from '#geo/space/plane'
import { edit, explain, select } from '../state/actions'
import type { Evaluation, Job, WorkingTopic } from '../state/store'
import { usePlanner, usePlannerStore } from '../state/use-planner'
import { homeOf } from '../text/home'

/** The open plan; only for what is shown while one is open. */
export function usePlan(): Plan {
  const plan = usePlanner(state => state.document.plan)
  if (plan === null) throw new TypeError('no plan is open')
  return plan
}

export function useYear(): number {
  return usePlanner(state => state.view.year)
}

/** The season that is looked at; undefined where the plan has none of that year. */
export function useSeason(): Season | undefined {
  return seasonOf(usePlan(), useYear())
}

export function useEdit(): (change: Edit) => void {
  const store = usePlannerStore()
  return useCallback((change: Edit) => edit(store, change), [store])
}

export function useSelect(): (ids: readonly string[]) => void {
  const store = usePlannerStore()
  return useCallback((ids: readonly string[]) => select(store, ids), [store])
}

export function useExplain(): (topic: WorkingTopic | null) => void {
  const store = usePlannerStore()
  return useCallback((topic: WorkingTopic | null) => explain(store, topic), [store])
}

/** Fixed points of plans whose file names no place: where the middle was when they were opened. */
const homes = new Map<string | null, LngLat>()

/** The frame that typed metres stand in: it stays where it was when the plan was opened, whatever is drawn after. */
export function useHome(): Plane {
  const plan = usePlan()
  const planId = usePlanner(state => state.document.planId)
  const fixed = placeOf(plan)
  const home = fixed ?? homes.get(planId) ?? homeOf(plan)
  if (fixed === null) homes.set(planId, home)
  const [lng, lat] = home
  return useMemo(() => planeAt([lng, lat]), [lng, lat])
}

/** The latest value of a job, and whether it still answers what is on the screen. */
export function valueOfJob<T>(job: Job<T>, revision: number): { readonly value: T | null; readonly isFresh: boolean } {
  switch (job.status) {
    case 'idle':
      return { value: null, isFresh: false }
    case 'ready':
      return { value: job.value, isFresh: job.revision === revision }
    case 'running':
    case 'failed':
      return { value: job.last, isFresh: false }
    default:
      return job satisfies never
  }
}

export function useEvaluation(): {
  readonly value: Evaluation | null
  readonly isFresh: boolean
  readonly reason: string | null
} {
  const job = usePlanner(state => state.results.report)
  const revision = usePlanner(state => state.document.revision)
  return { ...valueOfJob(job, revision), reason: job.status === 'failed' ? job.reason : null }
}
