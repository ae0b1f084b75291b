import type { Plan } from '#geo/plan/plan'
import { changeBetween, changed, type PlanChange } from './plan-change'
import type { AsyncEngineApi, EngineApi } from './protocol'

type TakesPlan<Name extends keyof EngineApi> = Parameters<EngineApi[Name]>[0] extends Plan ? true : false

/** What is asked of a plan, and what goes without one. */
const takesPlan: { readonly [Name in keyof EngineApi]: TakesPlan<Name> } = {
  evaluate: true,
  moveStation: false,
  day: false,
  cloud: true,
  ranges: true,
  tryPlan: true,
  releaseAdvice: true,
  stock: true,
  compare: true,
  project: true,
  yearRecord: true,
  curve: true,
  suggest: true,
  typicalCoverage: true,
  openImport: false,
  rewriteImport: false,
  readImportTable: false,
  importShapes: false,
  importThings: false,
}

type Told<Call> = Call extends (plan: Plan, ...rest: infer Rest) => infer Answer
  ? (change: PlanChange, ...rest: Rest) => Answer
  : never

type WithChanges<Api extends Readonly<Record<keyof EngineApi, unknown>>> = {
  readonly [Name in keyof EngineApi]: TakesPlan<Name> extends true ? Told<Api[Name]> : Api[Name]
}

/** The engine as it is spoken to across the border: its plan stays with the worker, and only what changed goes there. */
export type KeepingApi = WithChanges<EngineApi>

/** A worker that keeps its plan, to be asked as if the whole plan went there. A new worker is told its first plan whole. */
export function tellingChanges(api: WithChanges<AsyncEngineApi>): AsyncEngineApi {
  const teller = planTeller()
  const telling =
    (ask: Call): Call =>
    (plan, ...rest) => {
      const answer = ask(teller.changeTo(plan as Plan), ...rest) as Promise<unknown>
      // Who knows whether it arrived: the next one goes whole.
      answer.catch(teller.forget)
      return answer
    }
  return withPlans(api, telling) as AsyncEngineApi
}

/** The worker's side: it puts each plan together from the one that it has and what changed. */
export function keepingPlan(api: EngineApi): KeepingApi {
  const planAfter = planKeeper()
  const keeping =
    (answer: Call): Call =>
    (change, ...rest) =>
      answer(planAfter(change as PlanChange), ...rest)
  return withPlans(api, keeping) as KeepingApi
}

type Call = (...input: unknown[]) => unknown

function withPlans(api: object, wrapped: (call: Call) => Call): unknown {
  const calls = api as Readonly<Record<string, Call>>
  const entries = Object.entries(takesPlan).map(([name, isPlanned]) => {
    const call: Call = (...input) => calls[name]!(...input)
    return [name, isPlanned ? wrapped(call) : call]
  })
  return Object.fromEntries(entries)
}

/** The page's side of one worker: what to tell it, so that it has a plan. */
export function planTeller() {
  let told: Plan | null = null
  let revision = 0
  return {
    changeTo(plan: Plan): PlanChange {
      const before = told
      told = plan
      revision += 1
      if (before === null) return { revision, whole: plan }
      return { revision, since: revision - 1, change: changeBetween(before, plan) }
    },
    forget(): void {
      told = null
    },
  }
}

export function planKeeper(): (change: PlanChange) => Plan {
  let kept: { readonly plan: Plan; readonly revision: number } | null = null
  return change => {
    kept = { plan: planFrom(kept, change), revision: change.revision }
    return kept.plan
  }
}

function planFrom(kept: { readonly plan: Plan; readonly revision: number } | null, change: PlanChange): Plan {
  if (!('since' in change)) return change.whole
  if (kept?.revision !== change.since) {
    throw new RangeError(`a change since plan ${change.since} came to ${kept ? `plan ${kept.revision}` : 'no plan'}`)
  }
  return changed(kept.plan, change.change) as Plan
}
