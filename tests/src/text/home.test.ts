import { describe, expect, it } from 'vitest'
import { isSouthern, placeOf } from '#geo/plan/home'
import { homeOf, seasonToPlan, springDay } from '../../../src/text/home'
import { planOf, station } from '../../support/orchard'

const plan = planOf({ features: [] })
const at = (lng: number, lat: number) => ({ ...plan, besides: { plan: { place: [lng, lat] } } })

describe("a plan's place", () => {
  it('is where it was started, whatever is drawn', () => {
    expect(homeOf({ ...at(3, 50), features: [station('s', 400, 0)] })).toEqual([3, 50])
  })

  it('is the middle of what is drawn where the file names none, or names nonsense', () => {
    expect(placeOf(plan)).toBeNull()
    expect(placeOf(at(3, 99))).toBeNull()
    expect(homeOf({ ...plan, features: [station('s', 0, 0)] })[1]).toBeCloseTo(52.2, 6)
  })

  it('says of seasons only what it can: a grid drawn a little below the equator is not the south', () => {
    expect(isSouthern({ ...at(0, 0), features: [] })).toBe(false)
    expect(isSouthern(at(0, -0.001))).toBe(false)
    expect(isSouthern(at(172, -43))).toBe(true)
    expect(isSouthern(at(5, 45))).toBe(false)
  })

  it('tells when spring is', () => {
    expect(springDay(at(5, 45), 2026)).toBe('2026-04-01')
    expect(springDay(at(172, -43), 2026)).toBe('2026-10-01')
  })

  it('tells which season a new plan is for: once spring is over, the next', () => {
    expect(seasonToPlan('2026-06-30', [5, 45])).toBe(2026)
    expect(seasonToPlan('2026-07-01', [5, 45])).toBe(2027)
    expect(seasonToPlan('2026-11-25', null)).toBe(2027)
    expect(seasonToPlan('2026-11-25', [172, -43])).toBe(2026)
  })
})
