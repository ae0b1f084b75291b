import { describe, expect, test } from 'vitest'
import { bees } from '#geo/data/bees'
import { crops } from '#geo/data/crops'
import { beeIds } from '#geo/data/own'

/** Hectares of an international acre. */
const acre = 0.40468564224

const rate = (crop: string) => crops[crop]!.figures.stockingRate
const bee = (id: (typeof beeIds)[number]) => bees[id].parameters

describe('stocking rates', () => {
  // Mader, Spivak & Evans 2010, SARE Handbook 11, chapter 6
  test('250 and 300 females an acre lie within the ranges of apple and almond', () => {
    expect(250 / acre).toBeCloseTo(617.763, 3)
    expect(300 / acre).toBeCloseTo(741.316, 3)
    for (const females of [250 / acre, 300 / acre]) {
      expect(females).toBeGreaterThan(rate('apple').low)
      expect(females).toBeLessThan(rate('apple').high)
    }
    expect(Math.abs(rate('almond').value - 300 / acre)).toBeLessThan(2)
  })

  // Vicens & Bosch 2000
  test('530 nesting O. cornuta a hectare sufficed in apple: what the default rate comes to in that bee', () => {
    expect(rate('apple').value / bee('osmia-cornuta').effectiveness.value).toBeCloseTo(530, -1)
  })

  // Bosch, Kemp & Trostle 2006
  test('sweet cherry asks for as many released females as were released in Utah', () => {
    const { emergence, establishment } = bee('osmia-lignaria')
    const released = rate('cherry-sweet').value / (emergence.value * establishment.value)
    expect(released).toBeGreaterThan(1290)
    expect(released).toBeLessThan(1857)
  })

  test('a published count per tree and the rate per hectare are both there for apple, and clash', () => {
    const { spacing, rowSpacing, stockingRate } = crops.apple!.figures
    const byArea = (spacing.value * rowSpacing.value * stockingRate.value) / 10_000
    expect(byArea).toBeLessThan(crops.apple!.femalesPerPlant!.low)
  })
})

describe('bees', () => {
  test.each([
    ['osmia-lignaria', 25, 40, 80],
    ['osmia-bicornis', 25, 40, 80],
    ['osmia-cornuta', 25, 45, 90],
    ['osmia-cornifrons', 15, 30, 45],
  ] as const)('%s: the radius of half the trips follows from the decay length', (id, low, mid, high) => {
    const { typicalForagingRadius: radius } = bee(id)
    for (const [figure, alpha] of [
      [radius.low, low],
      [radius.value, mid],
      [radius.high, high],
    ] as const) {
      const x = figure / alpha
      expect((1 + x) * Math.exp(-x)).toBeCloseTo(0.5, 2)
      expect(figure).toBeCloseTo(1.678346990016661 * alpha, 1)
    }
  })

  test('beyond the maximum range the decay has fallen to about a thousandth', () => {
    for (const id of beeIds) {
      const { typicalForagingRadius: radius, maxForagingRange: range } = bee(id)
      expect(Math.exp((-range.value * 1.678346990016661) / radius.value)).toBeLessThan(0.0015)
      expect(range.low).toBeGreaterThan(radius.high)
    }
  })

  // Biddinger and others 2013: marked flowers in cherry mostly within 35 m, few at 55 m
  test('O. cornifrons visits at 50 m are about a quarter of those at 10 m', () => {
    const alpha = bee('osmia-cornifrons').typicalForagingRadius.value / 1.678346990016661
    expect(Math.exp(-40 / alpha)).toBeCloseTo(0.26, 2)
  })

  // Bosch, Osorio-Canadas, Sgolastra & Vicens 2021: 198 females set out, 99 nested, 9.15 cells each, 1.28-fold growth
  test('O. cornuta in almond: half nest, nine cells each, daughters 1.28-fold', () => {
    const { emergence, establishment, tubesUsedPerFemale, cellsPerTube, femaleShare, keepingTakenIn } =
      bee('osmia-cornuta')
    const nesting = emergence.value * establishment.value
    const cells = tubesUsedPerFemale.value * cellsPerTube.value
    expect(nesting).toBeCloseTo(99 / 198, 2)
    expect(cells).toBeCloseTo(9.15, 0)
    expect(nesting * cells * femaleShare.value * keepingTakenIn.value).toBeCloseTo(1.28, 1)
  })

  // Magnin, Bianchi & Hagenbucher 2025: set out together, O. cornuta emerged 4 +/- 2 days before O. bicornis
  test('O. bicornis nests four days after O. cornuta', () => {
    expect(bee('osmia-bicornis').lag.value - bee('osmia-cornuta').lag.value).toBe(4)
  })

  test('growth in a year, cocoons taken in, lies near one and above it for the early bees', () => {
    for (const id of beeIds) {
      const p = bee(id)
      const growth =
        p.emergence.value *
        p.establishment.value *
        p.tubesUsedPerFemale.value *
        p.cellsPerTube.value *
        p.femaleShare.value *
        p.keepingTakenIn.value
      expect(growth).toBeGreaterThan(1)
      expect(growth).toBeLessThan(1.6)
      expect(p.keepingOutside.value).toBeLessThan(p.keepingTakenIn.value)
      expect(p.tubesUsedPerFemale.value).toBeLessThan(p.tubesPerFemale.value)
    }
  })

  test('figures that belong together stand in order', () => {
    for (const id of beeIds) {
      const { flightFrom, flightFull, boreMin, boreMax } = bee(id)
      for (const end of ['low', 'value', 'high'] as const) {
        expect(flightFrom[end]).toBeLessThan(flightFull[end])
        expect(boreMin[end]).toBeLessThan(boreMax[end])
      }
      expect(flightFrom.high).toBeLessThanOrEqual(flightFull.low)
    }
  })

  // Vicens & Bosch 2000, weather: fully active from 10 to 12 degC
  test('O. cornuta works in full from at most 12 degC', () => {
    expect(bee('osmia-cornuta').flightFull).toMatchObject({ low: 10, value: 12, high: 12 })
  })
})

describe('crops', () => {
  test.each(Object.values(crops))('$id: blossom density is flowers over ground', ({ flowers, figures }) => {
    const { spacing, rowSpacing, blossomDensity } = figures
    const ground = { 'flowers/plant': spacing.value * rowSpacing.value, 'flowers/m': rowSpacing.value, 'flowers/m2': 1 }
    const area = ground[flowers.unit as keyof typeof ground]
    for (const end of ['low', 'value', 'high'] as const) {
      expect(Math.abs((blossomDensity[end] * area) / flowers[end] - 1)).toBeLessThan(1e-12)
    }
    expect(['derived', 'assumed']).toContain(blossomDensity.basis)
  })

  test.each(Object.values(crops))(
    '$id: first and second half of the bloom make up its length',
    ({ figures, bloomDays }) => {
      expect(Math.abs(figures.firstToFull.value + figures.fullToEnd.value - bloomDays.value)).toBeLessThanOrEqual(1)
      expect(figures.firstToFull.low).toBeGreaterThan(0)
      expect(figures.fullToEnd.low).toBeGreaterThan(0)
    },
  )

  const offset = (crop: string) => crops[crop]!.bloomOffset.continental.value

  // Leelanau Enterprise 2015: six to seven days
  test('inland, sour cherry follows sweet cherry by six or seven days', () => {
    expect([6, 7]).toContain(offset('cherry-sour') - offset('cherry-sweet'))
  })

  // Luedeling and others 2024, Rhineland: mean days from apple full bloom
  test.each([
    ['pear-european', -11.7],
    ['cherry-sweet', -8],
    ['plum-european', -14.1],
  ])('%s: the Rhineland mean lies within the inland range', (crop, mean) => {
    const { low, high } = crops[crop]!.bloomOffset.continental
    expect(mean).toBeGreaterThan(low)
    expect(mean).toBeLessThan(high)
  })

  // Okanagan, midpoints of blossom periods against apple
  test.each([
    ['apricot', -25],
    ['cherry-sweet', -14],
    ['peach', -16.5],
    ['pear-european', -10],
    ['plum-european', -8.5],
  ])('%s: the Okanagan midpoint lies within the inland range', (crop, mid) => {
    const { low, high } = crops[crop]!.bloomOffset.continental
    expect(mid).toBeGreaterThanOrEqual(low)
    expect(mid).toBeLessThanOrEqual(high)
  })

  // UC Cooperative Extension 2020: 35,000 x 20 % to 50,000 x 30 %
  test('an almond tree sets 7,000 to 15,000 nuts', () => {
    const { flowers, shareOfFlowersThatMustSet } = crops.almond!
    const nuts = flowers.value * shareOfFlowersThatMustSet.value
    expect(nuts).toBeGreaterThan(7000)
    expect(nuts).toBeLessThan(15_000)
  })
})
