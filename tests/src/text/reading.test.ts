import { describe, expect, test } from 'vitest'
import { readNumber } from '../../../src/text/read-number'
import { placeText, readPlace } from '../../../src/text/read-place'

describe('figures as people write them', () => {
  test.each([
    ['4.5', 4.5],
    ['4,5', 4.5],
    [' 12 ', 12],
    ['-3', -3],
    ['−3', -3],
    ['1 200', 1200],
    ["1'200", 1200],
    ['1,200.5', 1200.5],
    ['1.200,5', 1200.5],
    ['1,200,000', 1200000],
    ['5/16', 0.3125],
    ['1 1/2', 1.5],
    ['-1/4', -0.25],
    ['0,125', 0.125],
    ['.5', 0.5],
  ])('“%s” is %d', (text, value) => {
    expect(readNumber(text)).toEqual({ ok: true, value })
  })

  test('a lone comma before three digits is sent back with both readings', () => {
    expect(readNumber('1,200')).toEqual({ ok: false, why: 'Write 1200 or 1.200: “1,200” can be read both ways.' })
  })

  test('but is a thousand where only whole numbers are meant', () => {
    expect(readNumber('1,200', { isWhole: true })).toEqual({ ok: true, value: 1200 })
  })

  test.each(['', 'many', '4.5.6', '1/0', '4 5', '1e3', '--2'])('“%s” is no figure', text => {
    expect(readNumber(text).ok).toBe(false)
  })
})

describe('places as people write them', () => {
  test.each([
    ['52.59, 0.16', 0.16, 52.59],
    ['52.59 0.16', 0.16, 52.59],
    ['52,59; 0,16', 0.16, 52.59],
    ['-33.5, 150.25', 150.25, -33.5],
    ['52.59 N 0.16 E', 0.16, 52.59],
    ['123.165 W, 44.425 N', -123.165, 44.425],
    ['44° 25\' 30" N, 123° 9\' 54" W', -123.165, 44.425],
    ['44°25′30″N 123°9′54″W', -123.165, 44.425],
  ])('“%s” is read', (text, lng, lat) => {
    const place = readPlace(text)
    expect(place.ok).toBe(true)
    if (!place.ok) return
    expect(place.at[0]).toBeCloseTo(lng, 9)
    expect(place.at[1]).toBeCloseTo(lat, 9)
  })

  test.each(['', '52.59', '52.59, 0.16, 3', 'here', '52 N, 3 N', '95, 10', '10, 200'])('“%s” is no place', text => {
    expect(readPlace(text).ok).toBe(false)
  })

  test('are written back with letters, to about a metre', () => {
    expect(placeText([-123.165, 44.425])).toBe('44.42500 N, 123.16500 W')
  })
})
