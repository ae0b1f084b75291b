import { describe, expect, it } from 'vitest'
import { addStationInUse, removeFeatures } from '#geo/plan/edits-features'
import { addSeason, removeSeason } from '#geo/plan/edits-seasons'
import {
  closePlan,
  edit,
  explain,
  notify,
  openPlan,
  select,
  setPage,
  setTool,
  setView,
  setYear,
  undo,
} from '../../../src/state/actions'
import { newId } from '../../../src/state/new-id'
import { createPlannerStore } from '../../../src/state/store'
import { smallPlan, stationFeature } from '../../support/builders'

function opened(year?: number) {
  const store = createPlannerStore(2020)
  openPlan(store, smallPlan(), 'plan-1', year)
  return { store, view: () => store.getState().view }
}

describe('opening a plan', () => {
  it('shows its latest season, or the one that is asked for', () => {
    expect(opened().view().year).toBe(2026)
    expect(opened(2025).view().year).toBe(2025)
  })

  it('keeps the year that was shown where the plan has no season', () => {
    const store = createPlannerStore(2020)
    openPlan(store, smallPlan({ seasons: [] }), null)
    expect(store.getState().view.year).toBe(2020)
  })

  it('gives a plan that was never kept an id of its own', () => {
    const store = createPlannerStore(2020)
    openPlan(store, smallPlan(), null)
    const { planId } = store.getState().document
    expect(planId).toMatch(/^plan-[0-9a-z]{6}$/)
    openPlan(store, smallPlan(), null)
    expect(store.getState().document.planId).not.toBe(planId)
  })

  it('forgets selection, tool, working and results of the plan before, and asks the map to show it', () => {
    const { store, view } = opened()
    select(store, ['row-1'])
    setTool(store, 'row')
    explain(store, { figure: 'coverage', id: 'row-1' })
    store.setState(({ results }) => ({
      results: { ...results, report: { status: 'failed', reason: 'x', last: null } },
    }))
    const { focusRequest } = view()
    openPlan(store, smallPlan(), 'plan-2')
    expect(view()).toMatchObject({ selection: [], tool: 'select', working: null, focusRequest: focusRequest + 1 })
    expect(store.getState().results.report).toEqual({ status: 'idle' })
  })

  it('is undone by closing', () => {
    const { store } = opened()
    closePlan(store)
    expect(store.getState().document).toMatchObject({ plan: null, planId: null, past: [], future: [] })
  })
})

describe('the view', () => {
  it('takes only things of the plan into the selection', () => {
    const { store, view } = opened()
    select(store, ['row-1', 'row-77', 'station-1'])
    expect(view().selection).toEqual(['row-1', 'station-1'])
  })

  it('stays the very same where nothing changes', () => {
    const { store } = opened()
    select(store, ['row-1'])
    const before = store.getState()
    select(store, ['row-1'])
    setTool(store, 'select')
    setPage(store, 'ground')
    setYear(store, 2026)
    setView(store, { shading: before.view.shading })
    notify(store, null)
    expect(store.getState()).toBe(before)
  })

  it('drops what vanishes in the same change as the plan', () => {
    const { store, view } = opened()
    select(store, ['row-1', 'row-2'])
    explain(store, { figure: 'reach', id: 'row-1' })
    let changes = 0
    store.subscribe(() => {
      changes += 1
    })
    edit(store, removeFeatures(['row-1']))
    expect(changes).toBe(1)
    expect(view().selection).toEqual(['row-2'])
    expect(view().working).toBeNull()
  })

  it('drops what an undo takes away', () => {
    const { store, view } = opened()
    edit(store, addStationInUse(stationFeature('station-9'), 2026, {}))
    select(store, ['station-9'])
    undo(store)
    expect(view().selection).toEqual([])
  })

  it('puts away what said that Undo takes it back, and no other news', () => {
    const { store, view } = opened()
    const said = (text: string) => {
      edit(store, removeFeatures(['station-1']))
      notify(store, text)
      undo(store)
      return view().notice
    }
    expect(said('1 thing deleted. Undo brings it back.')).toBeNull()
    expect(said('The plan was not saved.')).toBe('The plan was not saved.')
    notify(store, 'Undo takes it back.')
    undo(store)
    expect(view().notice).toBe('Undo takes it back.')
  })

  it('keeps the working of the whole orchard and the same selection over an edit', () => {
    const { store, view } = opened()
    select(store, ['row-2'])
    explain(store, { figure: 'reach', id: null })
    const before = view()
    edit(store, removeFeatures(['row-1']))
    expect(view()).toBe(before)
  })

  it('leaves a season that vanishes for the latest one', () => {
    const { store, view } = opened(2025)
    edit(store, removeSeason(2025))
    expect(view().year).toBe(2026)
    edit(store, addSeason({ year: 2027 }))
    expect(view().year).toBe(2026)
    setYear(store, 2027)
    undo(store)
    expect(view().year).toBe(2026)
  })
})

describe('new ids', () => {
  it('begin with the kind and do not come twice', () => {
    const ids = Array.from({ length: 500 }, () => newId('row'))
    expect(new Set(ids).size).toBe(500)
    for (const id of ids) expect(id).toMatch(/^row-[0-9a-z]{6}$/)
  })
})
