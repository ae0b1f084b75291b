import { describe, expect, test } from 'vitest'
import type { Feature, Plant } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import type { Report } from '#geo/report/report'
import { at, block, marks, planOf, row, station } from '../support/orchard'

/**
 * Distance decay and reach of a whole plan against integrals that have a closed form. Values: by formula and by
 * quadrature, agreeing to twelve figures. Tolerances: bounds of the midpoint rule for the spacing used, worked out below.
 */

/** r50 over alpha: half of the trips, decay exp(-d / alpha) over even blossom. */
const halfTrips = 1.678346990016661
/** One batch in good time; how many does not matter here. */
const stock = [{ date: '2026-04-12', females: 4000 }]

type Site = { features: readonly Feature[]; stations: readonly (readonly [x: number, y: number])[] }

/** A season with no blossom but the plantings', decay length `alpha` and a range that cuts nothing off. */
function reportOf({ features, stations }: Site, bee: Readonly<Record<string, number>>, background = 0): Report {
  const ids = stations.map((_, i) => `s${i}`)
  const plan = planOf({
    features: [...marks, ...features, ...stations.map(([x, y], i) => station(ids[i]!, x, y))],
    stock: Object.fromEntries(ids.map(id => [id, stock])),
    parameters: { backgroundBlossom: background, 'osmia-lignaria': bee },
  })
  const outcome = evaluate(plan, 2026)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const decaying = (alpha: number) => ({ typicalForagingRadius: halfTrips * alpha, maxForagingRange: 50 * alpha })

function plants(id: string, positions: readonly (readonly [x: number, y: number])[]): Plant {
  return {
    type: 'Feature',
    id,
    geometry: { type: 'MultiPoint', coordinates: positions.map(([x, y]) => at(x, y)) },
    // As much blossom a plant as in the rows and blocks of these tests.
    properties: { kind: 'plant', crop: 'apple', spread: Math.sqrt((4 * area) / Math.PI) },
  }
}

/** Ground of every plant, m2; in blocks it follows from the spacing, so there the ratio is put right. */
const area = 10

/**
 * Mean decay over a planting as its plants feel it: what they receive, over what a plant at the station's foot receives.
 */
function meanDecay(planting: Feature, from: readonly [x: number, y: number], alpha: number, ground = area): number {
  const report = reportOf({ features: [planting, plants('foot', [from])], stations: [from] }, decaying(alpha))
  const [all, foot] = report.plantings
  return all!.supplied! / all!.points / ground / (foot!.supplied! / area)
}

/** Points of a ring from `inner` to `outer`, each for the same area h2 pi/4: 4 (2 r / h) of them on the circle of radius r. */
function ringPoints(inner: number, outer: number, h: number): (readonly [number, number])[] {
  return Array.from({ length: Math.round((outer - inner) / h) }, (_, j) => inner + (j + 0.5) * h).flatMap(radius => {
    const count = Math.round((8 * radius) / h)
    return Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.5)) / count
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const
    })
  })
}

/** The plane of the drawing and that of the plan differ by a part in a million at most. */
const planes = 1e-6

describe('decay exp(-d / alpha), mean over', () => {
  /** Midpoint rule along the radius for f = r exp(-r/alpha), |f''| <= 2/alpha. */
  const radial = (inner: number, outer: number, h: number, alpha: number) =>
    (((h * h * (outer - inner)) / 24) * (2 / alpha) * 2) / (outer ** 2 - inner ** 2) + planes

  test.each([
    [0.5, 0.7216320834],
    [1, 0.5284822353],
    [2, 0.2969970751],
    [4, 0.1135527257],
  ])('a disc of %f alpha, from its centre', (ratio, expected) => {
    const [alpha, a] = [50, 50 * ratio]
    const found = meanDecay(plants('disc', ringPoints(0, a, a / 50)), [0, 0], alpha)
    expect(Math.abs(found - expected)).toBeLessThan(radial(0, a, a / 50, alpha))
  })

  test('an annulus of 50 to 150 m, from its centre, alpha 100 m', () => {
    const found = meanDecay(plants('annulus', ringPoints(50, 150, 2)), [0, 0], 100)
    expect(Math.abs(found - 0.3519705892)).toBeLessThan(radial(50, 150, 2, 100))
  })

  test.each([
    [40, 0.4993597369],
    [150, 0.2309823433],
  ])('a disc of 100 m, from %d m beside its centre, alpha 100 m', (beside, expected) => {
    const h = 1
    const found = meanDecay(plants('disc', ringPoints(0, 100, h)), [beside, 0], 100)
    // Cells of h by pi h/4: their second moments over 2, times the integral of the curvature, 4 pi at most; and their
    // centroids lie h2/12r outside the circle their points stand on, where the decay falls by 1/alpha a metre at most.
    const curved = ((h * h * (1 + (Math.PI / 4) ** 2)) / 24) * ((4 * Math.PI) / (Math.PI * 100 ** 2))
    expect(Math.abs(found - expected)).toBeLessThan(curved + (h * h) / (6 * 100 * 100) + planes)
  })

  test.each([
    ['end', 0, 0.5823381567],
    ['middle', 60, 0.7519806065],
  ] as const)('a row of 120 m, from its %s, alpha 100 m', (_, from, expected) => {
    const step = 0.2
    const line = row('row', [step / 2, 0], [120 - step / 2, 0], { count: 600, spacing: 4, rowSpacing: 2.5 })
    const found = meanDecay(line, [from, 0], 100)
    expect(Math.abs(found - expected)).toBeLessThan((step * step) / (24 * 100 * 100) + planes)
  })

  test.each([
    ['100 m, from its centre', 100, [50, 50], 4, 0.689136003],
    ['100 m, from its corner', 100, [0, 0], 1, 0.4849993873],
    ['200 m, from its centre', 200, [100, 100], 4, 0.4849993873],
  ] as const)('a square of %s, alpha 100 m', (_, side, from, quarters, expected) => {
    const h = 1
    const square = block('square', [0, 0, side, side], { spacing: h, rowSpacing: h })
    const found = meanDecay(square, from, 100, h * h)
    // The curvature of the decay over a quarter of the plane comes to pi at most; the cell at the peak stands for itself.
    const curved = ((h * h) / 24) * ((quarters * Math.PI) / side ** 2) + (h * h * h) / (100 * side ** 2)
    expect(Math.abs(found - expected)).toBeLessThan(curved + planes)
  })

  const bed = (ring: readonly (readonly [x: number, y: number])[]): Feature => ({
    type: 'Feature',
    id: 'bed',
    geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]!].map(([x, y]) => at(x, y))] },
    properties: { kind: 'bed', crop: 'apple' },
  })

  test('a bed of 100 m by 100 m cut into cells of 2 m, from its centre, alpha 100 m', () => {
    const square = bed([
      [-50, -50],
      [50, -50],
      [50, 50],
      [-50, 50],
    ])
    const curved = (4 / 24) * ((4 * Math.PI) / 100 ** 2) + 8 / (100 * 100 ** 2)
    expect(Math.abs(meanDecay(square, [0, 0], 100, 4) - 0.689136003)).toBeLessThan(curved + planes)
  })

  test('a round bed of 100 m cut into cells of 2 m, from its centre, alpha 100 m', () => {
    const corners = 512
    const radius = 100 * Math.sqrt((2 * Math.PI) / corners / Math.sin((2 * Math.PI) / corners))
    const round = bed(
      Array.from({ length: corners }, (_, i) => {
        const angle = (2 * Math.PI * i) / corners
        return [radius * Math.cos(angle), radius * Math.sin(angle)] as const
      }),
    )
    const area = Math.PI * 100 ** 2
    const report = reportOf({ features: [round, plants('foot', [[0, 0]])], stations: [[0, 0]] }, decaying(100))
    const [all, foot] = report.plantings
    expect(all!.area).toBeCloseTo(area, 1)
    // Cells on the edge are in or out as a whole; the area is put right for all alike, so only the decay at the edge
    // against that of the rest counts: four standard deviations of the count.
    const cut = 16 * Math.sqrt((200 * Math.PI * 2) / Math.PI / 12)
    const found = all!.supplied! / area / (foot!.supplied! / 10)
    expect(Math.abs(found - 0.5284822353)).toBeLessThan((cut * (0.5284822353 - Math.exp(-1))) / area + 7e-5)
  })

  test('half of the trips over even blossom end within the typical foraging radius', () => {
    const [alpha, h] = [30, 1]
    const radius = Math.round(halfTrips * alpha)
    const outer = 10 * alpha
    const features = [plants('near', ringPoints(0, radius, h)), plants('far', ringPoints(radius, outer, 2 * h))]
    const [near, far] = reportOf({ features, stations: [[0, 0]] }, decaying(alpha)).plantings
    // Whole metres of radius; the share of trips within x alpha is 1 - (1 + x) exp(-x).
    const within = (r: number) => 1 - (1 + r / alpha) * Math.exp(-r / alpha)
    const expected = within(radius) / (within(outer) - within(radius))
    // The midpoint rule leaves h2/24 times what the slope of r exp(-r/alpha) changes by from end to end of a ring.
    const slope = (r: number) => (1 - r / alpha) * Math.exp(-r / alpha)
    const left = (h * h * (1 - slope(radius)) + 4 * h * h * (slope(outer) - slope(radius))) / 24
    // Each far point stands for four times the ground of a near one.
    const found = near!.supplied! / (4 * far!.supplied!)
    expect(Math.abs(found - expected)).toBeLessThan((1.1 * left) / (alpha * alpha * (within(outer) - within(radius))))
    expect(within(halfTrips * alpha)).toBeCloseTo(0.5, 12)
  })
})

describe('blossom that nobody drew', () => {
  /**
   * One plant at the station's foot with so little blossom (0.06 flowers, the background 5 000 at least) that the rest of
   * the ground takes all but a hundred-thousandth of the trips: ratios below hold to that.
   */
  function served(bee: Readonly<Record<string, number>>, background: number): number {
    const lone = { ...plants('foot', [[0, 0]]), properties: { kind: 'plant', crop: 'apple', spread: 0.03 } } as Plant
    return reportOf({ features: [lone], stations: [[0, 0]] }, bee, background).plantings[0]!.supplied!
  }

  test('draws in proportion to its density', () => {
    expect(served(decaying(40), 2) / served(decaying(40), 6)).toBeCloseTo(3, 4)
  })

  test('draws as the square of the decay length where nothing cuts the range off', () => {
    expect(served(decaying(30), 3) / served(decaying(60), 3)).toBeCloseTo(4, 4)
  })

  test.each([
    [1, 0.5284822353],
    [2, 0.2969970751],
    [4, 0.1135527257],
  ])('draws only within the range: %d alpha', (ratio, mean) => {
    const cut = { ...decaying(40), maxForagingRange: 40 * ratio }
    // The mean decay over that disc times its area, over the whole plane's 2 pi alpha2.
    expect(served(decaying(40), 3) / served(cut, 3)).toBeCloseTo((mean * ratio ** 2) / 2, 4)
  })
})

describe('reach, the share within the typical foraging radius', () => {
  /**
   * Counting points of spacing h inside a curve: the cells that the curve cuts, 4/pi of them per h of it, are each wrong
   * by a share that is spread evenly; four standard deviations.
   */
  const counted = (edge: number, h: number) => 4 * h * h * Math.sqrt((edge / h) * (4 / Math.PI) * (1 / 12))
  const circle = 2 * Math.PI * 100

  /** Ground in reach on a wide field, m2. */
  function groundInReach(stations: Site['stations'], box: [number, number, number, number], radius = 100): number {
    const field = block('field', box, { spacing: 1, rowSpacing: 1 })
    const bee = { typicalForagingRadius: radius, maxForagingRange: 300 }
    const [planting] = reportOf({ features: [field], stations }, bee).plantings
    return planting!.reach! * planting!.points
  }

  test('a square of 160 m round one station, 100 m', () => {
    const ground = groundInReach([[0, 0]], [-80, -80, 80, 80])
    // Only the circle's pieces within the square cut cells: an angle of 65 degrees in all.
    expect(Math.abs(ground - 0.9717141478 * 160 ** 2)).toBeLessThan(counted(0.181 * circle, 1))
  })

  test.each([
    [50, 41310.7608215],
    [100, 50548.1560857],
    [150, 58298.735532],
  ])('two stations %d m apart, counted once where both reach', (apart, union) => {
    const ground = groundInReach(
      [
        [-apart / 2, 0],
        [apart / 2, 0],
      ],
      [-190, -110, 190, 110],
    )
    expect(Math.abs(ground - union)).toBeLessThan(counted(2 * circle, 1))
  })

  test('three stations 100 m from each other', () => {
    const ground = groundInReach(
      [
        [-50, -28.8675],
        [50, -28.8675],
        [0, 57.735],
      ],
      [-160, -140, 160, 170],
    )
    expect(Math.abs(ground - 64444.3978795)).toBeLessThan(counted(3 * circle, 1))
  })

  test('a station 30 m outside the field', () => {
    const ground = groundInReach([[-30, 0]], [0, -110, 110, 110])
    expect(Math.abs(ground - 9799.2191235442)).toBeLessThan(counted(circle / 2, 1))
  })

  test('stations of two bees, each with its own radius', () => {
    const field = block('field', [-160, -110, 160, 110], { spacing: 1, rowSpacing: 1 })
    const base = planOf({
      features: [...marks, field, station('a', -50, 0), station('b', 70, 0)],
      stock: { a: stock },
      parameters: {
        'osmia-lignaria': { typicalForagingRadius: 100 },
        'osmia-cornifrons': { typicalForagingRadius: 60 },
      },
    })
    const [season] = base.seasons
    const b = { bee: 'osmia-cornifrons', releases: stock } as const
    const plan = { ...base, seasons: [{ ...season!, stations: { ...season!.stations, b } }] }
    const outcome = evaluate(plan, 2026)
    const planting = outcome.ok ? outcome.value.plantings[0]! : null
    // Discs of 100 and 60 m, 120 m apart, share a lens of 2770.8516829 m2.
    const union = Math.PI * (100 ** 2 + 60 ** 2) - 2770.8516829052
    expect(Math.abs(planting!.reach! * planting!.points - union)).toBeLessThan(counted(1.6 * circle, 1))
  })
})
