import { describe, expect, test } from 'vitest'
import { dateText } from '#geo/time/date-text'
import { listed } from '#geo/wording/plain'
import {
  about,
  aboutCounted,
  compassWord,
  dateSpan,
  directionText,
  grouped,
  honest,
  percent,
  points,
  rangeText,
} from '../../../src/text/words'

describe('dates', () => {
  test('are written with the month in words', () => {
    expect(dateText('2026-04-06')).toBe('6 April 2026')
  })

  test('that do not exist are given back as they stand', () => {
    expect(dateText('2026-02-30')).toBe('2026-02-30')
  })

  test.each([
    ['2026-04-17', '2026-05-06', '17 April to 6 May 2026'],
    ['2026-04-07', '2026-04-21', '7 to 21 April 2026'],
    ['2025-12-28', '2026-01-03', '28 December 2025 to 3 January 2026'],
  ])('from %s to %s say no more than they need', (from, to, words) => {
    expect(dateSpan(from, to)).toBe(words)
  })
})

describe('figures', () => {
  test.each([
    [0, '0'],
    [0.3, 'under 1'],
    [37.6, '38'],
    [99.4, '99'],
    [99.6, '100'],
    [143, '140'],
    [2861, '2,900'],
  ])('%d is told as %s', (value, words) => {
    expect(honest(value)).toBe(words)
  })

  test('that are estimates say so, but nothing is not about nothing', () => {
    expect(about(143)).toBe('about 140')
    expect(about(0)).toBe('0')
    expect(about(0.3)).toBe('under 1')
  })

  test('are grouped by thousands, decimals left alone', () => {
    expect(grouped(1234567.5)).toBe('1,234,567.5')
    expect(grouped(-1200)).toBe('−1,200')
  })

  test.each([
    [2.3e-9, 'under 0.001'],
    [-2.3e-9, '0'],
    [0, '0'],
    [0.001, '0.001'],
    [1e21, '1,000,000,000,000,000,000,000'],
  ])('%d is told as %s, without an exponent', (value, words) => {
    expect(grouped(value)).toBe(words)
  })

  test.each([
    [38, 'about 38 females'],
    [1.2, 'about 1 female'],
    [0.3, 'under 1 female'],
    [0, '0 females'],
  ])('%d females are told as %s', (value, words) => {
    expect(aboutCounted(value, 'female')).toBe(words)
  })

  test('make ranges, and one figure where both ends read the same', () => {
    expect(rangeText(118, 171)).toBe('118 to 171')
    expect(rangeText(2, 2.2)).toBe('2')
  })

  test.each([
    [0.734, '73%'],
    [1, '100%'],
    [0.9999, '99%'],
    [0.002, 'under 1%'],
    [0, '0%'],
  ])('the share %d is told as %s: full and none only where they are', (share, words) => {
    expect(percent(share)).toBe(words)
  })

  test('gains are told in points', () => {
    expect(points(0.124)).toBe('+12 points')
    expect(points(0.01)).toBe('+1 point')
    expect(points(-0.05)).toBe('−5 points')
    expect(points(0.001)).toBe('no points')
  })
})

describe('directions', () => {
  test.each([
    [0, 'north'],
    [11, 'north'],
    [12, 'north-north-east'],
    [135, 'south-east'],
    [359, 'north'],
    [-90, 'west'],
    [450, 'east'],
  ])('%d degrees is %s', (degrees, word) => {
    expect(compassWord(degrees)).toBe(word)
  })

  test('stand beside their degrees', () => {
    expect(directionText(112.5)).toBe('112.5° (east-south-east)')
  })
})

test('lists end in and', () => {
  expect(listed(['plum', 'pear', 'apple'])).toBe('plum, pear and apple')
  expect(listed(['plum'])).toBe('plum')
  expect(listed([])).toBe('')
})
