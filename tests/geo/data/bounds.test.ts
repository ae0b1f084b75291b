import { expect, test } from 'vitest'
import { isWithinBounds } from '#geo/data/bounds'

test.each([
  ['emergence', 0, false],
  ['emergence', 1, true],
  ['emergence', 1.0001, false],
  ['femaleShare', 0, true],
  ['femaleShare', -0.0001, false],
  ['spreadDays', 0, false],
  ['nestingLife', 1e-9, true],
  ['maxForagingRange', 0, false],
  ['backgroundBlossom', 0, true],
  ['stockingRate', -1, false],
  ['flightFrom', -2, true],
  ['lag', Number.NaN, false],
  ['spacing', Number.POSITIVE_INFINITY, false],
] as const)('%s may be %d: %s', (name, value, expected) => {
  expect(isWithinBounds(name, value)).toBe(expected)
})
