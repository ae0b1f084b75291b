import { expect, it } from 'vitest'
import { putCheckAside, setColdStore, takeCheckBack } from '#geo/plan/edits-timing'
import { type Plan, seasonOf } from '#geo/plan/plan'
import { frozen, smallPlan } from '../../support/builders'

const plan = frozen(smallPlan())
const season = (of: Plan) => seasonOf(of, 2026)!

it('the cold store is set, changed and cleared, and members of it that are not known stay', () => {
  const from = { from: '2025-11-01' }
  const cold = setColdStore(2026, { ...from, temperature: 3 }).apply(plan)
  expect(season(cold).coldStore).toEqual({ ...from, temperature: 3 })
  expect(setColdStore(2026, { ...from, temperature: 3 }).apply(cold)).toBe(cold)
  expect(season(setColdStore(2026, from).apply(cold)).coldStore).toEqual(from)
  expect(season(setColdStore(2026, null).apply(cold))).not.toHaveProperty('coldStore')
  expect(setColdStore(2026, null).apply(plan)).toBe(plan)
  const strange = { ...plan, seasons: [{ year: 2026, coldStore: { ...from, humidity: 70 } }] }
  expect(season(setColdStore(2026, { from: '2025-12-01' }).apply(strange)).coldStore).toEqual({
    from: '2025-12-01',
    humidity: 70,
  })
})

it('a check is put aside once, with the latest reason, and taken back', () => {
  const early = { code: 'released-early', at: 'station-1', reason: 'The hedge is in blossom' }
  const one = putCheckAside(2026, early).apply(plan)
  expect(season(one).setAside).toEqual([early])
  expect(putCheckAside(2026, early).apply(one)).toBe(one)
  const elsewhere = { ...early, at: 'station-2' }
  const both = putCheckAside(2026, elsewhere).apply(one)
  expect(season(putCheckAside(2026, { ...early, reason: 'Seen' }).apply(both)).setAside).toEqual([
    { ...early, reason: 'Seen' },
    elsewhere,
  ])
  expect(season(takeCheckBack(2026, early).apply(both)).setAside).toEqual([elsewhere])
  expect(season(takeCheckBack(2026, early).apply(one))).not.toHaveProperty('setAside')
  expect(takeCheckBack(2026, elsewhere).apply(one)).toBe(one)
})
