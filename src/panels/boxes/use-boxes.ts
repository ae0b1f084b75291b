import { useMemo } from 'react'
import { type Ask, type BoxesState, isAnswerTo, type Stocked, type Suggested } from '../../state/boxes'
import { changeAsk, placeNames } from '../../state/boxes-actions'
import type { Job } from '../../state/store'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { usePlan, useYear, valueOfJob } from '../hooks'

export function useBoxes(): BoxesState {
  return usePlanner(state => state.boxes)
}

export function useAsk(): readonly [ask: Ask, change: (patch: Partial<Ask>) => void] {
  const store = usePlannerStore()
  const ask = usePlanner(state => state.boxes.ask)
  return [ask, patch => changeAsk(store, patch)]
}

/** An answer on the screen, whether it answers the plan as it is now, and why there is none. */
type Answered<T> = {
  readonly answer: T | null
  readonly isFresh: boolean
  readonly isRunning: boolean
  readonly reason: string | null
}

function useAnswered<T extends Pick<Suggested, 'plan' | 'year'>>(job: Job<T>): Answered<T> {
  const plan = usePlan()
  const year = useYear()
  const { value: answer } = valueOfJob(job, 0)
  return {
    answer,
    isFresh: answer !== null && isAnswerTo(answer, plan, year),
    isRunning: job.status === 'running',
    reason: job.status === 'failed' ? job.reason : null,
  }
}

export function useSuggested(): Answered<Suggested> {
  return useAnswered(usePlanner(state => state.results.suggestion))
}

/** Cocoons worked out for the stations there are. */
export function useStocked(): Answered<Stocked> {
  return useAnswered(usePlanner(state => state.results.stock))
}

export function usePlaceNames({ plan, suggestion }: Suggested) {
  return useMemo(() => placeNames(plan, suggestion.stations), [plan, suggestion])
}
