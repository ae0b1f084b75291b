import { describe, expect, it } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { modelOf } from '#geo/report/model'
import type { Report } from '#geo/report/report'
import { addDays } from '#geo/time/day'
import { at, block, forage, marks, planOf, row, spring, station } from '../../support/orchard'

function reportOf(plan: Plan, year = 2026): Report {
  const outcome = evaluate(plan, year)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

const released = (date: string, females: number) => [{ date, females }]

describe('evaluate', () => {
  it('gives kappa times the service back as the females at the station: one crop, one bloom, no rival, best day', () => {
    // Section 6 of the model: one crop with one bloom, all in range, W = 0, no forage, one batch on the best day.
    const plan = planOf({
      features: [block('b', [-40, -40, 40, 40]), station('s', 10, -15), ...marks],
      stock: { s: released('2026-04-10', 200) },
      parameters: { backgroundBlossom: 0, referenceCropShare: 0.8 },
    })
    const days = Array.from({ length: 40 }, (_, i) => addDays('2026-03-20', i))
    const ratio = (date: string) => {
      const report = reportOf({
        ...plan,
        seasons: [{ ...plan.seasons[0]!, stations: { s: { releases: released(date, 200) } } }],
      })
      return (0.8 * report.plantings[0]!.supplied!) / report.stations[0]!.females
    }
    const ratios = days.map(ratio)
    expect(Math.max(...ratios)).toBeCloseTo(1, 9)
    expect(Math.min(...ratios)).toBeLessThan(0.9)
  })

  it('names what holds a planting back', () => {
    const near = { features: [block('b', [-30, -30, 30, 30]), station('s', 0, 0), ...marks] }
    const limit = (plan: Plan) => reportOf(plan).plantings[0]!.limit
    expect(limit(planOf({ ...near, stock: { s: released('2026-04-14', 30) } }))).toBe('numbers')
    expect(limit(planOf({ ...near, stock: { s: released('2026-02-20', 2000) } }))).toBe('timing')
    expect(limit(planOf({ ...near, stock: { s: released('2026-04-14', 20000) } }))).toBe('none')
    expect(limit(planOf({ ...near, stock: { s: [] } }))).toBe('unserved')
    const far = [block('b', [-30, -30, 30, 30]), station('s', 190, 0), ...marks]
    expect(limit(planOf({ features: far, stock: { s: released('2026-04-14', 600) } }))).toBe('distance')
    const rival = [row('b', [-10, 0], [10, 0]), station('s', 0, 5), forage('f', [-80, 10, 80, 90], 4000), ...marks]
    const bloom = { apple: spring, f: spring }
    expect(limit(planOf({ features: rival, bloom, stock: { s: released('2026-04-14', 12) } }))).toBe('competition')
  })

  it('tells what cannot be computed and never makes it zero', () => {
    const plan = planOf({
      features: [
        row('apples', [0, 0], [0, 50]),
        row('pears', [10, 0], [10, 50], { crop: 'pear-european' }),
        station('s', 5, 20),
      ],
      stock: { s: released('2026-04-12', 80) },
    })
    const report = reportOf(plan)
    const [apples, pears] = report.plantings
    expect(apples!.coverage).toBeGreaterThan(0)
    expect(pears).toMatchObject({ coverage: null, supplied: null, shortBy: null, timingMatch: null, limit: null })
    expect(pears!.wanted).toBeGreaterThan(0)
    expect(report.problems.map(({ code, at }) => [code, at])).toContainEqual(['no-bloom', 'pears'])
    // Wanted counts all; what hangs on days only what blooms on known days.
    expect(report.orchard.wanted).toBeCloseTo(apples!.wanted + pears!.wanted, 12)
    expect(report.orchard.coverage).toBeCloseTo(apples!.coverage!, 12)
    expect(report.orchard.supplied).toBeCloseTo(apples!.supplied!, 12)
  })

  it('knows nothing of an orchard without any bloom dates, and does not call that nothing', () => {
    const { orchard } = reportOf(planOf({ features: [row('r', [0, 0], [0, 50]), station('s', 5, 20)], bloom: {} }))
    expect(orchard).toMatchObject({ supplied: null, coverage: null, shortBy: null, busiestDay: null })
    expect(orchard.wanted).toBeGreaterThan(0)
  })

  it('says which seasons there are when asked for another', () => {
    const outcome = evaluate(planOf({ features: [row('r', [0, 0], [0, 50])] }), 2031)
    expect(outcome.ok).toBe(false)
    expect(outcome.problems.at(-1)).toMatchObject({
      code: 'no-season',
      severity: 'error',
      values: { year: 2031, seasons: '2026' },
    })
  })

  it('answers an empty plan with nothing known, not with zero or full coverage', () => {
    const { orchard } = reportOf(planOf({ features: [], bloom: {} }))
    expect(orchard).toMatchObject({ wanted: 0, coverage: null, reach: null, busiestDay: null })
  })

  it('counts only what stands in the season: planted <= year < removed', () => {
    const features = [
      row('old', [0, 0], [0, 50], { removed: 2026 }),
      row('new', [4, 0], [4, 50], { planted: 2026 }),
      row('later', [8, 0], [8, 50], { planted: 2027 }),
    ]
    expect(reportOf(planOf({ features })).plantings.map(({ id }) => id)).toEqual(['new'])
  })

  it('takes the busiest day, not the sum of plantings that bloom apart', () => {
    const early = { first: '2026-03-20', full: '2026-03-27', end: '2026-04-06' }
    const features = [row('a', [0, 0], [0, 100]), row('p', [8, 0], [8, 100], { crop: 'apricot' })]
    const { orchard, plantings } = reportOf(planOf({ features, bloom: { apple: spring, apricot: early } }))
    const most = Math.max(...plantings.map(({ wanted }) => wanted))
    expect(orchard.busiestDay!.wanted).toBeCloseTo(most, 9)
    expect(orchard.busiestDay!.wanted).toBeLessThan(orchard.wanted * 0.7)
  })

  it('counts the edge of the typical foraging radius in, and only stocked stations', () => {
    const features = [row('r', [0, 0], [0, 40], { spacing: 10 }), station('s', 0, -30), ...marks]
    const parameters = { 'osmia-lignaria': { typicalForagingRadius: 50 } }
    const stocked = reportOf(planOf({ features, parameters, stock: { s: released('2026-04-12', 50) } }))
    // Plants at 30, 40, 50, 60, 70 m; degrees and back cost a few nanometres, so the edge is tried just outside too.
    expect([0.4, 0.6]).toContain(stocked.plantings[0]!.reach)
    const wider = { 'osmia-lignaria': { typicalForagingRadius: 50.000001 } }
    expect(
      reportOf(planOf({ features, parameters: wider, stock: { s: released('2026-04-12', 50) } })).plantings[0]!.reach,
    ).toBe(0.6)
    expect(reportOf(planOf({ features, parameters, stock: { s: [] } })).plantings[0]!.reach).toBe(0)
  })

  it('gives the south the same season half a year on, over the year end', () => {
    const northern = planOf({
      features: [row('r', [0, 0], [0, 60]), station('s', 3, 20)],
      stock: { s: released('2026-04-12', 60) },
    })
    const later = (date: string) => addDays(date, 250)
    const southern = planOf({
      features: northern.features,
      bloom: { apple: { first: later(spring.first), full: later(spring.full), end: later(spring.end) } },
      stock: { s: released(later('2026-04-12'), 60) },
      year: 2026,
    })
    const earlier = planOf({
      features: northern.features,
      bloom: {
        apple: { first: addDays(spring.first, -130), full: addDays(spring.full, -130), end: addDays(spring.end, -130) },
      },
      stock: { s: released(addDays('2026-04-12', -130), 60) },
    })
    const expected = reportOf(northern).plantings[0]!.coverage!
    expect(reportOf(southern).plantings[0]!.coverage).toBeCloseTo(expected, 12)
    expect(reportOf(earlier).plantings[0]!.coverage).toBeCloseTo(expected, 12)
  })

  it("lets each station hold its own bee, with that bee's own figures", () => {
    const plan = planOf({ features: [row('r', [0, 0], [0, 60]), station('s', 3, 20)] })
    const stations = { s: { bee: 'osmia-bicornis' as const, releases: released('2026-04-12', 60) } }
    const own = reportOf({ ...plan, seasons: [{ ...plan.seasons[0]!, stations }] })
    const blue = reportOf({
      ...plan,
      seasons: [{ ...plan.seasons[0]!, stations: { s: { releases: released('2026-04-12', 60) } } }],
    })
    expect(own.stations[0]!.bee).toBe('osmia-bicornis')
    expect(own.stations[0]!.females).toBeLessThan(blue.stations[0]!.females)
    expect(own.stations[0]!.femaleCocoons).toBe(60)
  })
})

describe('a model asked again as a station moves', () => {
  const plan = planOf({
    features: [
      block('b', [-60, -60, 60, 60]),
      block('c', [70, -60, 120, 60], { crop: 'pear-european' }),
      station('s', 0, 0),
      station('t', 50, 0),
      ...marks,
    ],
    stock: { s: released('2026-04-12', 90), t: released('2026-04-18', 70) },
    bloom: { apple: spring, 'pear-european': { first: '2026-04-08', full: '2026-04-13', end: '2026-04-24' } },
  })

  it('answers as a plan with the station there would', () => {
    const model = modelOf(plan, 2026)
    if (!model.ok) throw new Error('no model')
    expect(model.value.moveStation('s', at(33, 21))).toBe(true)
    const moved = model.value.report({ withLimits: true })
    const features = plan.features.map(feature => (feature.id === 's' ? station('s', 33, 21) : feature))
    const fresh = reportOf({ ...plan, features })
    expect(moved.plantings.map(({ coverage }) => coverage)).toEqual(fresh.plantings.map(({ coverage }) => coverage))
    // Problems are those of the plan that the model was made from.
    expect({ ...moved, problems: [] }).toEqual({ ...fresh, problems: [] })
  })

  it('knows no station that the season does not use', () => {
    const model = modelOf(plan, 2026)
    expect(model.ok && model.value.moveStation('nobody', at(0, 0))).toBe(false)
  })

  it('says of plants without bloom dates that it cannot say', () => {
    const bloom = { apple: spring }
    const model = modelOf({ ...plan, seasons: [{ ...plan.seasons[0]!, bloom }] }, 2026)
    if (!model.ok) throw new Error('no model')
    const apples = model.value.report({ withLimits: false }).plantings[0]!.points
    const shares = model.value.pointCoverage()
    expect(shares.subarray(0, apples).every(share => share >= 0)).toBe(true)
    expect(shares.subarray(apples).every(share => share === -1)).toBe(true)
  })

  it("gives every plant's coverage in the planting's own order", () => {
    const model = modelOf(plan, 2026)
    if (!model.ok) throw new Error('no model')
    const shares = model.value.pointCoverage()
    const report = model.value.report({ withLimits: false })
    expect(shares.length).toBe(report.plantings.reduce((sum, { points }) => sum + points, 0))
    const first = report.plantings[0]!
    const mean = shares.subarray(0, first.points).reduce((sum, share) => sum + share, 0) / first.points
    expect(mean).toBeCloseTo(first.coverage!, 5)
  })
})
