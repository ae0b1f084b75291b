import { useState } from 'react'
import type { Plan } from '#geo/plan/plan'
import type { Outcome, Problem } from '#geo/problem'
import { Caution } from '../../parts/caution'
import { notify, openPlan, setPage } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { ProblemList } from '../problem-list'
import { type Sample, useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { KeptPlans } from './kept-plans'
import { NewPlanForm } from './new-plan-form'
import { SampleList } from './sample-list'
import './first.css'

type Fault = { readonly words: string; readonly problems: readonly Problem[] }

/** What is seen while no plan is open: what this is, and the ways in. */
export function FirstScreen() {
  const store = usePlannerStore()
  const { openFile, readKeptPlan } = useServices()
  const [fault, setFault] = useState<Fault | null>(null)
  const start = (plan: Plan, planId: string | null) => openPlan(store, plan, planId)
  // What was looked at before, a sample's coverage perhaps, is no place to begin.
  const begin = (plan: Plan) => {
    setPage(store, 'ground')
    start(plan, null)
  }
  const read = async (words: string, reading: Promise<Outcome<Plan> | null>, planId: string | null) => {
    try {
      const outcome = await reading
      if (outcome === null) return
      if (!outcome.ok) return setFault({ words, problems: outcome.problems })
      start(outcome.value, planId)
      const [first] = outcome.problems
      if (first) notify(store, `Opened, with ${outcome.problems.length} remarks: see Problems.`)
    } catch (error) {
      setFault({ words: `${words} ${reasonOf(error)}`, problems: [] })
    }
  }
  return (
    <main className="first-screen">
      <header className="first-head">
        <img src="icon.svg" alt="" width="48" height="48" />
        <div>
          <h1>Nestreach</h1>
          <p className="first-lead">
            Draw your fruit and your mason bee stations on a map, and see which plantings get enough bees while they
            bloom.
          </p>
        </div>
      </header>
      {fault === null ? null : (
        <section className="first-fault" role="alert">
          <p>{fault.words}</p>
          <ProblemList problems={fault.problems} />
        </section>
      )}
      <div className="first-columns">
        <section className="stack first-card" aria-labelledby="start">
          <h2 id="start">Start a plan</h2>
          <NewPlanForm onStart={begin} />
        </section>
        <div className="stack-wide">
          <section className="stack" aria-labelledby="kept">
            <h2 id="kept">Go on with a plan</h2>
            <KeptPlans onOpen={id => read('This plan could not be opened.', readKeptPlan(id), id)} />
            <div>
              <button type="button" onClick={() => read('The file was not opened.', openFile(), null)}>
                Open a plan file
              </button>
            </div>
          </section>
          <SampleList onOpen={(sample: Sample) => read('This sample could not be opened.', sample.open(), null)} />
          <section className="stack" aria-labelledby="before">
            <h2 id="before">Before you begin</h2>
            <Caution about="privacy" />
            <Caution about="general" />
            <Caution about="yield" />
          </section>
        </div>
      </div>
    </main>
  )
}
