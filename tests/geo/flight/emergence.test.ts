import { describe, expect, test } from 'vitest'
import { malesBefore, searchDays, searchSpread, winterings } from '#geo/data/emergence-figures'
import { type BeeId, beeIds } from '#geo/data/own'
import { settingsFor } from '#geo/data/settings'
import { batchEmergence, type Emerging, outBy } from '#geo/flight/emergence'
import { activeShare } from '#geo/flight/flight'
import { normalBelow } from '#geo/flight/normal'
import { sumOf, valueOn } from '#geo/time/curve'

const [low, settings, high] = (['low', null, 'high'] as const).map(
  end => settingsFor({ parameters: {}, crops: {} }, end === null ? {} : { 'bee.lag': end }).bees,
) as [Record<BeeId, { lag: number }>, ReturnType<typeof settingsFor>['bees'], Record<BeeId, { lag: number }>]

function out(bee: BeeId, wintering: 'cold' | 'outdoors', day = 100) {
  const lag = { low: low[bee].lag, value: settings[bee].lag, high: high[bee].lag }
  return batchEmergence(day, { bee, flight: settings[bee], lag, wintering })
}

const kinds = beeIds.flatMap(bee => winterings.map(wintering => [bee, wintering] as const))

describe.each(kinds)('%s, wintered %s', (bee, wintering) => {
  const { males, females, nesting } = out(bee, wintering)

  test('everyone comes out once, males first', () => {
    for (const each of [males, females]) {
      expect(sumOf(each.daily)).toBeCloseTo(1, 12)
      for (const share of each.daily.values) expect(share).toBeGreaterThanOrEqual(0)
      expect(each.first).toBeLessThanOrEqual(each.half.value)
      expect(each.half.value).toBeLessThanOrEqual(each.last)
      expect(each.half.low).toBeLessThanOrEqual(each.half.value)
      expect(each.half.value).toBeLessThanOrEqual(each.half.high)
    }
    expect(outBy(males.daily, 0.5)).toBeLessThan(outBy(females.daily, 0.5))
    const by = ({ daily }: Emerging, day: number) =>
      daily.values.slice(0, Math.max(0, day - daily.start)).reduce((sum, share) => sum + share, 0)
    for (let day = 60; day < 160; day += 1) expect(by(males, day)).toBeGreaterThanOrEqual(by(females, day) - 1e-12)
  })

  // Two normal curves cross where the earliest in forty stand, as their means lie two of the search's deviations apart.
  test('no more females are at work than have come out, but for what the tails of two normal curves leave', () => {
    const tails = normalBelow(-searchDays.value / searchSpread.value)
    let isOut = 0
    for (let day = Math.min(females.daily.start, 100); day < 160; day += 1) {
      isOut += valueOn(females.daily, day)
      expect(valueOn(nesting, day), `day ${day}`).toBeLessThanOrEqual(isOut + tails)
    }
  })

  test('nesting is the share at work that coverage counts, to the bit', () => {
    expect(nesting.start).toBe(100)
    expect(nesting.values).toEqual(activeShare(settings[bee], nesting.values.length))
    expect(nesting.values.at(-1)).toBeLessThan(0.06 * Math.max(...nesting.values))
  })
})

test('from a cold store nobody is out before the day of setting out; of those outdoors, some males are', () => {
  for (const bee of beeIds) {
    expect(out(bee, 'cold').males.daily.start).toBeGreaterThanOrEqual(100)
    expect(out(bee, 'outdoors').males.daily.start).toBeLessThan(100)
  }
})

test('a batch set out later comes out later by as many days, and no otherwise', () => {
  const [early, late] = [out('osmia-bicornis', 'cold', 90), out('osmia-bicornis', 'cold', 104)]
  expect(late.males.daily.values).toEqual(early.males.daily.values)
  expect(late.females.half.low - early.females.half.low).toBe(14)
  expect(late.nesting.start - early.nesting.start).toBe(14)
})

test('a lag of the grower’s own leaves only the doubt of the search', () => {
  const flight = { ...settings['osmia-lignaria'], lag: 10 }
  const own = batchEmergence(0, {
    bee: 'osmia-lignaria',
    flight,
    lag: { value: 10, low: 10, high: 10 },
    wintering: 'cold',
  })
  expect(own.females.half).toEqual({
    value: 10 - searchDays.value,
    low: 10 - searchDays.high,
    high: 10 - searchDays.low,
  })
})

// Two normal curves of one deviation, D apart, share 2 Phi(-D/2s) of their area; days cut at the crossing lose none of it; males due before they are set out are shared out over the days after.
test('males and females that come out on the same days are as many as two normal curves share', () => {
  const { males, females } = out('osmia-bicornis', 'cold')
  const apart = malesBefore['osmia-bicornis'].cold.value
  const sd = settings['osmia-bicornis'].spreadDays - searchSpread.value
  let shared = 0
  for (let day = 100; day < 140; day += 1) shared += Math.min(valueOn(males.daily, day), valueOn(females.daily, day))
  expect((apart / 2) % 1).toBe(0)
  expect(Math.abs(shared - 2 * normalBelow(-apart / (2 * sd)))).toBeLessThan(normalBelow(-5 / sd))
})
