import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { labelOf } from '#geo/plan/edits'
import type { Plan } from '#geo/plan/plan'
import { edit, openPlan, redo, select, undo } from '../../src/state/actions'
import { createPlannerStore } from '../../src/state/store'
import { frozen, smallPlan } from '../support/builders'
import { deed, idOf } from '../support/deeds'

const seed = 20260406

describe('edits', () => {
  it('undone one by one lead back, redone lead forward again, by the very same plans', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 25 }), deeds => {
        const store = createPlannerStore(2026)
        const start = frozen(smallPlan())
        openPlan(store, start, 'plan-1')
        const plan = (): Plan => store.getState().document.plan!
        deeds.forEach((make, turn) => {
          const made = make(plan(), turn)
          if (made) edit(store, made)
          // Nothing may be changed in place: later edits share what they do not touch.
          frozen(plan())
        })
        const end = plan()
        const { length } = store.getState().document.past
        for (let i = 0; i < length; i += 1) undo(store)
        expect(plan()).toBe(start)
        undo(store)
        expect(plan()).toBe(start)
        for (let i = 0; i < length; i += 1) redo(store)
        expect(plan()).toBe(end)
        expect(store.getState().document.future).toEqual([])
      }),
      { seed, numRuns: 150 },
    )
  })

  it('never show a selected thing that is gone', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(deed, fc.constantFrom('edit', 'undo', 'redo'), fc.nat()), { maxLength: 25 }),
        deeds => {
          const store = createPlannerStore(2026)
          openPlan(store, smallPlan(), 'plan-1')
          store.subscribe(({ document, view }) => {
            const ids = document.plan!.features.map(({ id }) => id)
            expect(ids).toEqual(expect.arrayContaining([...view.selection]))
          })
          deeds.forEach(([make, way, pick], turn) => {
            const plan = store.getState().document.plan!
            const id = idOf(plan, pick)
            if (id) select(store, [id, ...store.getState().view.selection])
            if (way === 'undo') undo(store)
            else if (way === 'redo') redo(store)
            else {
              const made = make(plan, turn)
              if (made) edit(store, made)
            }
          })
        },
      ),
      { seed, numRuns: 100 },
    )
  })

  it('leave a plan that a file holds word for word, and have a name', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 15 }), deeds => {
        let plan = smallPlan()
        deeds.forEach((make, turn) => {
          const made = make(plan, turn)
          if (made === null) return
          expect(labelOf(made, plan)).toMatch(/^[A-Z][a-z]+ /)
          plan = made.apply(plan)
        })
        const read = readPlan(writePlan(plan))
        expect(read.ok && read.value).toEqual(plan)
      }),
      { seed, numRuns: 100 },
    )
  })
})
