import { describe, expect, it } from 'vitest'
import type { Plan, Season } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { Model } from '#geo/report/model'
import { type Causes, type Comparison, compareSeasons } from '#geo/seasons/compare'
import { movedStock, stockOf } from '#geo/seasons/mixed-stock'
import { type Cause, causeNames, type Mixture, mixedPlan } from '#geo/seasons/mixture'
import { dateOfDay, dayOfSeason } from '#geo/time/day'
import { block, marks, row, station } from '../../support/orchard'
import { scenarioPlan } from '../../support/scenario-reports'

const release = (date: string, females: number) => ({ date, females })

/** Two blocks, one of them planted in 2025, another grubbed then; three stations; two seasons that differ in all. */
function orchard(): Plan {
  const features = [
    ...marks,
    block('old', [-60, -30, -5, 30]),
    block('new', [5, -30, 60, 30], { planted: 2025 }),
    row('gone', [-60, 40], [60, 40], { removed: 2025 }),
    station('west', -50, 0),
    station('middle', 0, 0),
    station('east', 50, 0),
  ]
  const seasons: Season[] = [
    {
      year: 2024,
      bloom: {
        apple: { first: '2024-04-12', full: '2024-04-19', end: '2024-05-02' },
        gone: { first: '2024-04-02', full: '2024-04-09', end: '2024-04-20' },
      },
      stations: {
        west: { tubes: 200, releases: [release('2024-04-05', 120)] },
        middle: { tubes: 200, releases: [release('2024-04-02', 80), release('2024-04-12', 40)] },
      },
    },
    {
      year: 2025,
      bloom: { apple: { first: '2025-04-20', full: '2025-04-28', end: '2025-05-09' } },
      stations: {
        middle: { tubes: 200, releases: [release('2025-04-10', 150)] },
        east: { tubes: 200, bee: 'osmia-bicornis', releases: [release('2025-04-14', 200)] },
      },
    },
  ]
  return {
    version: 1,
    name: 'Test orchard',
    notes: '',
    timeZone: 'UTC',
    units: 'metric',
    bee: 'osmia-lignaria',
    bloomRegion: 'southern-england',
    parameters: {},
    crops: {},
    seasons,
    features,
    besides: {},
  }
}

function compared(plan: Plan, a = 2024, b = 2025): Comparison {
  const outcome = compareSeasons(plan, a, b)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

function coverageOf(plan: Plan, mixture: Mixture, id?: string): number {
  const mixed = mixedPlan(plan, mixture)
  const report = new Model(mixed.plan, mixed.year, []).report({ withLimits: false })
  const line = id === undefined ? report.orchard : report.plantings.find(each => each.id === id)
  return line?.coverage ?? 0
}

const sumOf = (causes: Causes) => causeNames.reduce((sum, cause) => sum + causes[cause], 0)
/** Sums of sixty-odd coverages, each right to its last digits. */
const tolerance = 1e-9

/** A season on the same days of another year. */
function copied({ year, bloom, stations }: Season, to: number): Season {
  const date = (text: string) => dateOfDay(dayOfSeason(text, year), to)
  return JSON.parse(JSON.stringify({ year: to, bloom, stations }), (_, value) =>
    typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value) ? date(value) : value,
  )
}

describe('the change', () => {
  it('runs between the coverages that both seasons have by themselves', () => {
    const plan = orchard()
    const { orchard: sums, plantings } = compared(plan)
    for (const [year, end] of [
      [2024, 'from'],
      [2025, 'to'],
    ] as const) {
      const report = evaluate(plan, year)
      if (!report.ok) throw new Error('no report')
      expect(sums.coverage[end]).toBe(report.value.orchard.coverage)
      for (const line of report.value.plantings) {
        const { wanted, supplied, reach, timingMatch, ...row } = plantings.find(({ id }) => id === line.id)!
        expect(row[end]).toBe(line.coverage)
        expect([wanted, supplied, reach, timingMatch].map(change => change[end])).toEqual([
          line.wanted,
          line.supplied,
          line.reach,
          line.timingMatch,
        ])
      }
    }
  })

  it('is null, not zero, where a planting was not there', () => {
    const { plantings } = compared(orchard())
    expect(plantings.map(({ id, from, to, change }) => [id, from === null, to === null, change === null])).toEqual([
      ['old', false, false, false],
      ['new', true, false, true],
      ['gone', false, true, true],
    ])
    expect(plantings[1]).toMatchObject({ causes: null, wanted: { from: null, change: null } })
  })

  it('of a season and its copy is nothing anywhere, from a leap year too', () => {
    for (const [plan, year] of [
      [orchard(), 2024],
      [scenarioPlan('mixed-orchard'), 2024],
    ] as const) {
      const season = plan.seasons.find(each => each.year === year)!
      const features = plan.features.map(feature => {
        const { planted: _, removed: __, ...properties } = feature.properties as Record<string, unknown>
        return { ...feature, properties } as unknown as typeof feature
      })
      const twin = { ...plan, features, seasons: [season, copied(season, 2027)] }
      const { orchard: sums, plantings, reasons } = compared(twin, year, 2027)
      expect(sums.coverage.change).toBe(0)
      expect([sums.wanted, sums.supplied, sums.reach, sums.shortBy].map(({ change }) => change)).toEqual([0, 0, 0, 0])
      for (const { change, causes, timingMatch } of [{ ...sums.coverage, ...sums, timingMatch: null }, ...plantings]) {
        expect(change).toBe(0)
        expect(Object.values(causes!)).toEqual([0, 0, 0, 0, 0, 0])
        if (timingMatch !== null) expect(timingMatch.change).toBe(0)
      }
      expect(reasons).toEqual([])
    }
  })

  it('one way is the other with its signs turned, to the last bit', () => {
    const plan = orchard()
    const [there, back] = [compared(plan), compared(plan, 2025, 2024)]
    expect(back.years).toEqual([2025, 2024])
    const mirrored = (causes: Causes | null) =>
      causes && Object.fromEntries(Object.entries(causes).map(([cause, part]) => [cause, part === 0 ? 0 : -part]))
    expect(back.orchard.causes).toEqual(mirrored(there.orchard.causes))
    expect(back.orchard.coverage).toEqual({
      from: there.orchard.coverage.to,
      to: there.orchard.coverage.from,
      change: -there.orchard.coverage.change!,
    })
    for (const [i, row] of back.plantings.entries()) {
      expect(row.causes).toEqual(mirrored(there.plantings[i]!.causes))
      expect([row.from, row.to]).toEqual([there.plantings[i]!.to, there.plantings[i]!.from])
    }
  })
})

describe('its causes', () => {
  it('add up to it, for the orchard and every planting', () => {
    for (const plan of [orchard(), scenarioPlan('mixed-orchard')]) {
      const { orchard: sums, plantings } = compared(plan)
      expect(Math.abs(sumOf(sums.causes!) - sums.coverage.change!)).toBeLessThan(tolerance)
      for (const { causes, change } of plantings) {
        if (causes !== null) expect(Math.abs(sumOf(causes) - change!)).toBeLessThan(tolerance)
      }
    }
  })

  it('are what each changes on the mean of all 720 orders, worked out one by one', () => {
    const plan = orchard()
    const known = new Map<string, number>()
    const value = (late: ReadonlySet<Cause>, id?: string) => {
      const mixture = Object.fromEntries(causeNames.map(cause => [cause, late.has(cause) ? 2025 : 2024])) as Mixture
      const key = JSON.stringify([mixture, id])
      if (!known.has(key)) known.set(key, coverageOf(plan, mixture, id))
      return known.get(key)!
    }
    const orders = (names: readonly Cause[]): Cause[][] =>
      names.length === 0
        ? [[]]
        : names.flatMap(name => orders(names.filter(n => n !== name)).map(rest => [name, ...rest]))
    const all = orders(causeNames)
    expect(all).toHaveLength(720)
    const { orchard: sums, plantings } = compared(plan)
    for (const [found, id] of [
      [sums.causes!, undefined],
      [plantings[0]!.causes!, 'old'],
    ] as const) {
      const parts = Object.fromEntries(causeNames.map(cause => [cause, 0])) as Record<Cause, number>
      for (const order of all) {
        const late = new Set<Cause>()
        for (const cause of order) {
          const before = value(late, id)
          late.add(cause)
          parts[cause] += (value(late, id) - before) / all.length
        }
      }
      for (const cause of causeNames) expect(Math.abs(parts[cause] - found[cause])).toBeLessThan(tolerance)
    }
  })

  it('are nothing for what is alike in both years', () => {
    const plan = orchard()
    const [then] = plan.seasons
    const only = (patch: Partial<Season>) => ({ ...plan, seasons: [then!, { ...copied(then!, 2026), ...patch }] })
    const whole = (of: Plan) => ({ ...of, features: of.features.filter(({ id }) => id !== 'new' && id !== 'gone') })
    const later = { apple: { first: '2026-04-20', full: '2026-04-28', end: '2026-05-09' } }
    const ofBloom = compared(whole(only({ bloom: later })), 2024, 2026).orchard
    expect(ofBloom.causes).toEqual({ ...nothing, bloom: ofBloom.coverage.change! })
    const more = { ...copied(then!, 2026).stations!, west: { releases: [release('2026-04-05', 400)] } }
    const ofStock = compared(whole(only({ stations: more })), 2024, 2026).orchard
    expect(ofStock.causes).toEqual({ ...nothing, stock: ofStock.coverage.change! })
    const grown = { ...plan, seasons: [then!, copied(then!, 2026)] }
    const ofPlantings = compared(grown, 2024, 2026).orchard
    expect(ofPlantings.causes).toEqual({ ...nothing, plantings: ofPlantings.coverage.change! })
  })

  it('are weather alone where nothing else differs', () => {
    const {
      seasons: [then],
      features,
      ...rest
    } = orchard()
    const plan = { ...rest, features: features.filter(({ id }) => id !== 'new' && id !== 'gone') }
    const days = (year: number, high: number) =>
      Array.from({ length: 120 }, (_, i) => [dateOfDay(60 + i, year), 4, high, 0, null] as const)
    const mild = { ...then!, weather: { days: days(2024, 17) } }
    const cold = { ...copied(then!, 2026), weather: { days: days(2026, 9) } }
    const { orchard: sums, reasons } = compared({ ...plan, seasons: [mild, cold] }, 2024, 2026)
    expect(sums.coverage.change).toBeLessThan(-0.01)
    expect(sums.causes).toEqual({ ...nothing, weather: sums.coverage.change! })
    expect(reasons).toMatchObject([{ cause: 'weather', text: 'other flying weather' }])
    const half = compared({ ...plan, seasons: [mild, copied(then!, 2026)] }, 2024, 2026)
    expect(half.reasons).toMatchObject([{ text: 'weather known for the first year only' }])
  })

  it('come in words', () => {
    const { reasons } = compared(orchard())
    const texts = Object.fromEntries(reasons.map(({ cause, text }) => [cause, text]))
    expect(texts).toEqual({
      plantings: 'one new planting, one planting gone',
      stations: 'one new station, one station given up',
      stock:
        'more female cocoons (350 after 240), two batches instead of three, red mason bee and blue orchard bee instead of blue orchard bee',
      bloom: 'bloom eight days later',
    })
  })
})

const nothing = Object.fromEntries(causeNames.map(cause => [cause, 0])) as Record<Cause, number>

describe('stock at the places of another year', () => {
  const plan = orchard()
  const [then, now] = plan.seasons.map(season => stockOf(plan, season)) as [
    ReturnType<typeof stockOf>,
    ReturnType<typeof stockOf>,
  ]
  const total = (stock: ReturnType<typeof stockOf>, bee: string) =>
    [...stock.values()].flatMap(byBee => [...(byBee.get(bee as never)?.values() ?? [])]).reduce((a, b) => a + b, 0)

  it('stays as it is at its own places', () => {
    expect(movedStock(then, then)).toBe(then)
  })

  it('keeps the sum of each bee, and stands only where the other year has stations', () => {
    const moved = movedStock(then, now)
    expect([...moved.keys()]).toEqual(['middle', 'east'])
    expect(total(moved, 'osmia-lignaria')).toBeCloseTo(240, 9)
    const back = movedStock(now, then)
    expect([...back.keys()]).toEqual(['west', 'middle'])
    expect(total(back, 'osmia-lignaria')).toBeCloseTo(150, 9)
    expect(total(back, 'osmia-bicornis')).toBeCloseTo(200, 9)
  })

  it('gives new places the share of the bees that they hold in their own year', () => {
    // In 2024 the west holds half of the females; the 150 of 2025 split so, the 200 red mason bees go by all bees.
    const back = movedStock(now, then)
    const at = (id: string) =>
      [...back.get(id)!.values()].flatMap(days => [...days.values()]).reduce((a, b) => a + b, 0)
    expect(back.get('west')!.get('osmia-lignaria')!.get(dayOfSeason('2025-04-10', 2025))).toBeCloseTo(75, 9)
    expect(at('west') + at('middle')).toBeCloseTo(350, 9)
  })
})

it('refuses seasons that are not there or have errors, and says so', () => {
  const outcome = compareSeasons(orchard(), 2024, 2031)
  expect(outcome.ok).toBe(false)
  expect(outcome.problems.map(({ code }) => code)).toContain('no-season')
})

it('tells where it was counted in another way', () => {
  const plan = orchard()
  const records = (date: string, tubesOpened: number, year: number) => ({
    middle: { visits: [{ date, capped: 30 }], opening: { date: `${year}-10-10`, tubesOpened, cells: 100 } },
  })
  const seasons = [
    { ...plan.seasons[0]!, records: records('2024-05-10', 30, 2024) },
    { ...plan.seasons[1]!, records: records('2025-06-20', 10, 2025) },
  ]
  const outcome = compareSeasons({ ...plan, seasons }, 2024, 2025)
  const told = outcome.problems.filter(({ code }) => code === 'method-changed')
  expect(told).toHaveLength(1)
  expect(told[0]).toMatchObject({ at: 'middle', severity: 'note' })
  expect(told[0]!.values.what).toBe('the last count was 40 days later; some tubes were opened, not all')
  // The west was not there in 2025, the east not in 2024.
  expect(compared({ ...plan, seasons }).stations.stations.map(({ id }) => id)).toEqual(['middle'])
})
