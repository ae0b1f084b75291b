import { seasonOf } from '#geo/plan/plan'
import type { PlannerState, PlannerStore } from './store'
import type { Ahead, ChangeMap, YearsState } from './years'

export function changeYears(store: PlannerStore, patch: Partial<YearsState>): void {
  store.setState(({ years }) => ({ years: { ...years, ...patch } }))
}

export function changeAhead(store: PlannerStore, patch: Partial<Ahead>): void {
  const { ahead } = store.getState().years
  changeYears(store, { ahead: { ...ahead, ...patch } })
}

/** The season held against the one that is looked at; null where the plan has no two. */
export function yearAgainst({
  document,
  view,
  years,
}: Pick<PlannerState, 'document' | 'view' | 'years'>): number | null {
  const { plan } = document
  if (plan === null || seasonOf(plan, view.year) === undefined) return null
  const others = plan.seasons.map(({ year }) => year).filter(year => year !== view.year)
  if (years.against !== null && others.includes(years.against)) return years.against
  const before = others.filter(year => year < view.year)
  return before.length > 0 ? Math.max(...before) : others.length > 0 ? Math.min(...others) : null
}

/** The two seasons that are being compared on the screen; null while none are. */
export function comparedYears(state: PlannerState): readonly [from: number, to: number] | null {
  const { view, years } = state
  if (view.page !== 'years' || view.yearTask !== null || years.look !== 'compare') return null
  const from = yearAgainst(state)
  return from === null ? null : [from, view.year]
}

/** What the map shows of the two seasons that are compared; `season` while none are. */
export function changeMapShown(state: PlannerState): ChangeMap {
  return comparedYears(state) === null ? 'season' : state.years.map
}

/** Two maps need room: the panel of a phone makes way, and drawing rests meanwhile. */
export function showChangeMap(store: PlannerStore, map: ChangeMap): void {
  store.setState(({ years, view }) => ({
    years: { ...years, map },
    view:
      map === 'beside'
        ? { ...view, sheet: 'third', tool: 'select' }
        : map === 'change' && view.sheet === 'full'
          ? { ...view, sheet: 'half' }
          : view,
  }))
}
