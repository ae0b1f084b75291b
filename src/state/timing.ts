import type { Plan } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import type { Advice, AdviceOptions } from '#geo/timing/advice'

/** Coverage on typical days, beside that with the weather of `plan`; null where there is none. */
export type Typical = { readonly plan: Plan; readonly year: number; readonly coverage: number | null }

/** Advice on release dates, with what it was asked of and what is to be said about it. */
export type Advised = {
  readonly plan: Plan
  readonly year: number
  readonly options: AdviceOptions
  readonly advice: Advice
  readonly problems: readonly Problem[]
}
