import { describe, expect, it } from 'vitest'
import { bees } from '#geo/data/bees'
import type { Plan, Season } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { type Projection, type ProjectOptions, project } from '#geo/seasons/project'
import { block, marks, planOf, station } from '../../support/orchard'

const { emergence, establishment, tubesUsedPerFemale, cellsPerTube, femaleShare, keepingTakenIn, keepingOutside } =
  bees['osmia-lignaria'].parameters
/** Daughters per female cocoon set out, of middle figures, where tubes do not run out. */
const growth = emergence.value * establishment.value * tubesUsedPerFemale.value * cellsPerTube.value * femaleShare.value

function orchard(females: number, patch: Partial<Season> = {}): Plan {
  const plan = planOf({
    features: [...marks, block('b', [-40, -40, 40, 40]), station('s', 0, 0), station('t', 20, 0)],
    stock: { s: [{ date: '2026-04-08', females }], t: [{ date: '2026-04-12', females: females / 2 }] },
  })
  return { ...plan, seasons: [{ ...plan.seasons[0]!, ...patch }] }
}

function projected(plan: Plan, seasons = 5, options?: ProjectOptions): Projection {
  const outcome = project(plan, 2026, seasons, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

describe('the middle way', () => {
  it('multiplies what a season is the product of, season by season', () => {
    const { seasons, from } = projected(orchard(20), 2)
    expect(from).toBe(2026)
    expect(seasons.map(({ year }) => year)).toEqual([2027, 2028])
    const once = 30 * growth * keepingTakenIn.value
    const nesting = emergence.value * establishment.value
    expect(seasons[0]!.females.mid).toBeCloseTo(once * nesting, 9)
    expect(seasons[0]!.cocoons.mid).toBeCloseTo(once / femaleShare.value, 9)
    expect(seasons[0]!.tubes.mid).toBeCloseTo(once * nesting * tubesUsedPerFemale.value, 9)
    expect(seasons[1]!.females.mid).toBeCloseTo(once * growth * keepingTakenIn.value * nesting, 9)
  })

  it('fills no more tubes than there are, and says how many to add', () => {
    const plan = orchard(2000)
    const [season] = projected(plan, 1).seasons
    // The full house raises what its tubes hold; a third of that does not fill the other station's.
    const raised = 400 * cellsPerTube.value * keepingTakenIn.value * femaleShare.value
    const third = (raised * emergence.value * establishment.value * tubesUsedPerFemale.value) / 3
    expect(third).toBeLessThan(200)
    expect(season!.tubes.mid).toBeCloseTo(200 + third, 9)
    expect(season!.tubes.high).toBeLessThanOrEqual(400)
    expect(season!.cocoons.mid).toBeCloseTo(400 * cellsPerTube.value * keepingTakenIn.value, 9)
    const nesting = season!.females.mid
    // 3 tubes a female and a tenth to spare; two thirds of the bees go to the one station, as in the season before.
    expect(season!.tubesToAdd.map(({ id, tubes }) => [id, tubes])).toEqual([
      ['s', Math.ceil((nesting * 2 * 3 * 1.1) / 3 - 1e-9) - 200],
      ['t', Math.ceil((nesting * 3 * 1.1) / 3 - 1e-9) - 200],
    ])
    expect(projected(orchard(20), 1).seasons[0]!.tubesToAdd).toEqual([])
  })

  it('covers what the model says of these females in the same batches', () => {
    const own = { 'osmia-lignaria': { tubesUsedPerFemale: 2, cellsPerTube: 10, femaleShare: 0.5, keepingTakenIn: 1 } }
    // Ten daughters for each nesting female: the stock of 20 gives that of 20 x 0.45 x 10 = 90.
    const plan = { ...orchard(20), parameters: own }
    const grown = evaluate({ ...orchard(90), parameters: own }, 2026)
    if (!grown.ok) throw new Error('no report')
    expect(projected(plan, 1).seasons[0]!.coverage!.mid).toBeCloseTo(grown.value.orchard.coverage!, 12)
  })

  it('keeps less where nests stay outside, each station living on its own', () => {
    const [outside] = projected(orchard(20), 1, { care: 'outside' }).seasons
    const [takenIn] = projected(orchard(20), 1).seasons
    expect(outside!.females.mid / takenIn!.females.mid).toBeCloseTo(keepingOutside.value / keepingTakenIn.value, 9)
  })

  it('sets out what is kept; the rest is given away', () => {
    const all = projected(orchard(20), 1).seasons[0]!
    const half = projected(orchard(20), 1, { shareKept: 0.5 }).seasons[0]!
    expect(half.cocoons.mid).toBeCloseTo(all.cocoons.mid / 2, 9)
    const opening = { date: '2026-10-20', cells: 100, females: 30, males: 50 }
    const shareOut = { rule: 'equal', shares: [{ to: 'Plot 1', cocoons: 20 }] } as const
    expect(projected(orchard(20, { records: { s: { opening } }, shareOut }), 1).shareKept).toBeCloseTo(0.75, 12)
  })
})

describe('low and high', () => {
  it('enclose the middle and part from it, season by season', () => {
    for (const plan of [orchard(20), orchard(300)]) {
      let width = 0
      for (const { cocoons, females, tubes, coverage } of projected(plan, 6).seasons) {
        for (const { low, mid, high } of [cocoons, females, tubes, coverage!]) {
          expect(low).toBeLessThanOrEqual(mid)
          expect(mid).toBeLessThanOrEqual(high)
          expect(low).toBeGreaterThanOrEqual(0)
        }
        expect(coverage!.high).toBeLessThanOrEqual(1)
        expect(females.mid / females.low).toBeGreaterThan(width)
        width = females.mid / females.low
      }
    }
  })

  it('are the middle where the grower has a value of their own for each figure', () => {
    const names = { emergence, establishment, tubesUsedPerFemale, cellsPerTube, femaleShare, keepingTakenIn }
    const own = Object.fromEntries(Object.entries(names).map(([name, { value }]) => [name, value]))
    const plan = { ...orchard(20), parameters: { 'osmia-lignaria': own } }
    for (const { females, cocoons } of projected(plan).seasons) {
      expect(females.low).toBeCloseTo(females.high, 9)
      expect(cocoons.mid).toBeCloseTo(cocoons.high, 9)
    }
  })
})

describe("the grower's counts", () => {
  const width = ({ low, high }: { low: number; high: number }) => high / low
  const visits = [{ date: '2026-05-20', capped: 24 }]
  const opening = { date: '2026-10-20', tubesOpened: 24, cells: 140, females: 45, males: 70 }

  it('take the place of computed figures, and narrow the band at each step', () => {
    const both = (record: object) => ({ records: { s: record, t: record } })
    const nothing = projected(orchard(20), 1).seasons[0]!
    const capped = projected(orchard(20, both({ visits })), 1).seasons[0]!
    const opened = projected(orchard(20, both({ visits, opening })), 1).seasons[0]!
    expect(width(capped.cocoons)).toBeLessThan(width(nothing.cocoons))
    for (const cocoons of Object.values(opened.cocoons)) expect(cocoons).toBeCloseTo(230, 9)
    expect(width(opened.females)).toBeLessThan(width(capped.females))
    expect(opened.females.mid).toBeCloseTo(90 * emergence.value * establishment.value, 9)
    expect(capped.cocoons.mid).toBeCloseTo(48 * cellsPerTube.value * keepingTakenIn.value, 9)
  })

  it('of later seasons in the plan start the ways anew', () => {
    const plan = orchard(20)
    const stations = {
      s: { tubes: 200, releases: [{ date: '2027-04-09', females: 50 }] },
      t: { tubes: 200, releases: [{ date: '2027-04-09', females: 10 }] },
    }
    const bloom = { apple: { first: '2027-04-18', full: '2027-04-25', end: '2027-05-07' } }
    const counted = {
      visits: [{ date: '2027-05-20', capped: 60 }],
      opening: { ...opening, date: '2027-10-20', tubesOpened: 60 },
    }
    const later: Season = { year: 2027, bloom, stations, records: { s: counted, t: counted } }
    const [next, after] = projected({ ...plan, seasons: [...plan.seasons, later] }, 2).seasons
    expect(next).toMatchObject({ isCounted: true, tubes: { low: 120, mid: 120, high: 120 } })
    expect(after!.isCounted).toBe(false)
    for (const cocoons of Object.values(after!.cocoons)) expect(cocoons).toBeCloseTo(230, 9)
    // Merely planned, a season is computed.
    const { records: _, ...planned } = later
    expect(projected({ ...plan, seasons: [...plan.seasons, planned] }, 1).seasons[0]!.isCounted).toBe(false)
  })

  it('that cannot be are not used', () => {
    const impossible = { visits: [{ date: '2026-05-20', capped: 999 }] }
    expect(projected(orchard(20, { records: { s: impossible } }), 1)).toEqual(projected(orchard(20), 1))
  })
})

it('tells from when the stock carries the orchard, in the order of the ways', () => {
  const { carries, seasons, target } = projected(orchard(30), 10)
  expect(target).toBe(0.9)
  for (const end of ['low', 'mid', 'high'] as const) {
    const first = carries[end]
    for (const { year, coverage } of seasons)
      if (first !== null && year >= first) expect(coverage![end]).toBeGreaterThanOrEqual(0.9)
    const before = seasons.find(({ year }) => year === (first ?? 2037) - 1)
    if (before) expect(before.coverage![end]).toBeLessThan(0.9)
  }
  expect(carries.high).not.toBeNull()
  expect(projected(orchard(30), 3, { target: 0 }).carries).toEqual({ low: 2027, mid: 2027, high: 2027 })
})

it('has no answer where the season has none, and no more than ten seasons', () => {
  expect(project(orchard(20), 2031, 3).ok).toBe(false)
  expect(() => project(orchard(20), 2026, 11)).toThrow(RangeError)
  expect(() => project(orchard(20), 2026, 0)).toThrow(RangeError)
})
