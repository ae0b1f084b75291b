import { describe, expect, it } from 'vitest'
import { bloomCurve, bloomOf, bloomWeight } from '#geo/bloom/bloom'
import { sumOf, valueOn } from '#geo/time/curve'
import { dayOfSeason } from '#geo/time/day'

const bloom = { first: '2026-04-17', full: '2026-04-26', end: '2026-05-06' }

describe('bloomCurve', () => {
  const curve = bloomCurve(bloom, 2026)
  const on = (date: string) => valueOn(curve, dayOfSeason(date, 2026))

  it('passes a tenth at first bloom, one at full and nothing at the end', () => {
    expect(on('2026-04-17')).toBeCloseTo(0.1, 12)
    expect(on('2026-04-26')).toBe(1)
    expect(on('2026-05-01')).toBeCloseTo(0.5, 12)
    expect(on('2026-05-06')).toBe(0)
  })

  it('rises from nothing at full - (full - first) / 0.9: here ten days before full', () => {
    expect(on('2026-04-16')).toBe(0)
    expect(curve.values.every(value => value > 0)).toBe(true)
  })

  it('weighs the days so that they add up to one', () => {
    expect(sumOf(bloomWeight(curve))).toBeCloseTo(1, 12)
  })

  it('runs over a year end, as it does in the south', () => {
    const southern = bloomCurve({ first: '2025-12-20', full: '2025-12-28', end: '2026-01-10' }, 2026)
    expect(southern.start).toBeLessThan(0)
    expect(valueOn(southern, dayOfSeason('2025-12-28', 2026))).toBe(1)
    expect(valueOn(southern, dayOfSeason('2026-01-05', 2026))).toBeGreaterThan(0)
  })

  it('refuses bloom out of order', () => {
    expect(() => bloomCurve({ first: '2026-04-20', full: '2026-04-20', end: '2026-05-01' }, 2026)).toThrow(RangeError)
  })
})

describe('bloomOf', () => {
  it("puts a planting's own bloom before its crop's, and trusts no inherited member", () => {
    const own = { ...bloom, first: '2026-04-18' }
    expect(bloomOf({ apple: bloom, 'row-1': own }, 'row-1', 'apple')).toBe(own)
    expect(bloomOf({ apple: bloom }, 'row-1', 'apple')).toBe(bloom)
    expect(bloomOf({ apple: bloom }, 'row-1', 'pear')).toBeUndefined()
    expect(bloomOf({}, 'constructor', 'toString')).toBeUndefined()
  })
})
