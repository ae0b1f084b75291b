import { type Outcome, problemText } from '#geo/problem'
import type { Job } from '../state/store'

/** The newest value of a job, also while another is under way. */
export function lastOf<T>(job: Job<T>): T | null {
  switch (job.status) {
    case 'idle':
      return null
    case 'ready':
      return job.value
    case 'running':
    case 'failed':
      return job.last
    default:
      return job satisfies never
  }
}

/** Why a plan has no report, in words. */
export function refusal(outcome: Outcome<unknown>): string {
  const [first, ...more] = outcome.problems.filter(({ severity }) => severity === 'error')
  if (first === undefined) return 'The plan cannot be computed.'
  const rest =
    more.length === 0
      ? ''
      : ` There ${more.length === 1 ? 'is 1 more problem' : `are ${more.length} more problems`} like this.`
  return `${problemText(first)}${rest}`
}

/** Why there is no answer, where the calculation itself failed. */
export function brokenOff(reason: string): string {
  return `The calculation broke off: ${reason}. The plan is kept; the next change starts the calculation again.`
}
