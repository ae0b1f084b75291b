import { seasonOf } from '#geo/plan/plan'
import type { PlannerState, PlannerStore } from '../state/store'
import type { Ahead } from '../state/years'
import { changeMapShown, comparedYears } from '../state/years-actions'
import { lastOf } from './job-words'
import type { YearsEngine } from './years-engine'

/** Milliseconds from the last change to the calculation. */
const settling = 150

/** Works out what the page Years shows of several seasons, again after every change, for as long as it shows it. */
export function startYears(store: PlannerStore, engine: YearsEngine): () => void {
  let timer: ReturnType<typeof setTimeout> | null = null
  const cancel = (): void => {
    if (timer !== null) clearTimeout(timer)
    timer = null
  }
  const compute = (): void => {
    timer = null
    const state = store.getState()
    const { plan } = state.document
    if (plan === null) return
    const { results, view, years } = state
    const pair = comparedYears(state)
    if (pair !== null) {
      const [from, to] = pair
      const known = lastOf(results.comparison)
      if (known?.plan !== plan || known.from !== from || known.to !== to) engine.compare(plan, from, to)
      if (changeMapShown(state) !== 'season') {
        const other = lastOf(results.otherSeason)
        if (other?.plan !== plan || other.year !== from) engine.otherSeason(plan, from)
      }
    }
    if (isAhead(state)) {
      const known = lastOf(results.projection)
      const isKnown = known?.plan === plan && known.from === view.year && isSameQuestion(known.ahead, years.ahead)
      if (!isKnown) engine.project(plan, view.year, years.ahead)
    }
  }
  const onAsked = (asked: Asked, before: Asked): void => {
    cancel()
    engine.withdraw()
    if (asked[0] === null) return
    // An edit is followed by others; a press on a button is not.
    if (before[0] === null || asked[0] === before[0]) compute()
    else timer = setTimeout(compute, settling)
  }
  const stops = [
    store.subscribe(askedOf, onAsked, { equalityFn: isSameList }),
    store.subscribe(
      ({ document }) => document.planId,
      () => engine.clear(),
    ),
  ]
  return () => {
    cancel()
    for (const stop of stops) stop()
  }
}

/** All that the answers hang on; the plan first. Nothing is asked while nothing of it is on the screen. */
type Asked = readonly unknown[]

function askedOf(state: PlannerState): Asked {
  const { document, view, years } = state
  const pair = comparedYears(state)
  if (pair !== null) return [document.plan, ...pair, changeMapShown(state) !== 'season']
  if (!isAhead(state)) return [null]
  const { seasons, shareKept, target } = years.ahead
  return [document.plan, view.year, seasons, shareKept, target]
}

function isAhead({ document, view, years }: PlannerState): boolean {
  const isShown = view.page === 'years' && view.yearTask === null && years.look === 'ahead'
  return isShown && document.plan !== null && seasonOf(document.plan, view.year) !== undefined
}

/** Both ways of care are always worked out, so which one is shown makes no difference. */
function isSameQuestion(a: Ahead, b: Ahead): boolean {
  return a.seasons === b.seasons && a.shareKept === b.shareKept && a.target === b.target
}

function isSameList(a: Asked, b: Asked): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i])
}
