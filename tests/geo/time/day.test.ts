import { describe, expect, it } from 'vitest'
import { addDays, dateOfDay, dayOfSeason, daysBetween, isIsoDate } from '#geo/time/day'

describe('days of a season', () => {
  it('counts 1 January as 1 and runs on below', () => {
    expect(dayOfSeason('2026-01-01', 2026)).toBe(1)
    expect(dayOfSeason('2025-12-31', 2026)).toBe(0)
    expect(dayOfSeason('2025-10-02', 2026)).toBe(-90)
    expect(dayOfSeason('2026-12-31', 2026)).toBe(365)
    expect(dayOfSeason('2024-12-31', 2024)).toBe(366)
  })

  it('goes there and back over leap days and year ends', () => {
    for (const year of [1900, 2000, 2023, 2024, 2025]) {
      for (let day = -400; day <= 800; day += 1) expect(dayOfSeason(dateOfDay(day, year), year)).toBe(day)
    }
  })

  it('refuses days that do not exist and forms that are not dates', () => {
    expect(isIsoDate('2024-02-29')).toBe(true)
    for (const text of [
      '2026-02-29',
      '2026-02-30',
      '2026-04-31',
      '2026-13-01',
      '26-04-01',
      '2026-4-1',
      '2026-04-01T00:00',
      '',
    ]) {
      expect(isIsoDate(text), text).toBe(false)
    }
    expect(() => dayOfSeason('2026-02-30', 2026)).toThrow(RangeError)
  })

  it('adds and takes days', () => {
    expect(addDays('2024-02-28', 2)).toBe('2024-03-01')
    expect(daysBetween('2025-12-30', '2026-01-02')).toBe(3)
    expect(daysBetween('2026-01-02', '2025-12-30')).toBe(-3)
  })
})
