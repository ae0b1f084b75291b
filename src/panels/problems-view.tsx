import { nameOf } from '#geo/plan/plan'
import { select, setView } from '../state/actions'
import { featureById } from '../state/selectors'
import { usePlannerStore } from '../state/use-planner'
import { usePlan } from './hooks'
import { useAllProblems, useProblems } from './problem-badge'
import { ProblemList } from './problem-list'
import { SetAsideButton, SetAsideList } from './set-aside'

/** Everything that stands in the way of a sound result, in sentences. */
export function ProblemsView() {
  const store = usePlannerStore()
  const plan = usePlan()
  const problems = useProblems()
  const show = (id: string) => {
    select(store, [id])
    setView(store, { panelFolded: false })
  }
  const all = useAllProblems()
  const title = (id: string) => {
    const feature = featureById(plan, id)
    return feature ? nameOf(feature) : null
  }
  return (
    <div className="stack">
      {problems.length === 0 ? <p>No problems found in this plan.</p> : null}
      <ProblemList
        problems={problems}
        nameOf={title}
        onSelect={show}
        below={problem => <SetAsideButton key={problem.code + problem.at} problem={problem} />}
      />
      <SetAsideList problems={all} />
    </div>
  )
}
