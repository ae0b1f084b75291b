import { describe, expect, it } from 'vitest'
import { pointCloud } from '#geo/report/cloud'
import { evaluate } from '#geo/report/evaluate'
import { reportRanges } from '#geo/report/ranges'
import { rulesOfThumb } from '#geo/report/rules'
import { block, marks, planOf, row, station } from '../../support/orchard'

const plan = planOf({
  features: [
    block('b', [-30, -30, 30, 30]),
    row('r', [40, -30], [40, 30], { vigour: 0.5 }),
    station('s', 0, 0),
    ...marks,
  ],
  stock: { s: [{ date: '2026-04-12', females: 120 }] },
})

describe('reportRanges', () => {
  const ranges = reportRanges(plan, 2026)!
  const report = evaluate(plan, 2026)
  if (!report.ok) throw new Error('no report')

  it('holds every figure between its ends, and shares below one', () => {
    const { coverage } = ranges.orchard
    expect(coverage!.low).toBeLessThan(report.value.orchard.coverage!)
    expect(coverage!.high).toBeGreaterThan(report.value.orchard.coverage!)
    expect(coverage!.high).toBeLessThanOrEqual(1)
    expect(coverage!.low).toBeGreaterThanOrEqual(0)
    for (const { id, wanted } of report.value.plantings) {
      expect(ranges.plantings[id]!.wanted.low).toBeLessThanOrEqual(wanted)
      expect(ranges.plantings[id]!.wanted.high).toBeGreaterThanOrEqual(wanted)
    }
  })

  it('puts the figure that moves coverage most first', () => {
    const widths = ranges.influences.map(({ low, high }) =>
      Math.max(Math.abs(low - report.value.orchard.coverage!), Math.abs(high - report.value.orchard.coverage!)),
    )
    expect(widths).toEqual([...widths].sort((a, b) => b - a))
    expect(widths[0]).toBeGreaterThan(0)
  })

  it("does not vary the grower's own values", () => {
    const sure = reportRanges(
      { ...plan, parameters: { 'osmia-lignaria': { emergence: 0.9, establishment: 0.5 } } },
      2026,
    )!
    expect(sure.stations.s!.females.low).toBeCloseTo(54, 9)
    expect(sure.stations.s!.females.high).toBeCloseTo(54, 9)
    expect(ranges.stations.s!.females.high).toBeGreaterThan(ranges.stations.s!.females.low)
  })

  it('reaches over the foraging radius: what is in reach, in time and short moves with it', () => {
    const edge = planOf({
      features: [row('r', [0, 0], [0, 120]), station('s', 0, -10), ...marks],
      stock: { s: [{ date: '2026-04-12', females: 120 }] },
    })
    const { plantings } = reportRanges(edge, 2026)!
    const { reach, timingMatch, shortBy } = plantings.r!
    for (const range of [reach, timingMatch, shortBy]) expect(range!.high).toBeGreaterThan(range!.low)
    expect(reach!.high).toBeCloseTo(1, 12)
  })

  it('does not call nothing certain where a wider range of flight would bring bees', () => {
    const far = planOf({
      features: [row('r', [350, 0], [350, 60]), station('s', 0, 0), ...marks],
      stock: { s: [{ date: '2026-04-12', females: 400 }] },
    })
    expect(reportRanges(far, 2026)!.plantings.r!.coverage).toMatchObject({ low: 0 })
    expect(reportRanges(far, 2026)!.plantings.r!.coverage!.high).toBeGreaterThan(0)
  })

  it('has none for a plan without a report', () => {
    expect(reportRanges(plan, 1999)).toBeNull()
  })
})

describe('pointCloud', () => {
  it('has a place for every point of the report, planting by planting', () => {
    const cloud = pointCloud(plan, 2026)
    const report = evaluate(plan, 2026)
    if (!report.ok) throw new Error('no report')
    expect(cloud.plantings.map(({ id, start, end }) => [id, end - start])).toEqual(
      report.value.plantings.map(({ id, points }) => [id, points]),
    )
    expect(cloud.lngLat.length).toBe(2 * cloud.plantings.at(-1)!.end)
    expect(Math.abs(cloud.lngLat[0]! - -1.7)).toBeLessThan(0.001)
  })
})

describe('rulesOfThumb', () => {
  it('sets the rate by area beside the rule by plant, both with vigour', () => {
    const [whole, half] = rulesOfThumb(plan, 2026)
    expect(whole!.byArea).toBeGreaterThan(0)
    // Two or three females a mature apple tree (garden literature): the low and high of the table.
    const plants = 24 * 15
    expect(whole!.byPlant!.high).toBeCloseTo(3 * plants, 9)
    expect(half!.byPlant!.high).toBeCloseTo(3 * 25 * 0.5, 9)
    expect(whole!.inUse).toBe('area')
  })
})
