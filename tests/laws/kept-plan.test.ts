import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type History, perform, redone, undone } from '../../src/state/history'
import { planKeeper, planTeller } from '../../src/worker/kept-plan'
import { changeBetween, changed } from '../../src/worker/plan-change'
import { frozen, smallPlan } from '../support/builders'
import { deed } from '../support/deeds'

const seed = 20260407

/** What a worker on the other side of the border has after it was told. */
function worker() {
  const teller = planTeller()
  const planAfter = planKeeper()
  return { tell: (plan: History['plan']) => planAfter(structuredClone(teller.changeTo(plan))), teller }
}

describe('the plan that a worker keeps', () => {
  it('is that of the page, to the order of its members, whatever is done and whenever the worker is ended', () => {
    const turn = fc.tuple(
      deed,
      fc.constantFrom('edit', 'edit', 'edit', 'undo', 'redo', 'reorder', 'new worker', 'broken off', 'other plan'),
      // Not every plan is told: edits follow each other faster than answers.
      fc.boolean(),
    )
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 30 }), turns => {
        let history: History = { plan: frozen(smallPlan()), past: [], future: [] }
        let { tell, teller } = worker()
        turns.forEach(([make, way, isTold], i) => {
          if (way === 'edit') {
            const made = make(history.plan, i)
            if (made) history = perform(history, made)
          } else if (way === 'undo') history = undone(history)
          else if (way === 'redo') history = redone(history)
          else if (way === 'reorder') {
            const { plan } = history
            const entries = Object.entries(plan).reverse()
            history = {
              ...history,
              plan: { ...(Object.fromEntries(entries) as typeof plan), features: [...plan.features].reverse() },
            }
          } else if (way === 'new worker') ({ tell, teller } = worker())
          else if (way === 'broken off') teller.forget()
          else history = { ...history, plan: frozen(smallPlan({ name: 'Another' })) }
          if (!isTold) return
          const kept = tell(history.plan)
          expect(kept).toEqual(history.plan)
          expect(JSON.stringify(kept)).toBe(JSON.stringify(history.plan))
        })
      }),
      { seed, numRuns: 300 },
    )
  })

  it('is right for any plain value whatsoever', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), fc.jsonValue({ maxDepth: 4 }), (before, after) => {
        const mixed = { a: before, b: [before, after, before], list: [before, after] }
        const then = { b: [after, before, before], list: [after, before, after], ...{ a: after } }
        for (const [from, to] of [
          [before, after],
          [mixed, then],
          [then, mixed],
        ]) {
          const arrived = changed(structuredClone(from), structuredClone(changeBetween(from, to)))
          expect(JSON.stringify(arrived)).toBe(JSON.stringify(to))
        }
      }),
      { seed, numRuns: 500 },
    )
  })

  it('holds a member by the name of a prototype like any other', () => {
    const from = JSON.parse('{"besides":{"__proto__":{"x":1},"k":1}}')
    const to = { besides: { ...JSON.parse('{"__proto__":{"x":2},"k":1}') } }
    const after = changed(structuredClone(from), structuredClone(changeBetween(from, to))) as typeof to
    expect(JSON.stringify(after)).toBe('{"besides":{"__proto__":{"x":2},"k":1}}')
    expect(Object.getPrototypeOf(after.besides)).toBe(Object.prototype)
  })

  it('shares what did not change with the plan before it', () => {
    const { tell } = worker()
    const plan = smallPlan()
    const first = tell(plan)
    const second = tell({ ...plan, name: 'Renamed' })
    expect(second.features).toBe(first.features)
    const [gone, ...rest] = plan.features
    const third = tell({ ...plan, features: [...rest, gone!] })
    expect(third.features.at(-1)).toBe(first.features[0])
  })

  it('is not made up from a change to a plan that the worker never had', () => {
    const teller = planTeller()
    teller.changeTo(smallPlan())
    const change = teller.changeTo(smallPlan({ name: 'Renamed' }))
    expect(() => planKeeper()(change)).toThrow('a change since plan 1 came to no plan')
  })
})
