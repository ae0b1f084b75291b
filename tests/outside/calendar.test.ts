import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readPlan } from '#geo/file/read'
import { writePlan } from '#geo/file/write'
import { evaluate } from '#geo/report/evaluate'
import { addDays, dateOfDay, dayOfSeason, daysBetween, isIsoDate } from '#geo/time/day'
import { scenarioText } from '../support/scenario-maker'

/**
 * Days of peak bloom with their published numbers of the day. Washington DC, 70 % of the Yoshino cherries: US National
 * Park Service. Kyoto: Aono and Saito 2010, International Journal of Biometeorology 54:211-219.
 */
const blooms: readonly (readonly [date: string, day: number])[] = [
  ['0812-04-01', 92],
  ['1000-04-15', 105],
  ['1323-05-04', 124],
  ['1409-03-27', 86],
  ['1921-03-20', 79],
  ['1924-04-13', 104],
  ['1932-04-15', 106],
  ['1936-04-07', 98],
  ['1940-04-13', 104],
  ['1958-04-18', 108],
  ['1968-03-30', 90],
  ['1976-03-23', 83],
  ['1987-03-28', 87],
  ['1990-03-15', 74],
  ['1996-04-04', 95],
  ['2000-03-17', 77],
  ['2001-04-06', 96],
  ['2008-03-26', 86],
  ['2010-03-31', 90],
  ['2012-03-20', 80],
  ['2014-04-10', 100],
  ['2016-03-25', 85],
  ['2017-03-25', 84],
  ['2020-03-20', 80],
  ['2022-03-21', 80],
  ['2023-03-23', 82],
  ['2024-03-17', 77],
  ['2025-03-28', 87],
]

/**
 * Modified Julian day numbers, days since 1858-11-17: Meeus 1991, Astronomical Algorithms, chapter 7 (less 2 400 000.5);
 * the last is the start of the Unix count of seconds.
 */
const julianDays: readonly (readonly [date: string, day: number])[] = [
  ['1600-01-01', -94553],
  ['1600-12-31', -94188],
  ['1858-11-17', 0],
  ['1900-01-01', 15020],
  ['1957-10-04', 36115],
  ['1987-01-27', 46822],
  ['1987-06-19', 46965],
  ['1988-01-27', 47187],
  ['1988-06-19', 47331],
  ['1999-01-01', 51179],
  ['2000-01-01', 51544],
  ['1970-01-01', 40587],
]

/** Hours west of Greenwich in January and July. */
const zones = [
  ['UTC', 0, 0],
  ['America/Los_Angeles', 8, 7],
  ['Pacific/Auckland', -13, -12],
] as const

/** What an example plan comes to in the zone that the tests start in. */
function reportText(): string {
  const plan = readPlan(scenarioText('mixed-orchard'))
  return plan.ok ? JSON.stringify([evaluate(plan.value, 2025), writePlan(plan.value)]) : ''
}
const reference = reportText()

describe.each(zones)('on a machine in %s', (zone, january, july) => {
  const before = process.env.TZ
  beforeAll(() => {
    process.env.TZ = zone
  })
  afterAll(() => {
    process.env.TZ = before
  })

  test('the clock is set there', () => {
    expect(new Date('2026-01-15T12:00:00Z').getTimezoneOffset()).toBe(january * 60)
    expect(new Date('2026-07-15T12:00:00Z').getTimezoneOffset()).toBe(july * 60)
  })

  test('published bloom dates have their published numbers, there and back', () => {
    for (const [date, day] of blooms) {
      const year = Number(date.slice(0, 4))
      expect(dayOfSeason(date, year), date).toBe(day)
      expect(dateOfDay(day, year)).toBe(date)
    }
  })

  test('days between dates are those of the Julian day numbers', () => {
    for (const [from, first] of julianDays) {
      for (const [to, last] of julianDays) expect(daysBetween(from, to), `${from} ${to}`).toBe(last - first)
      expect(addDays('1858-11-17', first)).toBe(from)
    }
  })

  // Meeus 1991, chapter 7: 14 November 1978 and 22 April 1988.
  test('days of the year count 29 February where there is one', () => {
    expect(dayOfSeason('1978-11-14', 1978)).toBe(318)
    expect(dayOfSeason('1988-04-22', 1988)).toBe(113)
    for (const [year, days] of [
      [1600, 366],
      [1900, 365],
      [2000, 366],
      [2023, 365],
      [2024, 366],
      [2100, 365],
    ] as const) {
      expect(dayOfSeason(`${year}-12-31`, year), `${year}`).toBe(days)
      expect(isIsoDate(`${year}-02-29`)).toBe(days === 366)
    }
  })

  test('a year ends where the next begins', () => {
    expect(dayOfSeason('2023-12-31', 2024)).toBe(0)
    expect(dayOfSeason('2025-01-01', 2024)).toBe(367)
    expect(addDays('2024-12-31', 1)).toBe('2025-01-01')
    expect(dateOfDay(-30, 2026)).toBe('2025-12-01')
  })

  // The days on which clocks change: the United States, the European Union, New Zealand, 2026.
  test.each(['2026-03-08', '2026-11-01', '2026-03-29', '2026-10-25', '2026-04-05', '2026-09-27'])(
    'the change of clocks on %s makes no day longer',
    date => {
      const [before, after] = [addDays(date, -1), addDays(date, 1)]
      expect(daysBetween(before, after)).toBe(2)
      expect(dayOfSeason(after, 2026) - dayOfSeason(before, 2026)).toBe(2)
      expect(addDays(before, 1)).toBe(date)
    },
  )

  // RFC 3339, section 5.7 and appendix C: the days of each month.
  test('days that do not exist are refused, not moved', () => {
    for (const date of ['2026-02-29', '2026-04-31', '2026-00-10', '2026-01-00', '1900-02-29', '2024-06-31']) {
      expect(isIsoDate(date), date).toBe(false)
      expect(() => dayOfSeason(date, 2026)).toThrow(RangeError)
    }
    for (const date of ['2024-02-29', '2000-02-29', '2026-04-30', '2026-12-31'])
      expect(isIsoDate(date), date).toBe(true)
  })

  test('an example plan comes to the same report and the same text', () => {
    expect(reference.length).toBeGreaterThan(1000)
    expect(reportText()).toBe(reference)
  })
})
