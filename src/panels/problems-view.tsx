import { nameOf } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { select, setView } from '../state/actions'
import { featureById } from '../state/selectors'
import { usePlannerStore } from '../state/use-planner'
import { alikeProblems } from './alike-problems'
import { usePlan } from './hooks'
import { useAllProblems, useProblems } from './problem-badge'
import { ProblemList } from './problem-list'
import { SetAsideButton, SetAsideList } from './set-aside'

/** Everything that stands in the way of a sound result, in sentences. */
export function ProblemsView() {
  const store = usePlannerStore()
  const plan = usePlan()
  const problems = useProblems()
  const alike = new Map(alikeProblems(plan, problems).map(each => [each.first, each]))
  const show = (ids: readonly string[]) => {
    select(store, ids)
    setView(store, { panelFolded: false })
  }
  const all = useAllProblems()
  const title = (problem: Problem) => {
    const feature = alike.get(problem)!.all.length === 1 ? featureById(plan, problem.at) : undefined
    return feature ? nameOf(feature) : null
  }
  return (
    <div className="stack">
      {problems.length === 0 ? <p>No problems found in this plan.</p> : null}
      <ProblemList
        problems={[...alike.keys()]}
        nameOf={title}
        textOf={problem => alike.get(problem)!.text}
        onSelect={id => show([id])}
        below={problem => {
          const { all } = alike.get(problem)!
          if (all.length === 1) return <SetAsideButton key={problem.code + problem.at} problem={problem} />
          return (
            <button type="button" className="link" onClick={() => show(all.map(({ at }) => at))}>
              Select all {all.length}
            </button>
          )
        }}
      />
      <SetAsideList problems={all} />
    </div>
  )
}
