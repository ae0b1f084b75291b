import { type FoundQuestion, isFoundFor } from '../state/found'
import { foundQuestion } from '../state/found-question'
import type { PlannerStore, ResultsState } from '../state/store'
import { brokenOff, lastOf, refusal } from './job-words'
import { Lane } from './lane'
import type { MakePort } from './protocol'

/** Whoever waits no longer has the calculation ended soon; how long a change rests before it is asked about; ms. */
const patience = 200
const settling = 300

/** Works out a season as it was found, while the page that shows it is looked at, until the answer (a function) is called. */
export function startFound(store: PlannerStore, makePort: MakePort): () => void {
  // A worker of its own: four seasons are counted, which must not hold up the coverage of the next edit.
  const lane = new Lane(makePort, { patience })
  let timer: ReturnType<typeof setTimeout> | undefined
  const set = (found: ResultsState['found']): void =>
    store.setState(({ results }) => ({ results: { ...results, found } }))

  const ask = ({ plan, year, prices }: FoundQuestion): void => {
    const { document, results } = store.getState()
    const { revision } = document
    set({ status: 'running', last: lastOf(results.found), revision })
    lane.request({
      kind: 'found',
      call: api => api.yearRecord(plan, year, prices === null ? {} : { prices }),
      onAnswer: outcome => {
        if (!outcome.ok) return set({ status: 'failed', reason: refusal(outcome), last: null })
        set({ status: 'ready', value: { plan, year, prices, record: outcome.value }, revision })
      },
      onFailure: reason => set({ status: 'failed', reason: brokenOff(reason), last: null }),
    })
  }
  const onQuestion = (question: FoundQuestion | null): void => {
    clearTimeout(timer)
    lane.withdraw('found')
    if (question === null) return
    const { found } = store.getState().results
    if (found.status === 'ready' && isFoundFor(found.value, question)) return
    timer = setTimeout(() => ask(question), settling)
  }
  const stopWatching = store.subscribe(foundQuestion, onQuestion, { equalityFn: isSame, fireImmediately: true })
  return () => {
    clearTimeout(timer)
    stopWatching()
    lane.stop()
  }
}

function isSame(a: FoundQuestion | null, b: FoundQuestion | null): boolean {
  if (a === null || b === null) return a === b
  return a.plan === b.plan && a.year === b.year && JSON.stringify(a.prices) === JSON.stringify(b.prices)
}
