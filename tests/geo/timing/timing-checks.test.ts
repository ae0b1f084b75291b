import { describe, expect, it } from 'vitest'
import { coldDays } from '#geo/data/season-work'
import { mostColdDegrees, timingFigures } from '#geo/data/timing-figures'
import type { Bloom, Feature, Plan, Release, Season } from '#geo/plan/plan'
import { withSetAside } from '#geo/plan/set-aside'
import { isFieldCheck, type Problem, problemText } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import { addDays } from '#geo/time/day'
import { block, forage, marks, planOf, spring, station } from '../../support/orchard'

const north = station('north', 0, 0)
const apples = block('apples', [10, -40, 70, 40])
const pears = block('pears', [-70, -40, -10, 40], { crop: 'pear-european' })
const early: Bloom = { first: '2026-03-20', full: '2026-03-26', end: '2026-04-04' }
const out = (date: string, females = 100): Release[] => [{ date, females }]

type Parts = {
  readonly releases?: readonly Release[]
  readonly features?: readonly Feature[]
  readonly bloom?: Season['bloom']
  readonly season?: Partial<Season>
  readonly before?: readonly Season[]
}

function planWith({
  releases = out('2026-04-12'),
  features = [apples],
  bloom = { apple: spring },
  season = {},
  before = [],
}: Parts): Plan {
  const plan = planOf({ features: [...features, north, ...marks], stock: { north: releases }, bloom })
  return { ...plan, seasons: [...before, { ...plan.seasons[0]!, ...season }] }
}

const codes = ['released', 'bloom-un', 'one-batch', 'tail', 'cold', 'taken']

function found(parts: Parts): readonly Problem[] {
  const report = evaluate(planWith(parts), 2026)
  if (!report.ok) throw new Error('no report')
  return report.value.problems.filter(({ code }) => codes.some(start => code.startsWith(start)) && code !== 'tail-bare')
}
const told = (parts: Parts) => found(parts).map(({ severity, code, at }) => `${severity} ${code} ${at}`)

it('well-timed bees have nothing said of their dates', () => {
  expect(told({})).toEqual([])
  expect(found({}).every(isFieldCheck)).toBe(true)
})

describe('out before blossom', () => {
  // A tenth of the apples opens on 17 April.
  it.each([
    ['2026-04-12', []],
    ['2026-04-11', ['note released-early north']],
    ['2026-04-10', ['note released-early north']],
    ['2026-04-09', ['warning released-early north']],
    ['2026-04-01', ['warning released-early north']],
  ])('on %s', (date, expected) => {
    expect(told({ releases: out(date) })).toEqual(expected)
  })

  it('says how long, how near and whose figure', () => {
    const [problem] = found({ releases: out('2026-04-01') })
    expect(problem!.values).toMatchObject({ days: 16, isFar: true, blossom: '2026-04-17', limit: 14, reach: 150 })
    expect(problemText(problem!)).toMatch(/16 days before any blossom drawn within 150 m is open.*over 14/)
  })

  it('is right where forage blooms near the station, and not where it lies far off', () => {
    const bloom = { apple: spring, hedge: early }
    const releases = out('2026-03-20')
    expect(told({ releases, bloom, features: [apples, forage('hedge', [-30, -20, -10, 20])] })).toEqual([])
    expect(told({ releases, bloom, features: [apples, forage('hedge', [-230, -20, -160, 20])] })).toEqual([
      'warning released-early north',
    ])
  })
})

describe('out too late', () => {
  it('after the last full bloom near', () => {
    // Nesting 8 days after: 24 April is full bloom.
    expect(told({ releases: out('2026-04-16') })).toEqual([])
    expect(told({ releases: out('2026-04-17') })).toEqual([
      'warning released-late north',
      'warning bloom-unattended apples',
    ])
  })

  it('for the first of two crops, told at it', () => {
    const parts = {
      features: [apples, pears],
      bloom: { apple: spring, 'pear-european': early },
      releases: out('2026-04-12'),
    }
    expect(told(parts)).toEqual(['warning bloom-unattended pears', 'warning one-batch '])
    const both = [...out('2026-03-16'), ...out('2026-04-12')]
    expect(told({ ...parts, releases: both })).toEqual([])
  })
})

it('one batch for a long spell of bloom, unless it is a starter stock', () => {
  const bloom = { apple: { first: '2026-04-20', full: '2026-04-27', end: '2026-05-08' }, 'pear-european': early }
  const parts = { features: [apples, pears], bloom }
  expect(told({ ...parts, releases: out('2026-03-16') })).toEqual(['warning one-batch '])
  expect(told({ ...parts, releases: out('2026-03-16', 30) })).toEqual([])
})

it('a long tail of flight without blossom is told once, with the source', () => {
  const report = evaluate(planWith({}), 2026)
  const tail = report.ok ? report.value.problems.filter(({ code }) => code === 'tail-bare') : []
  expect(tail.map(({ severity, at, values }) => [severity, at, values.from])).toEqual([['note', '', '2026-05-04']])
  const meadow = forage('meadow', [-30, -20, -10, 20])
  const fed = evaluate(
    planWith({
      features: [apples, meadow],
      bloom: { apple: spring, meadow: { first: '2026-04-20', full: '2026-05-20', end: '2026-06-10' } },
    }),
    2026,
  )
  expect(fed.ok && fed.value.problems.some(({ code }) => code === 'tail-bare')).toBe(false)
})

describe('cold store', () => {
  const release = '2026-04-12'
  const { low: least, high: most } = coldDays['osmia-lignaria']
  const mostDegrees = mostColdDegrees['osmia-lignaria']
  const kept = (days: number, temperature?: number) => ({
    season: { coldStore: { from: addDays(release, -days), ...(temperature === undefined ? {} : { temperature }) } },
  })
  const place = 'plan.seasons[0].coldStore'

  it('too short, too long, too warm for the bee that is set out', () => {
    expect(told(kept(150, 3))).toEqual([])
    expect(told(kept(least))).toEqual([])
    expect(told(kept(least - 1))).toEqual([`warning cold-short ${place}`])
    expect(told(kept(most))).toEqual([])
    expect(told(kept(most + 1))).toEqual([`warning cold-long ${place}`])
    expect(told(kept(150, mostDegrees.value + 0.5))).toEqual([`warning cold-warm ${place}`])
    expect(problemText(found(kept(60))[0]!)).toMatch(
      /^Blue orchard bee: cold since .* 60 days of it, under 100 \(Mader/,
    )
  })

  // Bosch & Kemp 2003: at 7 degC no harm up to 150 days, at 4 degC or less none for 210.
  it('for long only where it is colder', () => {
    expect(told(kept(150, 6))).toEqual([])
    expect(told(kept(151, 4))).toEqual([])
    expect(told(kept(151, 4.5))).toEqual([`warning cold-warm ${place}`])
    expect(told(kept(210, 4))).toEqual([])
    expect(problemText(found(kept(180, 6))[0]!)).toMatch(
      /^Blue orchard bee: kept cold for 180 days by 2026-04-12 at 6 °C\. More than 150 days want 4 °C or less \(Bosch/,
    )
  })

  it('the earliest batch is the shortest in the cold, the last the longest', () => {
    const releases = [...out('2026-04-12'), ...out('2026-04-16')]
    const short = found({ ...kept(least - 2), releases })
    expect(short.map(({ code, values }) => [code, values.date])).toEqual([['cold-short', '2026-04-12']])
  })

  it('begun while the brood of the season before is still larvae, or long after it is adult', () => {
    const before = [{ year: 2025, stations: { north: { releases: [{ date: '2025-04-12', females: 100 }] } } }]
    const at = (from: string) => told({ season: { coldStore: { from } }, before })
    expect(at('2025-08-01')).toContain('warning cold-early plan.seasons[1].coldStore')
    expect(at('2025-10-15')).toEqual([])
    expect(at('2025-12-15')).toEqual(['note cold-late plan.seasons[1].coldStore'])
  })

  it('odd seasons before are passed over', () => {
    const odd = [
      { date: '9999-01-01', females: 5 },
      { date: 'soon', females: 5 },
      { date: '2025-04-12', females: -3 },
    ]
    const before = [{ year: 2025, stations: { north: { releases: odd } } }]
    expect(told({ season: { coldStore: { from: '2025-11-15', temperature: 3 } }, before })).toEqual([])
  })
})

describe('taking in', () => {
  const taken = (takenIn: string, visits: { date: string; capped: number }[] = []) =>
    told({ season: { records: { north: { takenIn, visits } } } })

  it('too soon after the last new cap', () => {
    const visits = [
      { date: '2026-05-20', capped: 10 },
      { date: '2026-06-01', capped: 14 },
      { date: '2026-06-12', capped: 14 },
    ]
    expect(taken('2026-06-14', visits)).toEqual(['warning taken-in-early north'])
    expect(taken(addDays('2026-06-01', timingFigures.settling.value), visits)).toEqual([])
  })

  it('while by the dates of release bees still build, where caps were not counted', () => {
    expect(taken('2026-05-10')).toEqual(['warning taken-in-flight north'])
    expect(taken('2026-06-20')).toEqual([])
  })

  it('after mid-July', () => {
    expect(taken('2026-07-15')).toEqual([])
    expect(taken('2026-07-16')).toEqual(['warning taken-in-late north'])
  })
})

it('a check that was put aside carries its reason, at its own place only', () => {
  const setAside = [
    { code: 'released-early', at: 'north', reason: 'Willow by the river' },
    { code: 'no-bloom', at: 'apples', reason: 'x' },
  ]
  const plan = planWith({ releases: out('2026-04-01'), season: { setAside } })
  const problems = found({ releases: out('2026-04-01') })
  expect(withSetAside(plan, 2026, problems).map(({ setAside: reason }) => reason)).toEqual(['Willow by the river'])
  const elsewhere = { ...problems[0]!, at: 'south' }
  const missing: Problem = { code: 'no-bloom', severity: 'warning', at: 'apples', values: {} }
  expect(withSetAside(plan, 2026, [elsewhere, missing])).toEqual([elsewhere, missing])
  expect(withSetAside(plan, 2025, problems)).toBe(problems)
})
