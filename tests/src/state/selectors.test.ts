import { describe, expect, it } from 'vitest'
import { moveFeatures, setProperties } from '#geo/plan/edits-features'
import { setBloom } from '#geo/plan/edits-seasons'
import { setOwnParameter, setPlanMembers } from '#geo/plan/edits-settings'
import { edit, openPlan, select } from '../../../src/state/actions'
import {
  bloomOf,
  cropsIn,
  featureById,
  forages,
  planeOfPlan,
  plantings,
  plantingsIn,
  problemsOf,
  selectedFeatures,
  settingsOf,
  stationSeasonOf,
  stations,
  stationsInUse,
} from '../../../src/state/selectors'
import { createPlannerStore } from '../../../src/state/store'
import { appleBloom, smallPlan } from '../../support/builders'

const plan = smallPlan()
const ids = (features: readonly { readonly id: string }[]) => features.map(({ id }) => id)

describe('reads of a plan', () => {
  it('find things by id and kind', () => {
    expect(featureById(plan, 'station-1')).toBe(plan.features[2])
    expect(featureById(plan, 'row-77')).toBeUndefined()
    expect(ids(plantings(plan))).toEqual(['row-1', 'row-2'])
    expect(ids(stations(plan))).toEqual(['station-1', 'station-2'])
    expect(ids(forages(plan))).toEqual(['forage-1'])
  })

  it('know what stands and is in use in a year', () => {
    const grubbed = setProperties('row-1', { removed: 2026 }).apply(plan)
    expect(ids(plantingsIn(grubbed, 2025))).toEqual(['row-1', 'row-2'])
    expect(ids(plantingsIn(grubbed, 2026))).toEqual(['row-2'])
    expect(ids(stationsInUse(plan, 2026))).toEqual(['station-1'])
    expect(stationsInUse(plan, 1999)).toEqual([])
    expect(cropsIn(plan, 2026)).toEqual(['apple'])
    expect(stationSeasonOf(plan, 2026, 'station-1')?.tubes).toBe(120)
    expect(stationSeasonOf(plan, 2026, 'station-2')).toBeUndefined()
  })

  it("give a planting its own bloom before its crop's, and a forage area only its own", () => {
    const [row, , , , clover] = plan.features
    const own = { first: '2026-04-01', full: '2026-04-08', end: '2026-04-20' }
    const after = setBloom(2026, 'row-1', own).apply(plan)
    expect(bloomOf(plan, 2026, row as never)).toEqual(appleBloom(2026))
    expect(bloomOf(after, 2026, row as never)).toEqual(own)
    expect(bloomOf(plan, 2026, clover as never)?.full).toBe('2026-05-01')
    expect(bloomOf(plan, 2025, clover as never)).toBeUndefined()
  })

  it('are remembered as long as what they read stays the same', () => {
    const renamed = setPlanMembers({ name: 'Hill' }).apply(plan)
    expect(plantings(renamed)).toBe(plantings(plan))
    expect(planeOfPlan(renamed)).toBe(planeOfPlan(plan))
    expect(settingsOf(renamed)).toBe(settingsOf(plan))
    expect(plantingsIn(plan, 2026)).toBe(plantingsIn(plan, 2026))
    expect(problemsOf(plan, 2026)).toBe(problemsOf(plan, 2026))
  })

  it('are made anew when what they read changes', () => {
    const moved = moveFeatures(['row-1'], { lng: 1e-3, lat: 0 }).apply(plan)
    expect(plantings(moved)[0]).toBe(moved.features[0])
    expect(planeOfPlan(moved).centre).not.toEqual(planeOfPlan(plan).centre)
    const own = setOwnParameter('site', 'spareTubes', 0.4).apply(plan)
    expect(settingsOf(own).site.spareTubes).toBe(0.4)
    expect(settingsOf(plan).site.spareTubes).not.toBe(0.4)
  })
})

describe('selected things', () => {
  it('follow the plan and are the same list until something changes', () => {
    const store = createPlannerStore(2026)
    openPlan(store, plan, 'plan-1')
    expect(selectedFeatures(store.getState())).toBe(selectedFeatures(store.getState()))
    select(store, ['row-2', 'station-1'])
    expect(ids(selectedFeatures(store.getState()))).toEqual(['row-2', 'station-1'])
    expect(selectedFeatures(store.getState())).toBe(selectedFeatures(store.getState()))
    edit(store, setProperties('row-2', { name: 'Top row' }))
    expect(selectedFeatures(store.getState())[0]!.properties.name).toBe('Top row')
  })
})
