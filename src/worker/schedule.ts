import { isPlanting, type Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import type { PlannerState, PlannerStore } from '../state/store'
import type { Engine } from './engine'
import { lastOf } from './job-words'

/** Milliseconds from the last change to the evaluation, and from its answer to the ranges. */
const settling = 150
const resting = 600

type Schedule = {
  dragStation(id: string, at: LngLat): void
  endDrag(): void
}

const schedules = new WeakMap<PlannerStore, Schedule>()

/**
 * Results for a station under way, without a step of undo. When the drag ends with an edit, that edit brings the
 * evaluation; `endDrag` is for every end, also one that changes nothing.
 */
export function dragStation(store: PlannerStore, id: string, at: LngLat): void {
  schedules.get(store)?.dragStation(id, at)
}

export function endDrag(store: PlannerStore): void {
  schedules.get(store)?.endDrag()
}

/** Asks the engine for what each change of the store calls for, until the answer (a function) is called. */
export function startSchedule(store: PlannerStore, engine: Engine): () => void {
  const evaluation = new Delayed()
  const ranges = new Delayed()
  let isDragging = false
  /** What the drawn points were last made from. */
  let drawn: Basis | null = null

  const compute = (): void => {
    const { plan, year } = subjectOf(store.getState())
    if (plan === null) return
    const basis = basisOf(plan, year)
    // The points first: coverage comes point by point and has to meet the points it is for.
    if (drawn === null || !isSameBasis(basis, drawn)) {
      drawn = basis
      engine.cloud(plan, year)
    } else engine.confirm('cloud')
    engine.evaluate(plan, year)
  }

  const onChange = (now: Subject, before: Subject): void => {
    isDragging = false
    ranges.cancel()
    if (now.plan === null) {
      evaluation.cancel()
      drawn = null
      engine.clear()
      return
    }
    const isOpening = now.planId !== before.planId
    if (isOpening) {
      drawn = null
      engine.clear()
    }
    const isRedrawn = drawn !== null && !isSameBasis(basisOf(now.plan, now.year), drawn)
    if (isRedrawn) drawn = null
    engine.outdate(drawn === null ? ['report', 'ranges', 'cloud'] : ['report', 'ranges'])
    evaluation.start(isOpening ? 0 : settling, compute)
  }

  const onReport = (report: PlannerState['results']['report']): void => {
    if (report.status !== 'ready') return
    ranges.start(resting, () => {
      const { plan, year } = subjectOf(store.getState())
      if (plan !== null && !isDragging) engine.ranges(plan, year)
    })
  }

  /** The day that is looked at, again whenever the season it is a day of has been laid out or changed. */
  const onDay = ([day, laidOut]: ReturnType<typeof dayAsked>): void => {
    if (day === null || laidOut !== 'none') engine.day(day)
  }

  schedules.set(store, {
    dragStation(id, at) {
      if (!isDragging) {
        isDragging = true
        // The stations move in the season last evaluated, which has to be the one on the screen.
        evaluation.runNow()
        ranges.cancel()
        engine.outdate(['ranges'])
      }
      engine.moveStation(id, at)
    },
    endDrag() {
      if (!isDragging) return
      isDragging = false
      engine.outdate(['report'])
      evaluation.start(settling, compute)
    },
  })
  const stopWatching = [
    store.subscribe(subjectOf, onChange, { equalityFn: isSameSubject }),
    store.subscribe(state => state.results.report, onReport),
    store.subscribe(dayAsked, onDay, { equalityFn: (a, b) => a.every((value, i) => value === b[i]) }),
  ]
  const subject = subjectOf(store.getState())
  if (subject.plan !== null) onChange(subject, { ...subject, plan: null, planId: null })
  return () => {
    for (const stop of stopWatching) stop()
    evaluation.cancel()
    ranges.cancel()
    schedules.delete(store)
  }
}

type Subject = { readonly plan: Plan | null; readonly planId: string | null; readonly year: number }

function subjectOf({ document, view }: PlannerState): Subject {
  return { plan: document.plan, planId: document.planId, year: view.year }
}

function isSameSubject(a: Subject, b: Subject): boolean {
  return a.plan === b.plan && a.year === b.year
}

/** The day that is looked at and the last answer of the season that is laid out, which the day is a part of. */
function dayAsked({ view, results }: PlannerState): readonly [day: number | null, laidOut: unknown] {
  const { report } = results
  if (report.status === 'idle') return [view.day, 'none']
  return [view.day, report.status === 'failed' ? 'failed' : lastOf(report)]
}

/** All that the drawn points hang on, by reference: plantings, own crops (their spacings) and the year. */
type Basis = readonly unknown[]

function basisOf(plan: Plan, year: number): Basis {
  return [year, plan.crops, ...plan.features.filter(isPlanting)]
}

function isSameBasis(a: Basis, b: Basis): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index])
}

/** One thing to do after a while; starting anew puts it off. */
class Delayed {
  #timer: ReturnType<typeof setTimeout> | undefined
  #action: (() => void) | undefined

  start(milliseconds: number, action: () => void): void {
    this.cancel()
    this.#action = action
    this.#timer = setTimeout(() => this.runNow(), milliseconds)
  }

  /** Does at once what waits, if anything does. */
  runNow(): void {
    const action = this.#action
    this.cancel()
    action?.()
  }

  cancel(): void {
    clearTimeout(this.#timer)
    this.#action = undefined
  }
}
