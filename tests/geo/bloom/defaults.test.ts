import { describe, expect, test } from 'vitest'
import { defaultBloom, defaultForageBloom, ownAppleDay } from '#geo/bloom/defaults'
import { bloomRegions } from '#geo/data/own'
import { type CropSettings, forageSettings, settingsFor } from '#geo/data/settings'
import { dayOfSeason, daysBetween } from '#geo/time/day'

const { crops } = settingsFor({ parameters: {}, crops: {} })
const inEngland = (year: number, isSouthern = false) => ({ region: 'southern-england' as const, year, isSouthern })

describe('dates', () => {
  test('apple in southern England stands in full bloom on day 117', () => {
    expect(defaultBloom(crops.apple!, inEngland(2026))).toEqual({
      bloom: { first: '2026-04-23', full: '2026-04-27', end: '2026-05-05' },
      // 12 days of years and 11 of cultivars before: 16.3; 18 and 15 after: 23.4
      earliestFull: '2026-04-11',
      latestFull: '2026-05-20',
    })
  })

  test('a leap year keeps the day of the year', () => {
    expect(defaultBloom(crops.apple!, inEngland(2028))!.bloom.full).toBe('2028-04-26')
  })

  test('a southern spring comes 183 days later', () => {
    const north = defaultBloom(crops['cherry-sweet']!, inEngland(2027))!
    const south = defaultBloom(crops['cherry-sweet']!, inEngland(2027, true))!
    for (const stage of ['first', 'full', 'end'] as const) {
      expect(daysBetween(north.bloom[stage], south.bloom[stage])).toBe(183)
    }
    expect(south.bloom.full).toBe('2027-10-19')
  })

  test('a forage plant blooms by the same reckoning', () => {
    expect(defaultForageBloom(forageSettings.blackthorn!, inEngland(2026)).bloom).toEqual({
      first: '2026-03-31',
      full: '2026-04-05',
      end: '2026-04-16',
    })
  })

  test('hang on the grower’s own apple date of this year, with the spread of the offsets alone', () => {
    const place = inEngland(2026)
    const apple = ownAppleDay('2026-05-05', place)
    expect(defaultBloom(crops['cherry-sweet']!, { ...place, apple })).toEqual({
      // 8 days before apple, 16 to 2
      bloom: { first: '2026-04-24', full: '2026-04-27', end: '2026-05-07' },
      earliestFull: '2026-04-19',
      latestFull: '2026-05-03',
    })
  })

  test('from last year’s apple date keep its day and the whole spread of years', () => {
    const place = inEngland(2026)
    const { bloom, earliestFull, latestFull } = defaultBloom(crops.apple!, {
      ...place,
      apple: ownAppleDay('2025-05-05', place),
    })!
    expect(bloom.full).toBe('2026-05-05')
    // as for the region: 16.3 days before, 23.4 after
    expect([daysBetween(earliestFull, bloom.full), daysBetween(bloom.full, latestFull)]).toEqual([16, 23])
  })

  test('of the south are not moved by half a year where the date is the grower’s own', () => {
    const place = inEngland(2026, true)
    const apple = ownAppleDay('2026-10-12', place)
    expect(defaultBloom(crops.apple!, { ...place, apple })!.bloom.full).toBe('2026-10-12')
  })

  test('a crop without offsets has none to give', () => {
    const own = { stockingRate: 1, blossomDensity: 1, appeal: 1, spacing: 1, rowSpacing: 1 }
    const medlar = settingsFor({ parameters: {}, crops: { medlar: own } }).crops.medlar!
    expect(defaultBloom(medlar, inEngland(2026))).toBeNull()
  })

  test('stages shorter than a day still take one', () => {
    const brief: CropSettings = { ...crops.apple!, firstToFull: 0.2, fullToEnd: 0 }
    const { first, full, end } = defaultBloom(brief, inEngland(2026))!.bloom
    expect([daysBetween(first, full), daysBetween(full, end)]).toEqual([1, 1])
  })
})

describe.each(bloomRegions)('%s', region => {
  const places = [2023, 2024, 2025, 2026, 2027, 2028, 2100].flatMap(year => [
    { region, year, isSouthern: false },
    { region, year, isSouthern: true },
  ])
  const plants = [
    ...Object.values(crops).map(crop => [crop.id, (place: (typeof places)[0]) => defaultBloom(crop, place)!] as const),
    ...Object.values(forageSettings).map(
      forage => [forage.id, (place: (typeof places)[0]) => defaultForageBloom(forage, place)] as const,
    ),
  ]

  test.each(plants)('%s: first before full before end, full within its range, in the season', (_, bloomIn) => {
    for (const place of places) {
      const { bloom, earliestFull, latestFull } = bloomIn(place)
      expect(bloom.first < bloom.full && bloom.full < bloom.end).toBe(true)
      expect(earliestFull < bloom.full && bloom.full < latestFull).toBe(true)
      const day = dayOfSeason(bloom.full, place.year)
      expect(day).toBeGreaterThan(1)
      expect(day).toBeLessThan(366)
    }
  })
})
