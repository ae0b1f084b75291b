import { describe, expect, it } from 'vitest'
import { adviceFigures } from '#geo/data/timing-figures'
import type { Bloom, Plan, Release } from '#geo/plan/plan'
import { problemText } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import { dateOfDay, daysBetween } from '#geo/time/day'
import { acceptAdvice } from '#geo/timing/accept-advice'
import type { AdviceOptions } from '#geo/timing/advice'
import { releaseAdvice } from '#geo/timing/release-advice'
import { block, forage, marks, planOf, spring, station } from '../../support/orchard'

const pear: Bloom = { first: '2026-03-20', full: '2026-03-26', end: '2026-04-04' }
const late: Bloom = { first: '2026-05-10', full: '2026-05-17', end: '2026-05-28' }
/** Full the day after it opens, so that bees ought to be at work before anything is open. */
const sudden: Bloom = { first: '2026-04-17', full: '2026-04-18', end: '2026-04-27' }
const willow: Bloom = { first: '2026-03-25', full: '2026-04-05', end: '2026-04-20' }
const one = (date: string, females = 400): Release[] => [{ date, females, males: 2 * females }]

const apples = block('apples', [10, -40, 70, 40])
const pears = block('pears', [-70, -40, -10, 40], { crop: 'pear-european' })
const north = station('north', 0, 0)

function advised(plan: Plan, options: AdviceOptions) {
  const outcome = releaseAdvice(plan, 2026, options)
  if (!outcome.ok) throw new Error(outcome.problems.map(problemText).join(' '))
  return { ...outcome.value, problems: outcome.problems }
}

function coverageOf(plan: Plan): number {
  const report = evaluate(plan, 2026)
  if (!report.ok) throw new Error('no report')
  return report.value.orchard.coverage!
}

describe('one batch', () => {
  const plan = planOf({ features: [apples, north, ...marks], stock: { north: one('2026-05-01') } })
  const advice = advised(plan, { scope: 'orchard', batches: 1 })

  it('is the day with most coverage of all that blossom allows, by trying every one in the report', () => {
    const withOut = (date: string): Plan =>
      acceptAdvice(2026, { stations: [{ id: 'north', batches: [{ date, share: 1 }] }] }).apply(plan)
    // The bee's lag is 8 days and its spread 3: the first nest after 5 days, and a tenth of the apples opens on 17 April.
    const allowed = Array.from({ length: 60 }, (_, i) => dateOfDay(102 + i, 2026))
    const best = Math.max(...allowed.map(date => coverageOf(withOut(date))))
    expect(allowed[0]).toBe('2026-04-12')
    expect(advice.coverage).toBeCloseTo(best, 12)
    expect(coverageOf(withOut(advice.bees[0]!.batches[0]!.date))).toBe(advice.coverage)
  })

  it('says what it gains over the first crop’s day and the plan’s own', () => {
    expect(advice.bees[0]!.firstCrop).toEqual({ id: 'apples', name: 'apples', date: '2026-04-17' })
    expect(advice.own).toBe(coverageOf(plan))
    expect(advice.coverage!).toBeGreaterThan(advice.own!)
    expect(advice.atFirstCrop).toBe(
      coverageOf(planOf({ features: plan.features, stock: { north: one('2026-04-17') } })),
    )
  })
})

describe('forage', () => {
  const features = [apples, north, ...marks]
  const stock = { north: one('2026-04-25') }

  it('lets bees out earlier where it blooms near the station, and is named', () => {
    const hedge = forage('hedge', [-30, -20, -10, 20], 2)
    const without = advised(planOf({ features, stock, bloom: { apple: sudden } }), { scope: 'orchard', batches: 1 })
    const bloom = { apple: sudden, hedge: willow }
    const beside = advised(planOf({ features: [...features, hedge], stock, bloom }), { scope: 'orchard', batches: 1 })
    expect(without.bees[0]!.batches[0]).toMatchObject({
      date: '2026-04-12',
      leansOn: { id: 'apples', isForage: false },
    })
    expect(beside.bees[0]!.batches[0]!.date < '2026-04-12').toBe(true)
    expect(beside.bees[0]!.batches[0]!.leansOn).toEqual({ id: 'hedge', name: 'hedge', isForage: true })
  })

  it('too far off, or without blossom, helps nothing', () => {
    const bloom = { apple: sudden, hedge: willow }
    for (const hedge of [forage('hedge', [-230, -20, -160, 20]), forage('hedge', [-30, -20, -10, 20], 0)]) {
      const advice = advised(planOf({ features: [...features, hedge], stock, bloom }), { scope: 'orchard', batches: 1 })
      expect(advice.bees[0]!.batches[0]!.date).toBe('2026-04-12')
    }
  })

  it('is told of where a station has none: crops are in its range, but farther than first females go', () => {
    const far = station('far', 250, 0)
    const advice = advised(planOf({ features: [apples, far, ...marks], stock: { far: one('2026-04-12') } }), {
      scope: 'orchard',
      batches: 1,
    })
    expect(advice.problems.map(({ code, at }) => `${code} ${at}`)).toEqual(['advice-station-bare far'])
    expect(problemText(advice.problems[0]!)).toContain(`within ${adviceFigures.forageReach.value} m (Hofmann`)
    expect(advice.bees[0]!.batches[0]!.leansOn).toBeNull()
  })

  it('holds back the plan’s own dates as a measure, and says so', () => {
    const early = advised(planOf({ features, stock: { north: one('2026-04-11') }, bloom: { apple: sudden } }), {
      scope: 'orchard',
      batches: 1,
    })
    expect(early.isOwnUnfed).toBe(true)
    expect(early.own!).toBeGreaterThan(early.coverage!)
    expect(early.isOwn).toBe(false)
  })

  it('makes a station wait whose own blossom opens later than that of the others', () => {
    const south = station('south', 300, 0)
    const cherries = block('cherries', [310, -40, 370, 40], { crop: 'cherry-sweet' })
    const bloom = { apple: late, 'cherry-sweet': pear }
    const plan = planOf({
      features: [apples, cherries, north, south, ...marks],
      stock: { north: one('2026-05-10'), south: one('2026-05-10') },
      bloom,
    })
    const advice = advised(plan, { scope: 'orchard', batches: 1 })
    const dates = Object.fromEntries(advice.stations.map(({ id, batches }) => [id, batches[0]!.date]))
    expect(dates.south! < '2026-04-01').toBe(true)
    expect(dates.north).toBe(dateOfDay(125, 2026))
    expect(daysBetween(dates.north!, late.first)).toBe(5)
  })
})

describe('several batches', () => {
  const bloom = { apple: late, 'pear-european': pear }
  const features = [apples, pears, forage('hedge', [-5, 50, 5, 60], 300), north, ...marks]
  const all = { ...bloom, hedge: { first: '2026-03-10', full: '2026-04-10', end: '2026-06-10' } }
  const plan = planOf({ features, stock: { north: one('2026-03-20', 1600) }, bloom: all })

  it('serve two crops far apart in time, where one batch can serve but one', () => {
    const [single, double, triple] = ([1, 2, 3] as const).map(batches => advised(plan, { scope: 'orchard', batches }))
    expect(double!.bees[0]!.batches).toHaveLength(2)
    expect(double!.coverage! - single!.coverage!).toBeGreaterThan(0.05)
    expect(triple!.coverage!).toBeGreaterThanOrEqual(double!.coverage!)
    const [first, second] = double!.bees[0]!.batches
    expect(daysBetween(first!.date, second!.date)).toBeGreaterThan(30)
  })

  it('are not advised where they would hardly add to the coverage', () => {
    const simple = planOf({ features: [apples, north, ...marks], stock: { north: one('2026-04-20', 100) } })
    expect(advised(simple, { scope: 'orchard', batches: 3 }).bees[0]!.batches).toHaveLength(1)
  })

  it('are not advised for a starter stock', () => {
    const small = planOf({ features, stock: { north: one('2026-03-20', 30) }, bloom: all })
    const advice = advised(small, { scope: 'orchard', batches: 3 })
    expect(advice.bees[0]!.batches).toHaveLength(1)
    expect(advice.problems.map(({ code }) => code)).toEqual(['advice-starter'])
  })
})

describe('one station', () => {
  const south = station('south', 0, -20)
  const plan = planOf({
    features: [apples, pears, north, south, ...marks],
    stock: { north: one('2026-03-18'), south: one('2026-05-20') },
    bloom: { apple: spring, 'pear-european': pear },
  })

  it('is advised on with the others as they are', () => {
    const advice = advised(plan, { scope: 'south', batches: 1 })
    expect(advice.stations.map(({ id }) => id)).toEqual(['south'])
    const after = acceptAdvice(2026, advice).apply(plan)
    expect(coverageOf(after)).toBeCloseTo(advice.coverage!, 12)
    expect(after.seasons[0]!.stations!.north).toBe(plan.seasons[0]!.stations!.north)
  })

  it('without cocoons gets the best day for its first bees, and no coverage', () => {
    const bare = { ...plan, seasons: [{ ...plan.seasons[0]!, stations: { south: {} } }] }
    const advice = advised(bare, { scope: 'south', batches: 3 })
    expect(advice).toMatchObject({ coverage: null, own: null, atFirstCrop: null, isOwn: false })
    expect(advice.stations[0]!.batches).toHaveLength(1)
  })
})

it('refuses where there is nothing to advise on', () => {
  const codes = (plan: Plan, options: AdviceOptions = { scope: 'orchard', batches: 1 }) => {
    const outcome = releaseAdvice(plan, 2026, options)
    return [outcome.ok, ...outcome.problems.map(({ code }) => code)]
  }
  expect(codes(planOf({ features: [apples, north] }))).toEqual([false, 'advice-no-stations'])
  const plan = planOf({ features: [apples, north, ...marks], stock: { north: one('2026-04-12') } })
  expect(codes(plan, { scope: 'elsewhere', batches: 1 })).toEqual([false, 'advice-no-stations'])
  expect(codes({ ...plan, seasons: [{ ...plan.seasons[0]!, bloom: {} }] })).toEqual([false, 'advice-no-blossom'])
  const away = { ...plan, features: [apples, station('north', 600, 0), ...marks] }
  expect(codes(away)).toEqual([false, 'advice-no-blossom'])
})
