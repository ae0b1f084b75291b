import { describe, expect, it } from 'vitest'
import type { Plan, StationRecord } from '#geo/plan/plan'
import { stationYears } from '#geo/seasons/record'
import { yearRecord } from '#geo/seasons/year'
import { smallPlan } from '../../support/builders'

/** The small plan with a record at station-1 in 2026: 60 females of the blue orchard bee, 120 tubes. */
function recorded(record: StationRecord, patch: Partial<Plan['seasons'][number]> = {}): Plan {
  const plan = smallPlan()
  const seasons = plan.seasons.map(season =>
    season.year === 2026 ? { ...season, records: { 'station-1': record }, ...patch } : season,
  )
  return { ...plan, seasons }
}
const first = (record: StationRecord) => stationYears(recorded(record), 2026)[0]!
const visits = [{ date: '2026-05-20', capped: 36 }]

describe('females that nested', () => {
  it('are capped tubes over the tubes a female fills: a range', () => {
    const { nested, establishment, capped } = first({ visits })
    expect(capped).toBe(36)
    // Blue orchard bee: 1.8 tubes, from 1 to 3.5.
    expect(nested).toEqual({ low: 36 / 3.5, mid: 20, high: 36 })
    expect(establishment).toEqual({ low: 36 / 3.5 / 60, mid: 20 / 60, high: 36 / 60 })
  })

  it('have no range where the grower has a value of their own', () => {
    const plan = { ...recorded({ visits }), parameters: { 'osmia-lignaria': { tubesUsedPerFemale: 2 } } }
    expect(stationYears(plan, 2026)[0]!.nested).toEqual({ low: 18, mid: 18, high: 18 })
  })

  it('are not known where nothing was counted, and none where nothing was capped', () => {
    expect(first({})).toMatchObject({ capped: null, nested: null, establishment: null })
    expect(first({ visits: [{ date: '2026-05-20', capped: null }] })).toMatchObject({ capped: null, nested: null })
    expect(first({ visits: [{ date: '2026-05-20', capped: 0 }] })).toMatchObject({ capped: 0, nested: { mid: 0 } })
  })

  it('go by the most seen capped where damage took tubes', () => {
    const after = { date: '2026-05-27', capped: 30, damage: 'woodpecker' }
    expect(first({ visits: [after, ...visits] })).toMatchObject({ capped: 30, nested: { mid: 20 } })
  })

  it('are not worked out from counts that cannot be', () => {
    expect(first({ visits: [{ date: '2026-05-20', capped: 121 }] })).toMatchObject({ capped: null, nested: null })
    expect(first({ visits: [...visits, { date: '2026-05-27', capped: 20 }] })).toMatchObject({ capped: null })
    expect(first({ visits: [{ date: '2026-05-20', capped: -3 }] })).toMatchObject({ capped: null })
  })
})

const losses = { mite: 20, fly: 16 }
const opening = { date: '2026-10-20', tubesOpened: 36, cells: 216, females: 72, males: 108, losses }

describe('an opening', () => {
  it('of all tubes is what was found', () => {
    expect(first({ visits, opening })).toMatchObject({
      cellsPerTube: 6,
      femaleShare: 0.4,
      losses,
      lossShare: { share: 36 / 216, low: 36 / 216, high: 36 / 216 },
      daughters: { count: 72, low: 72, high: 72, from: 'all' },
      return: 1.2,
      tubesToOpen: 0,
    })
  })

  it('of some tubes is reckoned up, with what was counted at the low end and no high end', () => {
    const some = { ...opening, tubesOpened: 12 }
    expect(first({ visits, opening: some })).toMatchObject({
      daughters: { count: 216, low: 72, high: null, from: 'sum' },
      lossShare: { share: 36 / 216, low: null, high: null },
      tubesToOpen: null,
    })
  })

  it('tube by tube has an interval', () => {
    const tubes = [2, 3, 1, 2].map(females => ({ cells: 6, females, males: 2, losses: { mite: 4 - females } }))
    const found = first({ visits, opening: { date: '2026-10-20', tubes } })
    expect(found).toMatchObject({ tubesOpened: 4, cellsPerTube: 6, daughters: { count: 72, from: 'tubes' } })
    expect(found.daughters!.low).toBeGreaterThanOrEqual(8)
    expect(found.daughters!.high).toBeGreaterThan(72)
    expect(found.lossShare!.low).toBeLessThan(found.lossShare!.share)
    expect(found.losses).toEqual({ mite: 8 })
    expect(found.tubesToOpen).toBeTypeOf('number')
  })

  it('that contradicts itself is left out, and so is what was not counted', () => {
    expect(first({ visits, opening: { ...opening, cells: 215 } })).toMatchObject({
      daughters: null,
      losses: null,
      capped: 36,
    })
    const { females: _, ...without } = opening
    expect(first({ visits, opening: without })).toMatchObject({ daughters: null, return: null, femaleShare: null })
    const mite = { ...opening, losses: { mite: null, fly: 16 } }
    expect(first({ visits, opening: mite })).toMatchObject({ lossShare: null, losses: { fly: 16 } })
  })
})

describe('the orchard', () => {
  const yearOf = (plan: Plan, options = {}) => {
    const outcome = yearRecord(plan, 2026, options)
    if (!outcome.ok) throw new Error('no record')
    return outcome.value
  }

  it('adds up what was counted and gives away what is written down', () => {
    const shares = [
      { to: 'Plot 1', cocoons: 30 },
      { to: 'Plot 2', cocoons: 20 },
    ]
    const { orchard } = yearOf(recorded({ visits, opening }, { shareOut: { rule: 'equal', shares } }))
    expect(orchard).toMatchObject({ counted: 1, opened: 1, daughters: 72, return: 1.2, givenAway: 50, stockLeft: 130 })
    const over = recorded({ visits, opening }, { shareOut: { rule: 'other', shares: [{ to: 'All', cocoons: 181 }] } })
    expect(yearOf(over).orchard.stockLeft).toBeNull()
    expect(yearRecord(over, 2026).problems).toContainEqual({
      code: 'share-out-over',
      severity: 'warning',
      at: '',
      values: { year: 2026, given: 181, found: 180 },
    })
    const unsure = [...shares, { to: 'Plot 3', cocoons: null }]
    const { orchard: unknown } = yearOf(recorded({ visits, opening }, { shareOut: { rule: 'equal', shares: unsure } }))
    expect(unknown).toMatchObject({ givenAway: null, stockLeft: null })
  })

  it('covers as found by those that nested: as planned where as many nested as planned', () => {
    // 60 x 0.9 x 0.5 = 27 nesting, which fill 48.6 tubes: with 2 tubes each just 54.
    const plan = recorded({ visits: [{ date: '2026-05-20', capped: 54 }] })
    const own = { ...plan, parameters: { 'osmia-lignaria': { tubesUsedPerFemale: 2 } } }
    const { coverage } = yearOf(own)
    expect(coverage.found!.mid).toBeCloseTo(coverage.planned!, 12)
    const { coverage: ranged } = yearOf(plan)
    expect(ranged.found!.low).toBeLessThan(ranged.found!.mid)
    expect(ranged.found!.mid).toBeLessThan(ranged.found!.high)
    expect(yearOf(recorded({})).coverage.found).toBeNull()
  })

  it('costs what was typed, by the hectare covered; nothing is assumed', () => {
    const plan = recorded({ visits })
    expect(yearOf(plan).costPerCoveredHectare).toBeNull()
    const prices = { station: 25, femaleCocoon: 0.5, maleCocoon: 0.25, tube: 0.3 }
    const once = yearOf(plan, { prices }).costPerCoveredHectare!
    expect(once).toBeGreaterThan(0)
    const twice = { station: 50, femaleCocoon: 1, maleCocoon: 0.5, tube: 0.6 }
    expect(yearOf(plan, { prices: twice }).costPerCoveredHectare).toBeCloseTo(2 * once, 9)
  })
})
