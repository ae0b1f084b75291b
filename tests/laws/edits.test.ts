import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { type Edit, labelOf } from '#geo/plan/edits'
import {
  addFeatures,
  addStationInUse,
  duplicateFeatures,
  moveFeatures,
  removeFeatures,
  setGeometry,
  setProperties,
} from '#geo/plan/edits-features'
import { addSeason, removeSeason, setBloom, setReleases, setStationSeason } from '#geo/plan/edits-seasons'
import { setOwnCrop, setOwnParameter, setPlanMembers } from '#geo/plan/edits-settings'
import { putCheckAside, setColdStore, takeCheckBack } from '#geo/plan/edits-timing'
import type { Plan } from '#geo/plan/plan'
import { edit, openPlan, redo, select, undo } from '../../src/state/actions'
import { createPlannerStore } from '../../src/state/store'
import { appleBloom, frozen, mudFeature, rowFeature, smallPlan, stationFeature, step } from '../support/builders'

const seed = 20260406

/** An edit of whatever the plan holds at that moment; null where it holds nothing to edit so. */
type Deed = (plan: Plan, turn: number) => Edit | null

const somewhere = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }))
const year = fc.integer({ min: 2024, max: 2027 })
const key = fc.constantFrom(undefined, 'gesture-a', 'gesture-b')

function idOf(plan: Plan, pick: number): string | null {
  return plan.features.length > 0 ? plan.features[pick % plan.features.length]!.id : null
}

function onOne(make: (id: string) => Edit, pick: number): Deed {
  return plan => {
    const id = idOf(plan, pick)
    return id === null ? null : make(id)
  }
}

const deed: fc.Arbitrary<Deed> = fc.oneof(
  somewhere.map(
    (at): Deed =>
      (_, turn) =>
        addFeatures([mudFeature(`mud-${turn}`, {}, at), rowFeature(`row-n${turn}`)]),
  ),
  fc.tuple(somewhere, year).map(
    ([at, y]): Deed =>
      (_, turn) =>
        addStationInUse(stationFeature(`s-${turn}`, {}, at), y, {}),
  ),
  fc.nat().map(pick => onOne(id => removeFeatures([id]), pick)),
  fc
    .tuple(fc.nat(), somewhere, key)
    .map(([pick, [east, north], k]) => onOne(id => moveFeatures([id], { lng: east / 1e4, lat: north / 1e4 }, k), pick)),
  fc.tuple(fc.nat(), somewhere).map(
    ([pick, by]): Deed =>
      (plan, turn) => {
        const id = idOf(plan, pick)
        const shift = { lng: by[0] / 1e4, lat: by[1] / 1e4 }
        return id === null ? null : duplicateFeatures([id], kind => `${kind}-c${turn}`, shift)
      },
  ),
  fc
    .tuple(fc.nat(), fc.string({ maxLength: 6 }), key)
    .map(([pick, name, k]) => onOne(id => setProperties(id, { name }, k), pick)),
  fc.tuple(fc.nat(), somewhere, key).map(
    ([pick, at, k]): Deed =>
      plan => {
        const stations = plan.features.filter(({ geometry }) => geometry.type === 'Point')
        const station = stations[pick % Math.max(1, stations.length)]
        return station ? setGeometry(station.id, { type: 'Point', coordinates: step(at) }, k) : null
      },
  ),
  fc.tuple(year, fc.boolean()).map(
    ([y, isThere]): Deed =>
      () =>
        setBloom(y, 'apple', isThere ? appleBloom(y) : null),
  ),
  fc
    .tuple(fc.nat(), year, fc.nat({ max: 200 }))
    .map(([pick, y, tubes]) => onOne(id => setStationSeason(y, id, { tubes }), pick)),
  fc
    .tuple(fc.nat(), year, fc.nat({ max: 99 }))
    .map(([pick, y, females]) => onOne(id => setReleases(y, id, [{ date: `${y}-04-06`, females }]), pick)),
  year.map(
    (y): Deed =>
      plan =>
        plan.seasons.some(season => season.year === y) ? removeSeason(y) : addSeason({ year: y }),
  ),
  fc.nat({ max: 9 }).map(
    (value): Deed =>
      () =>
        setOwnParameter('osmia-cornuta', 'lag', value > 5 ? null : value + 1),
  ),
  fc.nat({ max: 9 }).map(
    (value): Deed =>
      () =>
        setOwnCrop('hill-apple', value > 5 ? null : { basedOn: 'apple', appeal: 1 }),
  ),
  fc.tuple(year, fc.integer({ min: 0, max: 6 }), key).map(
    ([y, degrees, k]): Deed =>
      () =>
        setColdStore(y, degrees === 6 ? null : { from: `${y - 1}-11-01`, temperature: degrees }, k),
  ),
  fc.tuple(year, fc.constantFrom('one', 'two'), fc.string({ maxLength: 3 }), fc.boolean()).map(
    ([y, code, reason, isAside]): Deed =>
      () =>
        isAside ? putCheckAside(y, { code, at: 'row-1', reason }) : takeCheckBack(y, { code, at: 'row-1' }),
  ),
  fc.tuple(fc.string({ maxLength: 6 }), key).map(
    ([name, k]): Deed =>
      () =>
        setPlanMembers({ name }, k),
  ),
)

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
