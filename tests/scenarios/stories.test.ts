import geographiclib from 'geographiclib-geodesic'
import { describe, expect, test } from 'vitest'
import { isPlanting, seasonOf } from '#geo/plan/plan'
import type { Report } from '#geo/report/report'
import { rulesOfThumb } from '#geo/report/rules'
import { compareSeasons } from '#geo/seasons/compare'
import {
  nearest,
  planting,
  scenarioDistances,
  scenarioPlan,
  scenarioReport,
  shareWithin,
  sum,
} from '../support/scenario-reports'

/** What each example plan is there to show. */

const counts = (report: Report) => Object.fromEntries(report.plantings.map(({ id, points }) => [id, points]))

/** Distance to the nearest station of every plant, with the ground it stands for. */
function nearestByGround(name: string, year: number): readonly { readonly metres: number; readonly ground: number }[] {
  const report = scenarioReport(name, year)
  return Object.entries(scenarioDistances(name, year)).flatMap(([id, plants]) => {
    const ground = planting(report, id).area / plants.length
    return plants.map(plant => ({ metres: nearest(plant), ground }))
  })
}

type Told = { readonly within: readonly (readonly [metres: number, share: number])[]; mean: number; farthest: number }

/**
 * Holds a plan to the distances it was laid out for, which were counted over whole blocks, edges and headlands included, on a
 * grid of one or two metres.
 */
function expectDistances(
  name: string,
  year: number,
  told: Told,
  tolerance: { share: number; mean: number; farthest: number },
): void {
  const plants = nearestByGround(name, year)
  const all = sum(plants.map(({ ground }) => ground))
  for (const [most, share] of told.within) {
    const within = sum(plants.map(({ metres, ground }) => (metres <= most ? ground : 0))) / all
    expect(Math.abs(within - share), `within ${most} m in ${year}`).toBeLessThan(tolerance.share)
  }
  const mean = sum(plants.map(({ metres, ground }) => metres * ground)) / all
  expect(Math.abs(mean - told.mean)).toBeLessThan(tolerance.mean)
  const farthest = Math.max(...plants.map(({ metres }) => metres))
  expect(Math.abs(farthest - told.farthest)).toBeLessThan(tolerance.farthest)
}

describe('the allotment', () => {
  const plan = scenarioPlan('allotment')
  const report = scenarioReport('allotment', 2025)
  const kinds = new Map(plan.features.filter(isPlanting).map(({ id, properties }) => [id, properties.kind]))
  const rows = (kind: string) => report.plantings.filter(({ id }) => kinds.get(id) === kind)

  test('has 73 trees with 686 m2 of crowns, 90 bushes, 140 m of raspberries, 26 beds with 296 m2, 38 plots', () => {
    expect(sum(rows('plant').map(({ points }) => points))).toBe(73)
    expect(sum(rows('plant').map(({ area }) => area))).toBeCloseTo(686, 0)
    const bushes = rows('row').filter(({ crop }) => crop !== 'raspberry')
    expect(sum(bushes.map(({ points }) => points))).toBe(90)
    const lines = plan.features.flatMap(({ geometry, properties }) =>
      'crop' in properties && properties.crop === 'raspberry' && geometry.type === 'LineString'
        ? [geometry.coordinates]
        : [],
    )
    const length = ([a, b]: (typeof lines)[number]) =>
      geographiclib.Geodesic.WGS84.Inverse(a![1], a![0], b![1], b![0]).s12!
    expect(sum(lines.map(length))).toBeCloseTo(140, 3)
    expect(rows('bed')).toHaveLength(26)
    expect(sum(rows('bed').map(({ area }) => area))).toBeCloseTo(26 * 11.4, 2)
    expect(plan.features.filter(({ id }) => id.startsWith('plot-'))).toHaveLength(38)
  })

  test('has every plant in reach, and few served: distance is not what holds it back', () => {
    for (const year of [2024, 2025]) {
      const { orchard } = scenarioReport('allotment', year)
      expect(orchard.reach).toBeCloseTo(1, 12)
      expect(orchard.coverage).toBeLessThan(0.2)
    }
  })

  test('has stations nearer by in the second year', () => {
    const mean = (year: number) => {
      const plants = nearestByGround('allotment', year)
      expect(Math.max(...plants.map(({ metres }) => metres))).toBeLessThan(57)
      return sum(plants.map(({ metres }) => metres)) / plants.length
    }
    expect(mean(2025)).toBeLessThan(0.9 * mean(2024))
  })

  test('shows how two rules of thumb clash over its apples', () => {
    const rules = rulesOfThumb(plan, 2025).filter(({ crop }) => crop.startsWith('apple'))
    const byPlant = sum(rules.map(rule => rule.byPlant?.value ?? 0))
    // 40 apple trees at two to three females each.
    expect(byPlant).toBeGreaterThanOrEqual(80)
    expect(byPlant).toBeLessThanOrEqual(120)
    expect(byPlant).toBeGreaterThan(4 * sum(rules.map(rule => rule.byArea)))
  })
})

describe('the mixed orchard', () => {
  const poor = scenarioReport('mixed-orchard', 2024)
  const good = scenarioReport('mixed-orchard', 2025)

  test('has its rows and trees', () => {
    const trees = { plums: 96, cherries: 96, pears: 155, 'early-apples': 296, 'late-apples': 296, blueberries: 539 }
    expect(counts(good)).toEqual(trees)
    // 250 females an acre for the trees, 300 a hectare for blueberry, on the ground that the plants stand for.
    const ground = 96 * 20 + 96 * 20 + 155 * 13.5 + 592 * 11.25
    expect(good.orchard.wanted).toBeCloseTo((ground * 618 + 539 * 2.8 * 1.2 * 300) / 10_000, 6)
  })

  test('has its stations where they were meant to be', () => {
    const tolerance = { share: 0.02, mean: 0.5, farthest: 1.5 }
    const within = (a: number, b: number, c: number) => [[50, a] as const, [70, b] as const, [90, c] as const]
    const [first, second] = [within(0.36, 0.59, 0.86), within(0.92, 1, 1)]
    expectDistances('mixed-orchard', 2024, { within: first, mean: 60.6, farthest: 126.3 }, tolerance)
    expectDistances('mixed-orchard', 2025, { within: second, mean: 29.4, farthest: 68.9 }, tolerance)
    const near = (year: number, id: string) =>
      shareWithin(scenarioDistances('mixed-orchard', year)[id]!.map(nearest), 50)
    expect(near(2024, 'late-apples')).toBeCloseTo(0.16, 1)
    expect(near(2025, 'late-apples')).toBeCloseTo(0.93, 1)
    expect(near(2024, 'blueberries')).toBe(0)
  })

  test('is served better in the second year, its late crops much better', () => {
    expect(good.orchard.coverage).toBeGreaterThan(poor.orchard.coverage! + 0.1)
    expect(good.orchard.reach).toBeGreaterThan(0.99)
    expect(poor.orchard.reach).toBeLessThan(0.65)
    expect(planting(good, 'early-apples').coverage).toBeGreaterThan(2 * planting(poor, 'early-apples').coverage!)
    expect(planting(good, 'late-apples').coverage).toBeGreaterThan(3 * planting(poor, 'late-apples').coverage!)
    for (const late of ['early-apples', 'late-apples', 'blueberries']) {
      expect(planting(good, late).timingMatch).toBeGreaterThan(2 * planting(poor, late).timingMatch!)
    }
  })

  test('set fruit as it was served: the late apples caught up', () => {
    const set = (year: number, id: string) => {
      const { flowers, fruit } = seasonOf(scenarioPlan('mixed-orchard'), year)!.fruitSet![id]!
      return fruit! / flowers
    }
    expect([set(2024, 'early-apples'), set(2024, 'late-apples')]).toEqual([0.13, 0.07])
    expect([set(2025, 'early-apples'), set(2025, 'late-apples')]).toEqual([0.16, 0.14])
  })

  test('is short even in the good year', () => {
    expect(good.orchard.coverage).toBeLessThan(0.75)
    expect(good.orchard.shortBy).toBeGreaterThan(0.25 * good.orchard.wanted)
  })

  test('wants far less on its busiest day than all its wants added up', () => {
    const bloom = seasonOf(scenarioPlan('mixed-orchard'), 2024)!.bloom!
    const days = Array.from({ length: 30 }, (_, i) => `2024-04-${String(i + 1).padStart(2, '0')}`)
    const isOpen = (crop: string, day: string) => bloom[crop]!.first <= day && day <= bloom[crop]!.end
    const onDay = (day: string) => sum(poor.plantings.filter(({ crop }) => isOpen(crop, day)).map(row => row.wanted))
    const peak = Math.max(...days.map(onDay))
    // Pears, apples and blueberries in bloom together: 592 by the areas of the blocks, which plants fill but for the edges.
    expect(Math.abs(peak - 592)).toBeLessThan(0.02 * 592)
    for (const { orchard } of [poor, good]) {
      expect(orchard.busiestDay!.wanted).toBeLessThan(peak)
      expect(orchard.busiestDay!.wanted).toBeLessThan(0.5 * orchard.wanted)
    }
    expect(poor.orchard.busiestDay!.date).toBe('2024-04-27')
  })
})

describe('the farm', () => {
  const edges = scenarioReport('farm', 2024)
  const inside = scenarioReport('farm', 2025)

  test('has its rows and trees', () => {
    const trees = { apricots: 672, plums: 540, 'sour-cherries': 1134, pears: 760 }
    expect(counts(inside)).toEqual({ ...trees, 'mid-apples': 2394, 'late-apples': 2394 })
    const ground = 672 * 24 + 540 * 17.5 + 1134 * 15 + 760 * 8 + 4788 * 5.7
    expect(inside.orchard.wanted).toBeCloseTo((ground * 600) / 10_000, 6)
  })

  test('holds early bees in the west and late bees in the east', () => {
    const bees = Object.fromEntries(inside.stations.map(({ id, bee }) => [id, bee]))
    for (const id of ['c1', 'c2', 'c3', 'c7', 'c8']) expect(bees[id], id).toBe('osmia-cornuta')
    for (const id of ['c4', 'c5', 'c6', 'c9', 'c10', 'c11']) expect(bees[id], id).toBe('osmia-bicornis')
    // Early bees in time for the apricots, late bees for the late apples.
    expect(planting(inside, 'apricots').timingMatch).toBeGreaterThan(0.9)
    expect(planting(inside, 'late-apples').timingMatch).toBeGreaterThan(0.85)
  })

  test('has its stations where they were meant to be', () => {
    const tolerance = { share: 0.03, mean: 2, farthest: 8 }
    const within = (a: number, b: number, c: number) => [[60, a] as const, [90, b] as const, [120, c] as const]
    const [first, second] = [within(0.38, 0.64, 0.8), within(0.84, 0.999, 1)]
    expectDistances('farm', 2024, { within: first, mean: 80.6, farthest: 201.1 }, tolerance)
    expectDistances('farm', 2025, { within: second, mean: 41.9, farthest: 99 }, tolerance)
  })

  test('has half its trees out of reach from the edges, nearly all in reach from within, and still too few bees', () => {
    expect(edges.orchard.reach).toBeLessThan(0.55)
    expect(inside.orchard.reach).toBeGreaterThan(0.93)
    expect(inside.orchard.coverage).toBeGreaterThan(edges.orchard.coverage!)
    expect(inside.orchard.coverage).toBeLessThan(0.6)
    expect(sum(inside.stations.map(({ females }) => females))).toBeLessThan(0.5 * inside.orchard.wanted)
  })
})

describe('the apple rows at Providence', () => {
  const report = scenarioReport('providence-apples', 2025)
  const apples = planting(report, 'apples')

  // Batchelor and Reed 1918: 28 rows of 8 trees, 30 by 16 ft. The distances follow from that layout alone. A plan file's
  // nine decimals put the corner of the block and the station up to 0.08 mm off each.
  test('have 224 trees on 0.99889349 ha, 19.906101 m from a station in the mean and 32.308800 m at most', () => {
    expect(apples.points).toBe(224)
    expect(apples.area / 10_000).toBeCloseTo(0.99889349, 8)
    const distances = scenarioDistances('providence-apples', 2025).apples!.map(nearest)
    expect(distances).toHaveLength(224)
    expect(Math.abs(sum(distances) / 224 - 19.906101)).toBeLessThan(1.6e-4)
    expect(Math.abs(Math.max(...distances) - 32.3088)).toBeLessThan(1.6e-4)
  })

  test('all bloom at once, so that the busiest day wants what all want', () => {
    const { busiestDay, wanted } = report.orchard
    expect(busiestDay!.date).toBe('2025-05-09')
    expect(busiestDay!.wanted).toBeCloseTo(wanted, 9)
  })

  test('are in reach and in time, and want more bees', () => {
    expect(apples.reach).toBeCloseTo(1, 12)
    expect(apples.timingMatch).toBeGreaterThan(0.99)
    expect(apples.coverage).toBeLessThan(0.5)
    expect(apples.limit).toBe('numbers')
  })
})

describe('what two seasons beside each other tell', () => {
  const compared = (name: string) => {
    const outcome = compareSeasons(scenarioPlan(name), 2024, 2025)
    if (!outcome.ok) throw new Error(name)
    return outcome.value
  }

  test('the allotment: facing, mud and tubes, not distance', () => {
    const { orchard, stations } = compared('allotment')
    // All of it was in reach before, and a station more on the track hardly helps.
    expect([orchard.reach.from, orchard.reach.to]).toEqual([1, 1])
    expect(Math.abs(orchard.causes!.stations)).toBeLessThan(0.02)
    // As planned nothing gets better; as found the bees stayed, most of all at the two stations turned and given mud.
    expect(orchard.coverage.change).toBeLessThan(0.02)
    expect(orchard.found.to!.mid / orchard.found.from!.mid).toBeGreaterThan(1.5)
    const stayed = Object.fromEntries(
      stations.stations.map(({ id, from, to }) => [id, to.establishment!.mid / from.establishment!.mid]),
    )
    for (const id of ['a3', 'a4']) {
      expect(stayed[id]).toBeGreaterThan(2.5)
      expect(stayed[id]).toBeGreaterThan(1.4 * Math.max(stayed.a1!, stayed.a2!))
    }
    expect(stations.to!.return! / stations.from!.return!).toBeGreaterThan(2)
  })

  test('the mixed orchard: spread and batches', () => {
    const { orchard, plantings, facts } = compared('mixed-orchard')
    expect(facts.stations.added).toHaveLength(2)
    expect(facts.stock.batches).toEqual([1, 3])
    expect(orchard.reach.change).toBeGreaterThan(0.35)
    expect(orchard.coverage.change).toBeGreaterThan(0.1)
    for (const cause of ['stations', 'stock'] as const) expect(orchard.causes![cause]).toBeGreaterThan(0.01)
    const late = plantings.find(({ id }) => id === 'late-apples')!
    expect(late.reach.change).toBeGreaterThan(0.5)
    expect(late.timingMatch.change).toBeGreaterThan(0.4)
    expect(late.causes!.stock).toBeGreaterThan(0.2)
    expect(late.causes!.stations).toBeGreaterThan(0.01)
    expect(orchard.found.to!.mid / orchard.found.from!.mid).toBeGreaterThan(1.5)
  })

  test('the farm: full reach, half the stock', () => {
    const { orchard, facts, stations } = compared('farm')
    expect(facts.stations.added).toHaveLength(5)
    expect(orchard.reach.from).toBeLessThan(0.7)
    // Everything stands within 90 m of a station; the little that is farther than half of all trips go counts as not in reach.
    expect(orchard.reach.to).toBeGreaterThan(0.93)
    // And still half of what is wanted is missing.
    expect(orchard.coverage.to).toBeGreaterThan(0.35)
    expect(orchard.coverage.to).toBeLessThan(0.6)
    expect(stations.to!.return!).toBeGreaterThan(stations.from!.return!)
    // More mould in 2025, told among the losses by cause.
    const mould = ({ losses, cellsPerTube }: NonNullable<typeof stations.to>) => losses!.mould! / cellsPerTube!
    expect(mould(stations.to!)).toBeGreaterThan(mould(stations.from!))
  })

  test.each(['allotment', 'mixed-orchard', 'farm'])('%s: the parts add up to the change', name => {
    const { orchard } = compared(name)
    const parts = Object.values(orchard.causes!).reduce((total, part) => total + part, 0)
    expect(Math.abs(parts - orchard.coverage.change!)).toBeLessThan(1e-9)
  })
})
