import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan, WeatherDay } from '#geo/plan/plan'
import { evaluate } from '#geo/report/evaluate'
import { addDays, type IsoDate } from '#geo/time/day'
import { acceptAdvice } from '#geo/timing/accept-advice'
import type { Advice } from '#geo/timing/advice'
import { releaseAdvice } from '#geo/timing/release-advice'
import { block, forage, marks, planOf, station } from '../../support/orchard'

/** Few trees and a hedge that blooms all spring, so that the dates are free to follow the weather. */
const features = [
  block('early', [10, -10, 30, 10], { crop: 'plum-european' }),
  block('late', [-30, -10, -10, 10]),
  forage('hedge', [-5, 12, 5, 20], 300),
  station('north', 0, 0),
  ...marks,
]
const bloom = {
  'plum-european': { first: '2026-04-01', full: '2026-04-07', end: '2026-04-17' },
  apple: { first: '2026-04-27', full: '2026-05-04', end: '2026-05-15' },
  hedge: { first: '2026-03-01', full: '2026-04-15', end: '2026-06-20' },
}

function planned(own: readonly IsoDate[], weather: readonly WeatherDay[] = []): Plan {
  // Few enough that no tree has more than it wants: each day at work counts.
  const releases = own.map(date => ({ date, females: 40, males: 72 }))
  const plan = planOf({ features, stock: { north: releases }, bloom })
  return { ...plan, seasons: [{ ...plan.seasons[0]!, ...(weather.length > 0 && { weather: { days: weather } }) }] }
}

function advised(plan: Plan, batches: 1 | 2 | 3 = 1): Advice {
  const outcome = releaseAdvice(plan, 2026, { scope: 'orchard', batches })
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return outcome.value
}

/** Weather of spring, day by day from 1 March: cold is too cold to fly, fine is warm and dry. */
function spring(isFine: (day: number) => boolean): readonly WeatherDay[] {
  return Array.from({ length: 110 }, (_, i) => {
    const [low, high, rain] = isFine(i) ? [9, 21, 0] : [2, 7, 8]
    return [addDays('2026-03-01', i), low, high, rain, 1] as const
  })
}

const firstDate = ({ bees }: Advice) => bees[0]!.batches[0]!.date
/** Days from 1 March to the end of the plums, and to the first of the apples. */
const [plumsEnd, applesBegin] = [47, 57]

describe('advice with the season’s weather', () => {
  const typical = advised(planned(['2026-04-10']))

  it('goes to the crop in whose bloom bees can fly', () => {
    const lateOnly = advised(
      planned(
        ['2026-04-10'],
        spring(day => day > plumsEnd),
      ),
    )
    const earlyOnly = advised(
      planned(
        ['2026-04-10'],
        spring(day => day < applesBegin - 5),
      ),
    )
    expect(firstDate(lateOnly) > firstDate(earlyOnly)).toBe(true)
    expect(firstDate(lateOnly) >= '2026-04-10').toBe(true)
    expect(firstDate(earlyOnly) <= '2026-04-05').toBe(true)
  })

  it('keeps its dates where weather takes and gives nothing: no temperature is known', () => {
    const unknown = spring(() => true).map(([date]): WeatherDay => [date, null, null, 0, 1])
    const same = advised(planned(['2026-04-10'], unknown))
    expect(same.bees).toEqual(typical.bees)
    expect(same.coverage).toBe(typical.coverage)
  })

  it('tells the coverage that the report tells of these dates in this weather', () => {
    const plan = planned(
      ['2026-04-10', '2026-04-20'],
      spring(day => day % 3 > 0),
    )
    const advice = advised(plan)
    const report = evaluate(acceptAdvice(2026, advice).apply(plan), 2026)
    expect(report.ok && report.value.orchard.coverage).toBeCloseTo(advice.coverage!, 12)
  })

  it('is never worth less than the plan’s own dates that keep the same rules, nor before blossom', () => {
    const dates = fc.array(fc.integer({ min: 10, max: 85 }), { minLength: 1, maxLength: 2 })
    fc.assert(
      fc.property(dates, fc.array(fc.boolean(), { minLength: 110, maxLength: 110 }), (days, fine) => {
        const own = days.map(day => addDays('2026-03-01', day))
        const weather = spring(day => fine[day]!)
        const advice = advised(planned(own, weather), 2)
        if (!advice.isOwnUnfed) expect(advice.coverage!).toBeGreaterThanOrEqual(advice.own! - 1e-12)
        // The hedge opens on 1 March; the first females nest five days after they are set out.
        for (const { date } of advice.bees[0]!.batches) expect(date >= '2026-02-24').toBe(true)
      }),
      { seed: 20261125, numRuns: 12 },
    )
  })
})
