import { describe, expect, it } from 'vitest'
import { addFeatures, moveFeatures, removeFeatures, setProperties } from '#geo/plan/edits-features'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { closePlan, edit, openPlan, redo, undo } from '../../../src/state/actions'
import { gestureKey } from '../../../src/state/history'
import { redoName, undoName } from '../../../src/state/selectors'
import { createPlannerStore } from '../../../src/state/store'
import { mudFeature, smallPlan } from '../../support/builders'

function opened() {
  const store = createPlannerStore(2026)
  const start = smallPlan()
  openPlan(store, start, 'plan-1')
  return { store, start, document: () => store.getState().document, plan: () => store.getState().document.plan! }
}

const east = { lng: 1e-4, lat: 0 }

describe('undo', () => {
  it('takes back one step and names it', () => {
    const { store, start, plan } = opened()
    edit(store, removeFeatures(['station-1']))
    expect(undoName(store.getState())).toBe('Undo: remove station North gate')
    expect(redoName(store.getState())).toBeNull()
    undo(store)
    expect(plan()).toBe(start)
    expect(undoName(store.getState())).toBeNull()
    expect(redoName(store.getState())).toBe('Redo: remove station North gate')
    redo(store)
    expect(plan().features).toHaveLength(4)
    expect(undoName(store.getState())).toBe('Undo: remove station North gate')
  })

  it('takes a whole gesture back as one step', () => {
    const { store, start, plan, document } = opened()
    const key = gestureKey()
    for (let i = 0; i < 60; i += 1) edit(store, moveFeatures(['station-1'], east, key))
    expect(document().past).toHaveLength(1)
    undo(store)
    expect(plan()).toBe(start)
  })

  it('keeps two gestures apart, and edits without a key', () => {
    const { store, document } = opened()
    edit(store, moveFeatures(['station-1'], east, gestureKey()))
    edit(store, moveFeatures(['station-1'], east, gestureKey()))
    edit(store, moveFeatures(['station-1'], east))
    edit(store, moveFeatures(['station-1'], east))
    expect(document().past).toHaveLength(4)
  })

  it('does not join a gesture over another step', () => {
    const { store, document } = opened()
    edit(store, moveFeatures(['station-1'], east, 'gesture-x'))
    edit(store, setPlanMembers({ name: 'Hill' }))
    edit(store, moveFeatures(['station-1'], east, 'gesture-x'))
    expect(document().past).toHaveLength(3)
  })

  it('gives a step of its own to what follows an undo, also under the same key', () => {
    const { store, plan, document } = opened()
    edit(store, moveFeatures(['station-1'], east, 'gesture-x'))
    const moved = plan()
    edit(store, setPlanMembers({ name: 'Hill' }))
    undo(store)
    edit(store, moveFeatures(['station-1'], east, 'gesture-x'))
    expect(document().future).toEqual([])
    undo(store)
    expect(plan()).toBe(moved)
  })

  it('makes no step of an edit that changes nothing, and keeps the way forward', () => {
    const { store, document } = opened()
    edit(store, setPlanMembers({ name: 'Hill' }))
    undo(store)
    const before = store.getState()
    edit(store, setProperties('row-1', { name: 'Row 1' }))
    expect(store.getState()).toBe(before)
    expect(document().future).toHaveLength(1)
  })

  it('goes back at most 200 steps', () => {
    const { store, plan, document } = opened()
    for (let i = 1; i <= 205; i += 1) edit(store, setPlanMembers({ name: `Name ${i}` }))
    expect(document().past).toHaveLength(200)
    for (let i = 0; i < 205; i += 1) undo(store)
    expect(plan().name).toBe('Name 5')
  })

  it('makes the revision grow in both directions', () => {
    const { store, document } = opened()
    const revisions = [document().revision]
    for (const act of [() => edit(store, setPlanMembers({ name: 'Hill' })), () => undo(store), () => redo(store)]) {
      act()
      revisions.push(document().revision)
    }
    expect(revisions).toEqual([1, 2, 3, 4])
  })

  it('starts anew with another plan', () => {
    const { store, document } = opened()
    edit(store, addFeatures([mudFeature('mud-1')]))
    const { revision } = document()
    openPlan(store, smallPlan({ name: 'Other' }), 'plan-2')
    expect(document().past).toEqual([])
    expect(document().revision).toBe(revision + 1)
    undo(store)
    expect(document().plan!.name).toBe('Other')
  })

  it('does nothing where no plan is open', () => {
    const { store } = opened()
    closePlan(store)
    const before = store.getState()
    undo(store)
    redo(store)
    edit(store, setPlanMembers({ name: 'Hill' }))
    expect(store.getState()).toBe(before)
  })
})
