import type { Edit } from '#geo/plan/edits'
import { type Plan, seasonOf } from '#geo/plan/plan'
import { boxesForPlan } from './boxes'
import { type History, perform, redone, undone } from './history'
import { newId } from './new-id'
import type { WorkingTopic } from './store'
import { idleResults, type Page, type PlannerStore, type SavingState, type Tool, type ViewState } from './store'
import { noYears } from './years'

/** Changes the open plan by one step that undo can take back. */
export function edit(store: PlannerStore, change: Edit): void {
  changeHistory(store, history => perform(history, change))
}

export function undo(store: PlannerStore): void {
  const { document, view } = store.getState()
  changeHistory(store, undone)
  // What says that Undo takes a deed back is no longer so; other news stays.
  const isTakenBack = store.getState().document.revision !== document.revision
  if (isTakenBack && view.notice?.includes('Undo')) notify(store, null)
}

export function redo(store: PlannerStore): void {
  changeHistory(store, redone)
}

/**
 * Opens a plan with a new history, at `year` or else at its latest season. `planId` null stands for a plan that this
 * device has not stored before: it gets a new id.
 */
export function openPlan(store: PlannerStore, plan: Plan, planId: string | null, year?: number): void {
  store.setState(({ document, view, boxes }) => ({
    document: { plan, planId: planId ?? newId('plan'), revision: document.revision + 1, past: [], future: [] },
    view: {
      ...view,
      year: year ?? latestYear(plan) ?? view.year,
      day: null,
      selection: [],
      picture: null,
      tool: 'select',
      working: null,
      notice: null,
      focusRequest: view.focusRequest + 1,
    },
    results: idleResults,
    boxes: boxesForPlan(boxes),
    years: noYears,
    saving: { status: 'idle', at: null, reason: '' },
  }))
}

/** The open plan turned out to be kept under another id already; its history goes on. */
export function adoptPlanId(store: PlannerStore, planId: string): void {
  store.setState(({ document }) => ({ document: { ...document, planId } }))
}

export function closePlan(store: PlannerStore): void {
  store.setState(({ document, view, boxes }) => ({
    document: { plan: null, planId: null, revision: document.revision + 1, past: [], future: [] },
    view: { ...view, day: null, selection: [], picture: null, tool: 'select', working: null },
    results: idleResults,
    boxes: boxesForPlan(boxes),
    years: noYears,
    saving: { status: 'idle', at: null, reason: '' },
  }))
}

/** Selects things of the plan; ids that it does not have are passed over. */
export function select(store: PlannerStore, ids: readonly string[]): void {
  const { plan } = store.getState().document
  const selection = plan === null ? [] : presentIds(plan, ids)
  if (isSameList(selection, store.getState().view.selection)) return
  changeView(store, { selection })
}

export function setTool(store: PlannerStore, tool: Tool): void {
  changeView(store, { tool })
}

export function setPage(store: PlannerStore, page: Page): void {
  changeView(store, { page })
}

export function setYear(store: PlannerStore, year: number): void {
  changeView(store, { year })
}

/** Changes how things are shown; the selection has its own action. */
export function setView(store: PlannerStore, patch: Partial<Omit<ViewState, 'selection'>>): void {
  changeView(store, patch)
}

/** Opens the working of a figure; null closes it. */
export function explain(store: PlannerStore, topic: WorkingTopic | null): void {
  changeView(store, { working: topic })
}

/** Says something to the person in one line; null takes it away. */
export function notify(store: PlannerStore, text: string | null): void {
  changeView(store, { notice: text })
}

export function setSaving(store: PlannerStore, saving: SavingState): void {
  store.setState({ saving })
}

function changeView(store: PlannerStore, patch: Partial<ViewState>): void {
  const { view } = store.getState()
  const isChange = Object.entries(patch).some(([name, value]) => view[name as keyof ViewState] !== value)
  if (isChange) store.setState({ view: { ...view, ...patch } })
}

/** One `setState` for the plan and all in the view that hangs on it, so that nobody ever sees an id that is gone. */
function changeHistory(store: PlannerStore, change: (history: History) => History): void {
  store.setState(state => {
    const { document, view } = state
    if (document.plan === null) return state
    const before: History = { plan: document.plan, past: document.past, future: document.future }
    const after = change(before)
    if (after === before) return state
    return {
      document: { ...document, ...after, revision: document.revision + 1 },
      view: fitted(view, before.plan, after.plan),
    }
  })
}

/** The view without what vanished from the plan: selected things, a shown working, the shown season. */
function fitted(view: ViewState, before: Plan, after: Plan): ViewState {
  const kept = presentIds(after, view.selection)
  const selection = isSameList(kept, view.selection) ? view.selection : kept
  const topicId = view.working?.id ?? null
  const working = topicId === null || presentIds(after, [topicId]).length > 0 ? view.working : null
  const isSeasonGone = seasonOf(before, view.year) !== undefined && seasonOf(after, view.year) === undefined
  const year = isSeasonGone ? (latestYear(after) ?? view.year) : view.year
  if (selection === view.selection && working === view.working && year === view.year) return view
  return { ...view, selection, working, year }
}

function latestYear(plan: Plan): number | null {
  return plan.seasons.length > 0 ? Math.max(...plan.seasons.map(season => season.year)) : null
}

function presentIds(plan: Plan, ids: readonly string[]): readonly string[] {
  if (ids.length === 0) return ids
  const present = new Set(plan.features.map(feature => feature.id))
  return ids.filter(id => present.has(id))
}

function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index])
}
