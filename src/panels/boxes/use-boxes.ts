import { useMemo } from 'react'
import { type Ask, type BoxesState, isAnswerTo, type Stocked, type Suggested } from '../../state/boxes'
import { changeAsk, placeNames } from '../../state/boxes-actions'
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

/** The answer on the screen, whether it answers the plan as it is now, and why there is none. */
export function useSuggested(): {
  readonly answer: Suggested | null
  readonly isFresh: boolean
  readonly isRunning: boolean
  readonly reason: string | null
} {
  const plan = usePlan()
  const year = useYear()
  const job = usePlanner(state => state.results.suggestion)
  const { value: answer } = valueOfJob(job, 0)
  return {
    answer,
    isFresh: answer !== null && isAnswerTo(answer, plan, year),
    isRunning: job.status === 'running',
    reason: job.status === 'failed' ? job.reason : null,
  }
}

export function usePlaceNames({ plan, suggestion }: Suggested) {
  return useMemo(() => placeNames(plan, suggestion.stations), [plan, suggestion])
}

/** Cocoons worked out for the stations there are, whether they still answer the plan, and why there are none. */
export function useStocked(): {
  readonly answer: Stocked | null
  readonly isFresh: boolean
  readonly isRunning: boolean
  readonly reason: string | null
} {
  const plan = usePlan()
  const year = useYear()
  const job = usePlanner(state => state.results.stock)
  const { value: answer } = valueOfJob(job, 0)
  return {
    answer,
    isFresh: answer !== null && isAnswerTo(answer, plan, year),
    isRunning: job.status === 'running',
    reason: job.status === 'failed' ? job.reason : null,
  }
}
