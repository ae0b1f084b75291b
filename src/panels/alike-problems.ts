import { isPlanting, type Plan } from '#geo/plan/plan'
import { type Problem, problemText } from '#geo/problem'
import { counted } from '../text/words'
import { cropTitle } from './titles'

/** One problem, or the same one of several plantings of a crop, which one deed mends. */
export type AlikeProblems = { readonly first: Problem; readonly all: readonly Problem[]; readonly text: string }

/** Problems with those told once that each planting of a crop has alike; in the order of the first of each. */
export function alikeProblems(plan: Plan, problems: readonly Problem[]): readonly AlikeProblems[] {
  const crops = new Map(
    plan.features.flatMap(feature => (isPlanting(feature) ? [[feature.id, feature.properties.crop] as const] : [])),
  )
  const heaps = new Map<string, Problem[]>()
  for (const [i, problem] of problems.entries()) {
    const crop = problem.code === 'no-bloom' ? crops.get(problem.at) : undefined
    const key = crop === undefined ? String(i) : JSON.stringify([crop, problem.values.year])
    const heap = heaps.get(key)
    if (heap === undefined) heaps.set(key, [problem])
    else heap.push(problem)
  }
  return [...heaps.values()].map(all => {
    const first = all[0]!
    if (all.length === 1) return { first, all, text: problemText(first) }
    const crop = cropTitle(plan, crops.get(first.at)!)
    const text = `${crop}: ${counted(all.length, 'planting')} have no bloom dates for ${first.values.year}, so their coverage cannot be computed. Give the crop bloom dates.`
    return { first, all, text }
  })
}
