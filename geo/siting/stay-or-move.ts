import type { SuggestOptions } from './question'
import { type Setting, settingOf } from './setting'
import type { Suggestion } from './suggestion'
import { forTarget } from './target'

/** An answer and the question it was found by. */
export type Answered = { readonly setting: Setting; readonly value: Suggestion }

/**
 * A target where stations may move: once with all of these where and as they are, once with all stocked anew; the cheaper
 * counts. So leave to move never makes an answer dearer, and no answer under both bounds is known of either sort.
 */
export async function stayOrMove(setting: Setting, coverage: number): Promise<Answered> {
  const { ground, movers, options } = setting
  if (movers.length === 0) return { setting, value: await forTarget(setting, coverage) }
  const { onProgress } = options
  // Half of the time that a proof has is for either sort.
  const prove = options.prove && { ...options.prove, timeLimit: options.prove.timeLimit / 2 }
  const common: SuggestOptions = { ...options, ...(prove && { prove }) }
  const roles = { ...options.roles, ...Object.fromEntries(movers.map(({ id }) => [id, 'keep' as const])) }
  const staying = settingOf(ground, {
    ...common,
    roles,
    // What nothing of this sort goes below is none of the other's.
    ...(onProgress && { onProgress: (progress, best) => onProgress({ ...progress, costBound: null }, best) }),
  })
  const stay = await forTarget(staying, coverage)
  const leastStaying = stay.bound.cost ?? 0
  const moving: Setting = {
    ...setting,
    options: {
      ...common,
      ...(onProgress && {
        onProgress: (progress, best) => {
          const { cost = null, costBound = null } = progress
          const isCheaper = cost !== null && (stay.reached !== true || cost < stay.cost)
          const told = {
            ...progress,
            cost: isCheaper || stay.reached !== true ? cost : stay.cost,
            costBound: costBound && Math.min(costBound, leastStaying),
          }
          onProgress(told, isCheaper ? best : () => stay)
        },
      }),
    },
  }
  const move = await forTarget(moving, coverage)
  const isMove = isBetter(move, stay)
  const { setting: chosen, value } = isMove ? { setting: moving, value: move } : { setting: staying, value: stay }
  const least = stay.bound.cost! <= move.bound.cost! ? stay.bound : move.bound
  const cost = least.cost!
  const isProven = value.reached === true && value.cost <= cost * (1 + 1e-6)
  return {
    setting: chosen,
    value: { ...value, bound: { ...value.bound, cost, method: least.method, proven: isProven } },
  }
}

function isBetter(a: Suggestion, b: Suggestion): boolean {
  if (a.reached !== b.reached) return a.reached === true
  return a.reached === true ? a.cost < b.cost : (a.after.coverage ?? 0) > (b.after.coverage ?? 0)
}
