import { describe, expect, test } from 'vitest'
import type { Block, Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { areaText, inchText, measureOf, type Quantity } from '../../src/text/units'
import { relativeError } from '../support/near'
import { block, planOf } from '../support/orchard'

const foot = 0.3048

/** In US units as shown. */
const us = (stored: number, quantity: Quantity) => measureOf(quantity, 'us').toShown(stored)
/** What is stored for a figure typed in US units. */
const typed = (shown: number, quantity: Quantity) => measureOf(quantity, 'us').toStored(shown)

describe('units', () => {
  // NIST Special Publication 811, appendix B: foot, mile, acre (of the international foot), degree Fahrenheit.
  test('are those of the national tables', () => {
    expect(typed(1, 'length')).toBe(0.3048)
    expect(relativeError(typed(5280, 'length'), 1609.344)).toBeLessThan(1e-10)
    expect(relativeError(typed(1, 'area'), 316160658 / 78125)).toBeLessThan(1e-10)
    expect(relativeError(us(10_000, 'area'), 2.4710538147)).toBeLessThan(1e-10)
    expect(relativeError(typed(1, 'bore'), 25.4)).toBeLessThan(1e-10)
    expect(typed(50, 'temperature')).toBeCloseTo(10, 10)
    expect(typed(88, 'temperature')).toBeCloseTo(280 / 9, 10)
    expect(us(-40, 'temperature')).toBeCloseTo(-40, 10)
  })

  test('use the acre of the international foot, not the survey acre of 4046.872610 m2', () => {
    expect(Math.abs(typed(1, 'area') - 4046.87261)).toBeGreaterThan(0.01)
    expect(areaText(typed(1, 'area'), 'us')).toBe('1 acre')
  })

  test('agree with each other: 43 560 square feet to the acre, flowers per square foot with flowers per acre', () => {
    expect(relativeError(typed(1, 'area') / typed(1, 'length') ** 2, 43560)).toBeLessThan(1e-10)
    expect(relativeError(us(1, 'perSquare') * 43560, us(10_000, 'perArea'))).toBeLessThan(1e-10)
  })

  test('come back from every quantity', () => {
    for (const quantity of ['length', 'bore', 'area', 'perArea', 'perSquare', 'perLength', 'temperature'] as const) {
      for (const value of [0.017, 1, 618, 4046.9]) expect(typed(us(value, quantity), quantity)).toBeCloseTo(value, 9)
    }
  })

  // Mader, Spivak and Evans 2010, SARE Handbook 11: holes of 5/16 inch, six inches deep.
  test('tell bores as the handbooks do', () => {
    expect(inchText(7.9)).toBe('5/16')
    expect(inchText(152.4)).toBe('6')
  })
})

describe('females an acre', () => {
  // Bosch and Kemp 2001, How to manage the blue orchard bee; Bosch, Kemp and Trostle 2006, J. Econ. Entomol. 99:408.
  test.each([
    [250, 617.763],
    [300, 741.316],
  ])('%d an acre are %f a hectare', (acre, hectare) => {
    expect(typed(acre, 'perArea')).toBeCloseTo(hectare, 3)
  })
  test.each([
    [1290, 522.044],
    [1857, 751.501],
  ])('%d a hectare are %f an acre', (hectare, acre) => {
    expect(us(hectare, 'perArea')).toBeCloseTo(acre, 3)
  })

  test.each(['apple', 'almond'])('250 and 300 an acre on one acre of %s want 250 and 300 females', crop => {
    for (const females of [250, 300]) {
      // 660 ft by 66 ft is an acre; rows of 22 ft, trees of 16.5 ft fill it without a remainder.
      const plan = rowsOf({ width: 660, length: 66, between: 22, within: 16.5, crop })
      const rate = { stockingRate: typed(females, 'perArea') }
      const planting = planting0({ ...plan, crops: { [crop]: rate } })
      expect(us(planting.area, 'area')).toBeCloseTo(1, 10)
      expect(planting.wanted).toBeCloseTo(females, 8)
    }
  })
})

type Layout = { width: number; length: number; between: number; within: number; crop?: string }

/** A field in feet with rows along its length. */
function rowsOf({ width, length, between, within, crop = 'apple' }: Layout): Plan {
  const [x, y] = [(width * foot) / 2, (length * foot) / 2]
  const rows: Partial<Block['properties']> = { crop, rowSpacing: between * foot, spacing: within * foot, bearing: 0 }
  const dates = { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' }
  return planOf({ features: [block('field', [-x, -y, x, y], rows)], bloom: { [crop]: dates } })
}

function planting0(plan: Plan) {
  const outcome = evaluate(plan, 2026)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value.plantings[0]!
}

describe('plants an acre', () => {
  // Northwest berry network (Oregon, Idaho, Washington extension, USDA); Kains; Bailey, Farm and Garden Rule-Book.
  test.each([
    ['blueberries 10 by 4 ft', { width: 330, length: 132, between: 10, within: 4 }, 1089],
    ['blueberries 10 by 3 ft', { width: 660, length: 66, between: 10, within: 3 }, 1452],
    ['blueberries 10 by 5 ft, 870-871', { width: 60, length: 726, between: 10, within: 5 }, 870],
    ['2 by 3 ft', { width: 660, length: 66, between: 3, within: 2 }, 7260],
  ])('%s: drawn on an acre', (_, layout, plants) => {
    expect(layout.width * layout.length).toBe(43560)
    expect(planting0(rowsOf(layout)).points).toBe(plants)
  })

  test.each([
    ['20 by 20 ft', 20, 20, 108.9],
    ['10 by 5 ft', 10, 5, 871],
    ['10 by 4 ft', 10, 4, 1089],
    ['10 by 3 ft', 10, 3, 1452],
    ['1 by 7 in', 1 / 12, 7 / 12, 896091],
    ['3 by 7 in', 3 / 12, 7 / 12, 298697],
    ['3 by 9 in', 3 / 12, 9 / 12, 232320],
  ])('%s: by the ground that a plant stands for', (_, between, within, plants) => {
    const { points, area } = planting0(rowsOf({ width: 10 * between, length: 10 * within, between, within }))
    const perAcre = points / us(area, 'area')
    // The tables drop what is over a whole plant, or a tenth of one.
    expect(Math.floor(perAcre * 10 + 1e-6) / 10).toBeGreaterThanOrEqual(plants)
    expect(perAcre - plants).toBeLessThan(1)
  })

  // Oklahoma Experiment Station, Circular 20: a square acre, half a distance of margin all round.
  test('a real acre holds 64 trees at 25 ft, not the 69.7 of the division', () => {
    const side = Math.sqrt(43560)
    expect(planting0(rowsOf({ width: side, length: side, between: 25, within: 25 })).points).toBe(64)
    expect(43560 / 625).toBeCloseTo(69.7, 1)
  })

  // Uniformity trials: Batchelor and Reed 1918, J. Agric. Research 12:245 (apples at Providence, lemons, navel oranges).
  test.each([
    ['apples, 28 rows of 8', { between: 30, within: 16, rows: 28, trees: 8 }, 224, 2.46831956],
    ['lemons, 14 rows of 26', { between: 24, within: 24, rows: 14, trees: 26 }, 364, 4.81322314],
    ['navel oranges, 20 rows of 50', { between: 22, within: 22, rows: 20, trees: 50 }, 1000, 11.11111111],
  ])('%s', (_, { between, within, rows, trees }, count, acres) => {
    const layout = { width: rows * between, length: trees * within, between, within }
    const { points, area } = planting0(rowsOf(layout))
    expect(points).toBe(count)
    expect(us(area, 'area')).toBeCloseTo(acres, 8)
    if (count === 224) {
      expect(area / 10_000).toBeCloseTo(0.99889349, 8)
      expect(points / us(area, 'area')).toBeCloseTo(90.75, 8)
    }
  })
})
