import { describe, expect, it } from 'vitest'
import { heatOf } from '#geo/bloom/heat'
import { bloomErrors } from '#geo/data/bloom-heat'
import { crops } from '#geo/data/crops'
import { cultivarOffsets } from '#geo/data/cultivars'
import { frostKill } from '#geo/data/frost'
import { cityWeather } from '../support/city-weather'
import { planOf, row } from '../support/orchard'

/** Apple's full bloom by its table total in real weather; the place hangs on no latitude. */
function appleIn(city: 'Seattle' | 'New York', year: number) {
  const days = cityWeather(city, `${year}-01-01`, `${year}-06-30`)
  const plan = { ...planOf({ features: [row('r', [0, 0], [9, 0])] }), seasons: [{ year, weather: { days } }] }
  return heatOf(plan, year, 'apple')!.full
}

describe('full bloom by heat in real weather (vega-datasets, US government data)', () => {
  it('Seattle and New York, 2012 to 2015, as worked out apart from this code', () => {
    const years = [2012, 2013, 2014, 2015]
    expect(years.map(year => appleIn('Seattle', year))).toEqual([
      '2012-04-23',
      '2013-04-10',
      '2014-04-11',
      '2015-03-28',
    ])
    expect(years.map(year => appleIn('New York', year))).toEqual([
      '2012-04-14',
      '2013-05-07',
      '2014-05-07',
      '2015-05-06',
    ])
  })

  it('is earliest in Seattle in 2015, the year of the earliest bloom in 84 years at Wenatchee', () => {
    const sinceNewYear = (date: string | null) => date!.slice(5)
    const found = [2012, 2013, 2014].map(year => sinceNewYear(appleIn('Seattle', year)))
    expect(found.every(date => date > sinceNewYear(appleIn('Seattle', 2015)))).toBe(true)
  })
})

describe('measured in the Rhineland (Luedeling and others 2024): 62, 41 and 16 years', () => {
  // Offsets from apple full bloom, 10th and 90th percentile; the middle of every region that leans on them lies between.
  const offsets = { 'pear-european': [-17, -7], 'cherry-sweet': [-13, -3], 'plum-european': [-20, -6] } as const

  it('offsets of a continental spring lie within the band of years', () => {
    for (const [crop, [low, high]] of Object.entries(offsets)) {
      const { value } = crops[crop]!.bloomOffset.continental
      expect(value >= low && value <= high, crop).toBe(true)
    }
  })

  it('lengths are the medians, their ranges the percentiles', () => {
    const medians = {
      apple: [4, 8, 7, 20],
      'pear-european': [3, 8, 7, 16],
      'cherry-sweet': [3, 10, 9, 20],
      // Its range reaches up to Kent's, 12 to 21 days (National Fruit Collection, 2019 to 2023).
      'plum-european': [3, 9, 8, 21],
    } as const
    for (const [crop, [toFull, toEnd, low, high]] of Object.entries(medians)) {
      const { figures, bloomDays } = crops[crop]!
      expect(figures.firstToFull.value, crop).toBeCloseTo(toFull, 0)
      expect(Math.abs(figures.fullToEnd.value - toEnd), crop).toBeLessThanOrEqual(1)
      expect(bloomDays.low >= low - 1 && bloomDays.high <= high + 1, crop).toBe(true)
    }
  })

  it('cultivars stand as far from their crop as their means do', () => {
    expect(cultivarOffsets.apple!.Boskoop!.value).toBe(-2.2)
    expect(cultivarOffsets['cherry-sweet']!.Samba!.value).toBeCloseTo(-15.2 - -8, 9)
    expect(cultivarOffsets['pear-european']!.Conference!.value).toBeCloseTo(-10.6 - -11.7, 9)
    expect(cultivarOffsets['plum-european']!.President!.value).toBeCloseTo(-21.6 - -14.1, 9)
  })

  it('the error with an own total spans that of the fits, 2.8 to 5.5 days', () => {
    const { low, value, high } = bloomErrors.ownTotal
    expect(low).toBeLessThanOrEqual(3.2)
    expect(high).toBeGreaterThanOrEqual(5.5)
    expect(value).toBe(5)
  })
})

describe('frost (Washington State University bulletins, Fahrenheit)', () => {
  const celsius = (fahrenheit: number) => Number(((fahrenheit - 32) / 1.8).toFixed(1))

  it('apple in full bloom: a tenth at 28 °F, nine tenths at 25 °F', () => {
    const { tenth, most } = frostKill.apple!.full!
    expect([tenth.value, most.value]).toEqual([celsius(28), celsius(25)])
  })

  it('every figure is a whole degree Fahrenheit, and buds stand more than flowers', () => {
    for (const [crop, stages] of Object.entries(frostKill)) {
      const list = Object.values(stages)
      for (const { name, tenth, most } of list) {
        for (const { value } of [tenth, most]) {
          expect(celsius(Math.round(value * 1.8 + 32)), `${crop}, ${name}`).toBe(value)
        }
        expect(most.value).toBeLessThan(tenth.value)
      }
      const tenths = list.map(({ tenth }) => tenth.value)
      expect(
        [...tenths].sort((a, b) => a - b),
        crop,
      ).toEqual(tenths)
    }
  })
})
