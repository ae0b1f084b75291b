import { describe, expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import { setOwnCrop, setOwnParameter, setPlanMembers } from '#geo/plan/edits-settings'
import { frozen, smallPlan } from '../../support/builders'

const plan = frozen(smallPlan({ parameters: { backgroundBlossom: 3, 'osmia-lignaria': { lag: 7 } } }))

describe('members of the plan', () => {
  it('are set as they stand', () => {
    const after = setPlanMembers({ units: 'us', bee: 'osmia-cornuta' }).apply(plan)
    expect(after).toEqual({ ...plan, units: 'us', bee: 'osmia-cornuta' })
    expect(after.features).toBe(plan.features)
    expect(setPlanMembers({ units: 'metric' }).apply(plan)).toBe(plan)
  })

  it('are named', () => {
    expect(labelOf(setPlanMembers({ name: 'Hill' }), plan)).toBe('Rename plan')
    expect(labelOf(setPlanMembers({ bloomRegion: 'continental' }), plan)).toBe('Change bloom region of the plan')
  })
})

describe("the grower's own values", () => {
  it('are set for the site', () => {
    expect(setOwnParameter('site', 'spareTubes', 0.1).apply(plan).parameters).toEqual({
      ...plan.parameters,
      spareTubes: 0.1,
    })
    expect(setOwnParameter('site', 'backgroundBlossom', 3).apply(plan)).toBe(plan)
  })

  it('are set for one bee', () => {
    const { parameters } = setOwnParameter('osmia-lignaria', 'nestingLife', 15).apply(plan)
    expect(parameters).toEqual({ backgroundBlossom: 3, 'osmia-lignaria': { lag: 7, nestingLife: 15 } })
    expect(setOwnParameter('osmia-cornuta', 'lag', 8).apply(plan).parameters['osmia-cornuta']).toEqual({ lag: 8 })
  })

  it('go with null, and the group of a bee with its last', () => {
    expect(setOwnParameter('osmia-lignaria', 'lag', null).apply(plan).parameters).toEqual({ backgroundBlossom: 3 })
    expect(setOwnParameter('osmia-cornuta', 'lag', null).apply(plan)).toBe(plan)
    expect(labelOf(setOwnParameter('osmia-lignaria', 'nestingLife', null), plan)).toBe('Reset nesting life')
  })
})

describe('own crops', () => {
  it('are set whole and taken away', () => {
    const crop = { basedOn: 'apple', name: 'Cider apple', stockingRate: 500 }
    const after = setOwnCrop('cider-apple', crop).apply(plan)
    expect(after.crops).toEqual({ 'cider-apple': crop })
    expect(setOwnCrop('cider-apple', null).apply(after).crops).toEqual({})
    expect(labelOf(setOwnCrop('cider-apple', null), after)).toBe('Remove own figures of crop Cider apple')
    expect(labelOf(setOwnCrop('cider-apple', crop), plan)).toBe('Change crop Cider apple')
  })
})
