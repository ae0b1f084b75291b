import { expect, test } from 'vitest'
import { verdictOf } from '../../../src/text/verdict'

test.each([
  [1, 'yes'],
  [0.9, 'yes'],
  [0.7 + 0.2, 'yes'],
  [0.899, 'partly'],
  [0.5, 'partly'],
  [0.499, 'no'],
  [0, 'no'],
  [null, 'unknown'],
])('a share of %d is “%s”', (share, word) => {
  expect(verdictOf(share)).toBe(word)
})
