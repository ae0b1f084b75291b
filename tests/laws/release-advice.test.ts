import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { dateOfDay, dayOfSeason } from '#geo/time/day'
import { acceptAdvice } from '#geo/timing/accept-advice'
import type { Advice } from '#geo/timing/advice'
import { releaseAdvice } from '#geo/timing/release-advice'
import { block, forage, marks, planOf, station } from '../support/orchard'

const seed = 20260320
const day = fc.integer({ min: 70, max: 150 })
const bloomFrom = (first: number) => ({
  first: dateOfDay(first, 2026),
  full: dateOfDay(first + 6, 2026),
  end: dateOfDay(first + 18, 2026),
})

/** Two crops and a hedge with days of their own, two stations with one to three batches each. */
const orchard = fc
  .record({
    apple: day,
    cherry: day,
    hedge: fc.integer({ min: 60, max: 140 }),
    dates: fc.array(fc.tuple(day, fc.integer({ min: 100, max: 900 })), { minLength: 2, maxLength: 4 }),
    at: fc.integer({ min: -120, max: 120 }),
  })
  .map(({ apple, cherry, hedge, dates, at }): Plan => {
    const releases = dates.map(([d, females]) => ({ date: dateOfDay(d, 2026), females, males: 2 * females }))
    return planOf({
      features: [
        block('apples', [10, -30, 50, 30]),
        block('cherries', [-90, -30, -40, 30], { crop: 'cherry-sweet' }),
        forage('hedge', [-20, 40, 20, 46], 200),
        station('a', 0, 0),
        station('b', at, 20),
        ...marks,
      ],
      stock: { a: releases.slice(1), b: releases.slice(0, 1) },
      bloom: { apple: bloomFrom(apple), 'cherry-sweet': bloomFrom(cherry), hedge: bloomFrom(hedge) },
    })
  })

function adviceOf(plan: Plan, batches: 1 | 2 | 3): Advice {
  const outcome = releaseAdvice(plan, 2026, { scope: 'orchard', batches })
  if (!outcome.ok) throw new Error('no advice')
  return outcome.value
}

function coverageOf(plan: Plan): number {
  const report = evaluate(plan, 2026)
  if (!report.ok) throw new Error('no report')
  return report.value.orchard.coverage!
}

describe('advice on release dates', () => {
  it('covers no less with more batches, and no less than the plan’s own dates where those wait for blossom', () => {
    let compared = 0
    fc.assert(
      fc.property(orchard, plan => {
        const advices = ([1, 2, 3] as const).map(batches => adviceOf(plan, batches))
        const ownDates = new Set(
          Object.values(plan.seasons[0]!.stations!).flatMap(use => use.releases!.map(({ date }) => date)),
        )
        expect(advices[0]!.own).toBe(coverageOf(plan))
        advices.forEach((advice, i) => {
          if (i > 0) expect(advice.coverage!).toBeGreaterThanOrEqual(advices[i - 1]!.coverage!)
          expect(advice.bees.every(({ batches }) => batches.length <= Math.max(i + 1, ownDates.size))).toBe(true)
          if (advice.isOwnUnfed || ownDates.size > i + 1) return
          compared += 1
          expect(advice.coverage!).toBeGreaterThanOrEqual(advice.own!)
        })
      }),
      { seed, numRuns: 25 },
    )
    expect(compared).toBeGreaterThan(5)
  })

  it('is the same each time it is asked, and comes true when it is taken', () => {
    fc.assert(
      fc.property(orchard, plan => {
        const advice = adviceOf(plan, 2)
        expect(adviceOf(plan, 2)).toEqual(advice)
        for (const { batches } of advice.stations)
          expect(batches.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
        // Whole cocoons move each of a station's batches by a cocoon at most, of some hundreds.
        expect(coverageOf(acceptAdvice(2026, advice).apply(plan))).toBeCloseTo(advice.coverage!, 2)
      }),
      { seed, numRuns: 12 },
    )
  })

  it('moves with the calendar: all blooms and dates a week later give dates a week later', () => {
    const later = (date: string) => dateOfDay(dayOfSeason(date, 2026) + 7, 2026)
    fc.assert(
      fc.property(orchard, plan => {
        const text = JSON.stringify(plan).replace(/2026-\d\d-\d\d/g, later)
        const [now, then] = [adviceOf(plan, 2), adviceOf(JSON.parse(text), 2)]
        expect(then.stations).toEqual(JSON.parse(JSON.stringify(now.stations).replace(/2026-\d\d-\d\d/g, later)))
      }),
      { seed, numRuns: 12 },
    )
  })
})
