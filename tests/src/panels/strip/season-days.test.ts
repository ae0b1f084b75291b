import { describe, expect, test } from 'vitest'
import { setStationSeason } from '#geo/plan/edits-seasons'
import type { Plan } from '#geo/plan/plan'
import { modelOf } from '#geo/report/model'
import { valueOn } from '#geo/time/curve'
import { dayOfSeason } from '#geo/time/day'
import { flyingTime } from '#geo/weather/flying-time'
import { defaultForCrop } from '../../../../src/panels/bloom/bloom-defaults'
import { seasonBands } from '../../../../src/panels/season-bands'
import { femalesOn, groupedFlights, mergedFlights } from '../../../../src/panels/strip/flight-groups'
import { dayInWords, doubtCurve, seasonDays, seasonPicture } from '../../../../src/panels/strip/season-days'
import { dayRows, rowsText, seasonCsv, weekRows } from '../../../../src/panels/strip/season-rows'
import { ticksOf } from '../../../../src/panels/strip/season-ticks'
import { smallPlan, stationFeature } from '../../../support/builders'

const plan = smallPlan()
const bands = seasonPicture(plan, 2026)
const on = (date: string) => dayOfSeason(date, 2026)

/** The small plan with another station that is used as the first is, and one that is used later. */
function threeStations(): Plan {
  const more: Plan = {
    ...plan,
    features: [...plan.features, stationFeature('station-3', { name: 'South gate' }, [7, 0.5])],
  }
  const use = plan.seasons[1]!.stations!['station-1']!
  const later = { ...use, releases: [{ date: '2026-04-20', females: 30 }] }
  const used = setStationSeason(2026, 'station-2', use).apply(more)
  return setStationSeason(2026, 'station-3', later).apply(used)
}

describe('a flight that was worked out before', () => {
  const flightsOf = (of: Plan, year = 2026) => seasonBands(of, year).flights
  test('is the same after an edit elsewhere, under the name that its station has now', () => {
    const [before] = flightsOf(plan)
    const features = plan.features.map(each =>
      each.id === before!.id ? stationFeature(each.id, { name: 'By the pond' }, [9, 9]) : each,
    )
    const [after] = flightsOf({ ...plan, features })
    expect(after!.label).toBe('By the pond')
    expect(after!.curve).toBe(before!.curve)
  })

  test('is another with figures of one’s own or in another year, and the one before again without', () => {
    const [before] = flightsOf(plan)
    const [longer] = flightsOf({ ...plan, parameters: { 'osmia-lignaria': { nestingLife: 40 } } })
    expect(longer!.curve.values.length).toBeGreaterThan(before!.curve.values.length)
    const nextYear = { ...plan, seasons: [{ ...plan.seasons[1]!, year: 2027 }] }
    expect(flightsOf(nextYear, 2027)[0]!.curve.start).toBe(before!.curve.start - 365)
    expect(flightsOf(plan)).toEqual([before])
  })
})

describe('a day in words', () => {
  test('says what blooms and how many are at work', () => {
    expect(dayInWords(bands, on('2026-04-24'), 2026)).toMatch(
      /^24 April 2026: Apple in full bloom and Clover bank \d+% open; about \d+ females at work\.$/,
    )
    expect(dayInWords(bands, on('2026-01-10'), 2026)).toBe(
      '10 January 2026: nothing drawn is in bloom; no female at work.',
    )
  })

  test('counts the females that the map shows', () => {
    const made = modelOf(threeStations(), 2026)
    if (!made.ok) throw new Error('no model')
    for (const date of ['2026-04-12', '2026-04-24', '2026-05-10']) {
      const shown = made.value.day(on(date)).stations.reduce((sum, { females }) => sum + females, 0)
      expect(femalesOn(seasonBands(threeStations(), 2026).flights, on(date))).toBeCloseTo(shown, 9)
    }
  })
})

describe('flights', () => {
  test('of stations used alike share a band; merged they add up to the same females', () => {
    const all = seasonBands(threeStations(), 2026)
    expect(all.flights.map(({ label }) => label)).toEqual(['North gate', 'Unnamed nest station', 'South gate'])
    const grouped = groupedFlights(all)
    expect(grouped.flights.map(({ label }) => label)).toEqual(['North gate + 1', 'South gate'])
    const merged = mergedFlights(grouped)
    expect(merged.flights.map(({ label }) => label)).toEqual(['3 stations'])
    for (const day of [on('2026-04-12'), on('2026-04-30')]) {
      expect(femalesOn(grouped.flights, day)).toBeCloseTo(femalesOn(all.flights, day), 9)
      expect(femalesOn(merged.flights, day)).toBeCloseTo(femalesOn(all.flights, day), 9)
    }
    expect(groupedFlights(bands).flights[0]!.label).toBe('North gate')
  })
})

describe('default dates', () => {
  const byDefault = defaultForCrop(plan, 2026, 'apple')!
  const withApple = (apple: typeof byDefault.bloom) =>
    seasonBands({ ...plan, seasons: [{ year: 2026, bloom: { apple }, stations: {} }] }, 2026).blooms[0]!

  test('are in doubt by as much as the defaults are; dates of one’s own, or seen, are not', () => {
    const band = withApple(byDefault.bloom)
    expect(band.doubt).toEqual({
      before: on(band.bloom.full) - on(byDefault.earliestFull),
      after: on(byDefault.latestFull) - on(band.bloom.full),
    })
    expect(withApple({ ...byDefault.bloom, end: '2026-05-30' }).doubt).toBeNull()
    expect(withApple({ ...byDefault.bloom, observed: ['full'] }).doubt).toBeNull()
    expect(doubtCurve(withApple({ ...byDefault.bloom, observed: ['full'] }))).toBeNull()
  })

  test('are drawn as the most that any shift of the bloom gives', () => {
    const band = withApple(byDefault.bloom)
    const doubt = doubtCurve(band)!
    for (let day = doubt.start - 1; day <= doubt.start + doubt.values.length; day += 1) {
      let most = 0
      for (let shift = -band.doubt!.before; shift <= band.doubt!.after; shift += 1) {
        most = Math.max(most, valueOn(band.curve, day - shift))
      }
      expect(valueOn(doubt, day)).toBeCloseTo(most, 12)
    }
  })
})

describe('the table', () => {
  test('has a line for every day from the first bloom or flight to the last, with the words’ figures', () => {
    const rows = dayRows(bands, 2026)
    expect(rows).toHaveLength(seasonDays(bands).length)
    const full = rows.find(({ when }) => when === '24 April 2026')!
    expect(full.open).toMatch(/^Apple in full bloom, Clover bank \d+% open$/)
    expect(dayInWords(bands, on('2026-04-24'), 2026)).toContain(`about ${full.females} females at work`)
    expect(rows[0]!.when).toMatch(/April 2026$/)
    expect(rows.every(({ open, females }) => open !== 'nothing drawn' || females !== '0')).toBe(true)
  })

  test('has weeks from Monday to Sunday with the most of each', () => {
    const rows = weekRows(bands, 2026)
    const week = rows.find(({ when }) => when === '20 to 26 April 2026')!
    expect(week.open).toMatch(/^Apple in full bloom, Clover bank/)
    const days = dayRows(bands, 2026).filter(({ when }) => /^2[0-6] April/.test(when))
    expect(days).toHaveLength(7)
    expect(Number(week.females)).toBe(Math.max(...days.map(({ females }) => Number(females))))
    expect(rows.slice(1, -1).every(({ when }) => /\d+ (April |May |June )?to \d+/.test(when))).toBe(true)
  })

  test('can be pasted and opened elsewhere', () => {
    expect(rowsText(dayRows(bands, 2026)).split('\n')[0]).toBe('When\tIn bloom\tFemales at work')
    const lines = seasonCsv(bands, 2026).split('\r\n')
    expect(lines[0]).toBe('date,"Apple, share open","Clover bank, share open","North gate, females at work"')
    expect(lines.find(line => line.startsWith('2026-04-24'))).toMatch(/^2026-04-24,1,0\.\d+,\d+(\.\d)?$/)
  })
})

describe('dates on the axis', () => {
  test('are as many as there is room for', () => {
    const texts = (from: number, to: number, plot: number) => ticksOf({ from, to }, 2026, plot).map(({ text }) => text)
    expect(texts(100, 114, 900).length).toBeGreaterThan(10)
    expect(texts(60.5, 180.25, 700)).toEqual(['15 Mar', '1 Apr', '15 Apr', '1 May', '15 May', '1 Jun', '15 Jun'])
    expect(texts(60.5, 180.25, 250)).toEqual(['1 Apr', '1 May', '1 Jun'])
  })
})

describe('flying time', () => {
  const weather = {
    source: 'own',
    days: [
      ['2026-04-23', 8, 22, 0, null],
      ['2026-04-24', 2, 6, 12, null],
      ['2026-04-26', 8, 21, 0, 2],
    ] as const,
  }
  const season = { ...plan.seasons[1]!, weather }
  const withWeather = { ...plan, seasons: [season] }
  const picture = seasonPicture(withWeather, 2026)

  test('is told for the day, and where its weather is not known the day counts as typical', () => {
    expect(dayInWords(picture, on('2026-04-23'), 2026)).toMatch(/ at work; about \d+(\.\d)? flying hours\.$/)
    expect(dayInWords(picture, on('2026-04-24'), 2026)).toMatch(/; no flying hours\.$/)
    for (const date of ['2026-04-25', '2026-05-20']) {
      expect(dayInWords(picture, on(date), 2026)).toMatch(/; no weather for that day, counted as a typical one\.$/)
    }
    expect(dayInWords(bands, on('2026-04-23'), 2026)).not.toMatch(/flying|weather/)
  })

  test('is the one that coverage counts with', () => {
    const [band] = picture.flying
    const time = flyingTime(withWeather, 2026, 'osmia-lignaria')!
    expect(valueOn(band!.hours, on('2026-04-23'))).toBeCloseTo(valueOn(time, on('2026-04-23')) * band!.typical, 12)
  })

  test('stands in the table, by bee, and a week with an unknown day is not known', () => {
    const rows = dayRows(picture, 2026)
    const of = (when: string) => rows.find(row => row.when === when)!.flying
    expect([of('24 April 2026'), of('25 April 2026')]).toEqual(['0', 'not known'])
    expect(Number(of('23 April 2026'))).toBeGreaterThan(3)
    expect(weekRows(picture, 2026).find(({ when }) => when === '20 to 26 April 2026')!.flying).toBe('not known')
    expect(rowsText(rows).split('\n')[0]).toBe('When\tIn bloom\tFemales at work\tFlying hours\tFrost')
    expect(
      seasonCsv(picture, 2026)
        .split('\r\n')
        .find(line => line.startsWith('2026-04-25')),
    ).toMatch(/,$/)
    const use = { bee: 'osmia-cornuta', releases: [{ date: '2026-04-06', females: 5 }] } as const
    const two = seasonPicture(setStationSeason(2026, 'station-2', use).apply(withWeather), 2026)
    expect(dayInWords(two, on('2026-04-23'), 2026)).toMatch(/hours for the blue orchard bee and about .* for the /)
    expect(dayRows(two, 2026).find(({ when }) => when === '24 April 2026')!.flying).toBe('0 / 0')
  })
})

describe('frost', () => {
  const cold = (minimum: number) => {
    const weather = { source: 'own', days: [['2026-04-24', minimum, 14, 0, null]] as const }
    return seasonPicture({ ...plan, seasons: [{ ...plan.seasons[1]!, weather }] }, 2026)
  }

  test('that kills flowers is told for its day, with how much it kills, and stands in the table and the week', () => {
    const told = (minimum: number) => dayInWords(cold(minimum), on('2026-04-24'), 2026)
    expect(told(1)).not.toContain('frost')
    expect(told(-2.6)).toMatch(/; frost of −2\.6 °C, enough to kill a tenth of the flowers of Apple\.$/)
    expect(told(-9)).toMatch(/; frost of −9 °C, enough to kill nine tenths of the flowers of Apple\.$/)
    const picture = cold(-2.6)
    const words = 'frost of −2.6 °C, enough to kill a tenth of the flowers of Apple'
    expect(
      dayRows(picture, 2026)
        .filter(({ frost }) => frost !== '')
        .map(({ when, frost }) => [when, frost]),
    ).toEqual([['24 April 2026', words]])
    expect(weekRows(picture, 2026).find(({ when }) => when === '20 to 26 April 2026')!.frost).toBe(words)
    expect(dayInWords({ ...picture, units: 'us' }, on('2026-04-24'), 2026)).toContain('frost of 27.3 °F')
  })
})
