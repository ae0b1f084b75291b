import { describe, expect, test } from 'vitest'
import { bloomShifts } from '#geo/bloom/shift'

const early = { first: '2024-04-17', full: '2024-04-23', end: '2024-05-08' }

describe('shift of bloom between two seasons', () => {
  test('compares stage with stage, by the date, leap year or not', () => {
    const after = { year: 2025, bloom: { apple: { first: '2025-04-29', full: '2025-05-05', end: '2025-05-19' } } }
    expect(bloomShifts({ year: 2024, bloom: { apple: early } }, after)).toEqual([
      { key: 'apple', first: 12, full: 12, end: 11 },
    ])
  })

  test('is negative where bloom came earlier', () => {
    const late = { year: 2025, bloom: { apple: { first: '2025-04-29', full: '2025-05-05', end: '2025-05-19' } } }
    expect(bloomShifts(late, { year: 2024, bloom: { apple: early } })[0]).toMatchObject({ full: -12 })
  })

  test('leaves out what one season does not date, or dates by no day', () => {
    const before = { year: 2024, bloom: { apple: early, pear: { ...early, full: '2024-02-31' } } }
    const bloom = { first: '2025-04-01', full: '2025-04-05', end: '2025-04-09' }
    expect(bloomShifts(before, { year: 2025, bloom: { pear: bloom, plum: bloom } })).toEqual([])
    expect(bloomShifts({ year: 2024 }, { year: 2025 })).toEqual([])
  })
})
