import { describe, expect, test } from 'vitest'
import { closer, farther, isWhole, panned, showing, within, zoomed } from '../../../../src/panels/strip/stretch'

const whole = { from: 60, to: 160 }

describe('a stretch of the season', () => {
  test('zooms about the day that is looked at, down to two weeks and out to the whole season', () => {
    const near = zoomed(whole, whole, closer, 80)
    expect(near).toEqual({ from: 80 - 20 * closer, to: 80 + 80 * closer })
    expect(zoomed(near, whole, farther, 80)).toEqual({ from: expect.closeTo(60, 9), to: expect.closeTo(160, 9) })
    let stretch = whole
    for (let i = 0; i < 20; i += 1) stretch = zoomed(stretch, whole, closer, 159)
    expect(stretch.to - stretch.from).toBeCloseTo(14, 9)
    expect(stretch.to).toBeLessThanOrEqual(160)
    for (let i = 0; i < 20; i += 1) stretch = zoomed(stretch, whole, farther, 150)
    expect(isWhole(stretch, whole)).toBe(true)
  })

  test('of a season shorter than two weeks is the whole of it', () => {
    const short = { from: 100, to: 108 }
    expect(zoomed(short, short, closer, 104)).toEqual(short)
  })

  test('moves as far as the season goes, and no further than a day needs', () => {
    const part = { from: 80, to: 110 }
    expect(panned(part, whole, 30)).toEqual({ from: 110, to: 140 })
    expect(panned(part, whole, -300)).toEqual({ from: 60, to: 90 })
    expect(panned(part, whole, 300)).toEqual({ from: 130, to: 160 })
    expect(showing(part, whole, 95)).toBe(part)
    expect(showing(part, whole, 113)).toEqual({ from: 83, to: 113 })
    expect(showing(part, whole, 70)).toEqual({ from: 70, to: 100 })
  })

  test('is cut to a season that has become shorter', () => {
    expect(within({ from: 80, to: 150 }, { from: 100, to: 130 })).toEqual({ from: 100, to: 130 })
    expect(within({ from: 90, to: 100 }, { from: 100, to: 130 })).toEqual({ from: 100, to: 110 })
  })
})
