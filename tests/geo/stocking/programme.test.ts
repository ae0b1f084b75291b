import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { acceptStock, type StockOptions, type StockResult, stockFor } from '#geo/stocking/programme'
import { block, marks, planOf, station } from '../../support/orchard'

function stock(plan: Plan, options: StockOptions = {}, year = 2026): StockResult {
  const outcome = stockFor(plan, year, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const release = (females: number) => [{ date: '2026-04-06', females, males: 2 * females }]

/** A block with a station at either end, and more tubes than they need. */
function twoStations(tubes = 2000): Plan {
  const plan = planOf({
    features: [...marks, block('block', [-60, -30, 60, 30]), station('west', -40, 0), station('east', 40, 0)],
    stock: { west: release(10), east: release(200) },
  })
  const [season] = plan.seasons
  const stations = Object.fromEntries(Object.entries(season!.stations!).map(([id, each]) => [id, { ...each, tubes }]))
  return { ...plan, seasons: [{ ...season!, stations }] }
}

describe('fewest females at the stations there are', () => {
  it('reaches the target by the true coverage, in whole cocoons, close to what the programme needs at least', () => {
    const plan = twoStations()
    const result = stock(plan)
    const report = evaluate(acceptStock(result).apply(plan), 2026)
    if (!report.ok) throw new Error('no report')
    expect(result.reached).toBe(true)
    expect(report.value.orchard.coverage).toBe(result.after.coverage)
    expect(report.value.plantings[0]!.coverage).toBeGreaterThanOrEqual(0.9 - 1e-6)
    expect(result.plantings[0]!.coverage).toBe(report.value.plantings[0]!.coverage)
    expect(result.females).toBeGreaterThanOrEqual(result.bound * (1 - 1e-6))
    expect(result.females).toBeLessThan(result.bound + 2)
    expect(report.value.stations.map(({ females }) => females).reduce((sum, each) => sum + each)).toBeCloseTo(
      result.females,
      9,
    )
  })

  it('shares the bees alike between two stations that stand alike', () => {
    const [west, east] = stock(twoStations()).stations
    expect(Math.abs(west!.femaleCocoons - east!.femaleCocoons)).toBeLessThanOrEqual(2)
    expect(west!.releases).toEqual([{ date: '2026-04-06', females: west!.femaleCocoons, males: west!.maleCocoons }])
  })

  it('takes fewer for a lower target, and none for none', () => {
    const plan = twoStations()
    const females = [0, 0.3, 0.6, 0.9].map(target => stock(plan, { target }).females)
    expect(females[0]).toBe(0)
    for (let i = 1; i < females.length; i += 1) expect(females[i]).toBeGreaterThan(females[i - 1]!)
  })

  it('buys whole sets', () => {
    for (const { femaleCocoons } of stock(twoStations(), { setOf: 25 }).stations) expect(femaleCocoons % 25).toBe(0)
  })

  it('keeps within the tubes, and tells which planting stops the target and by how much', () => {
    const plan = twoStations(60)
    const result = stock(plan)
    expect(result.reached).toBe(false)
    for (const { tubes, femaleCocoons, most } of result.stations) {
      expect(tubes).toBeLessThanOrEqual(60)
      expect(femaleCocoons).toBe(most)
    }
    const [row] = result.plantings
    expect(row).toMatchObject({ id: 'block', isStopping: true })
    expect(row!.coverage).toBeCloseTo(row!.most!, 9)
    const report = evaluate(plan, 2026)
    const wanted = report.ok ? report.value.plantings[0]!.wanted : 0
    expect(row!.shortBy).toBeCloseTo((0.9 - row!.coverage!) * wanted, 6)
    expect(stock(plan, { isFree: true }).reached).toBe(true)
  })

  it('tells of a planting out of reach of all stations, and still serves the others', () => {
    const plan = twoStations()
    const far = block('far', [700, 700, 740, 740])
    const result = stock({ ...plan, features: [...plan.features, far] })
    expect(result.reached).toBe(false)
    expect(result.plantings).toMatchObject([
      { id: 'block', isStopping: false, shortBy: 0 },
      { id: 'far', coverage: 0, most: 0, isStopping: true },
    ])
  })

  it('leaves a planting without bloom dates out', () => {
    const plan = twoStations()
    const pears = block('pears', [-60, 60, 60, 90], { crop: 'pear-european' })
    const result = stock({ ...plan, features: [...plan.features, pears] })
    expect(result.reached).toBe(true)
    expect(result.plantings[1]).toMatchObject({ id: 'pears', coverage: null, shortBy: null, most: null })
  })

  it('stocks stations that hold nothing yet on the dates of the others', () => {
    const plan = twoStations()
    const [season] = plan.seasons
    const stations = { west: {}, east: { ...season!.stations!.east!, releases: release(200) } }
    const result = stock({ ...plan, seasons: [{ ...season!, stations }] })
    expect(result.stations[0]!.releases[0]!.date).toBe('2026-04-06')
    const bare = stock({ ...plan, seasons: [{ ...season!, stations: { west: {}, east: {} } }] })
    expect(bare.reached).toBe(true)
    expect(bare.stations[0]!.releases).toHaveLength(1)
  })

  it.each(['allotment', 'farm', 'mixed-orchard', 'providence-apples'])('answers for the %s plan with a bound', name => {
    const outcome = readPlan(readFileSync(`scenarios/${name}.plan.geojson`, 'utf8'))
    if (!outcome.ok) throw new Error(name)
    const result = stock(outcome.value, { isFree: true }, 2025)
    expect(result.females).toBeGreaterThanOrEqual(result.bound * (1 - 1e-6))
    for (const { coverage, isStopping, shortBy } of result.plantings) {
      if (coverage !== null && !isStopping) expect(coverage).toBeGreaterThanOrEqual(0.9 - 2e-6)
      if (isStopping) expect(shortBy).toBeGreaterThan(0)
    }
  })
})
