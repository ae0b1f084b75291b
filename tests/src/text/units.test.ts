import { describe, expect, test } from 'vitest'
import { areaText, boreText, fieldText, inchText, lengthText, measureOf, withUnit } from '../../../src/text/units'

test('a foot is 0.3048 m and an acre 4046.8564224 m2, exactly', () => {
  expect(measureOf('length', 'us').toStored(1)).toBe(0.3048)
  expect(measureOf('area', 'us').toStored(1)).toBe(4046.8564224)
})

test('every quantity comes back from being shown and typed', () => {
  const quantities = ['length', 'bore', 'area', 'perArea', 'perSquare', 'perLength', 'temperature', 'share'] as const
  for (const quantity of quantities) {
    for (const units of ['metric', 'us'] as const) {
      const { toShown, toStored } = measureOf(quantity, units)
      expect(toStored(toShown(12.5))).toBeCloseTo(12.5, 10)
    }
  }
})

test('618 females a hectare are 250 an acre', () => {
  expect(withUnit(618, 'perArea', 'metric')).toBe('618 per ha')
  expect(withUnit(618, 'perArea', 'us')).toBe('250 per acre')
})

test('shares are percent on the screen only', () => {
  expect(withUnit(0.85, 'share', 'metric')).toBe('85%')
  expect(measureOf('share', 'metric').toStored(85)).toBeCloseTo(0.85, 12)
})

test('temperatures are turned, not only scaled', () => {
  expect(withUnit(12, 'temperature', 'us')).toBe('53.6 °F')
})

describe('lengths and areas', () => {
  test('have a decimal while they are small', () => {
    expect(lengthText(4.53, 'metric')).toBe('4.5 m')
    expect(lengthText(92.4, 'metric')).toBe('92 m')
    expect(lengthText(92.4, 'us')).toBe('303 ft')
  })

  test('are told in the unit that fits their size', () => {
    expect(areaText(296, 'metric')).toBe('296 m²')
    expect(areaText(14170, 'metric')).toBe('1.42 ha')
    expect(areaText(14170, 'us')).toBe('3.5 acres')
    expect(areaText(296, 'us')).toBe('3,190 sq ft')
    expect(areaText(4046.8564224, 'us')).toBe('1 acre')
  })
})

describe('bores', () => {
  test.each([
    [7.9375, '5/16'],
    [152.4, '6'],
    [6.5, '1/4'],
    [150, '5 29/32'],
  ])('%d mm is %s in', (millimetres, inches) => {
    expect(inchText(millimetres)).toBe(inches)
  })

  test('keep their millimetres beside the inches', () => {
    expect(boreText(8, 'us')).toBe('5/16 in (8 mm)')
    expect(boreText(8, 'metric')).toBe('8 mm')
  })
})

test('a field shows no digits that came from converting', () => {
  expect(fieldText(4.572, measureOf('length', 'us'))).toBe('15')
  expect(fieldText(0.29, measureOf('share', 'metric'))).toBe('29')
  expect(fieldText(2.3e-9, measureOf('perSquare', 'metric'))).toBe('0.0000000023')
})
