import { describe, expect, it } from 'vitest'
import { frostFlags, frostProblems } from '#geo/bloom/frost'
import type { WeatherDay } from '#geo/plan/plan'
import { problemText } from '#geo/problem'
import { evaluate } from '#geo/report/evaluate'
import { planOf, row } from '../../support/orchard'

const spring = { first: '2026-04-17', full: '2026-04-24', end: '2026-05-06' }
const nights = (...minima: readonly (readonly [string, number | null])[]): WeatherDay[] =>
  minima.map(([date, minimum]) => [date, minimum, 12, 0, 0])

function orchard(days: readonly WeatherDay[]) {
  const features = [
    row('a1', [0, 0], [20, 0]),
    row('a2', [0, 9], [20, 9]),
    row('p1', [0, 20], [20, 20], { crop: 'pear-european' }),
    row('q1', [0, 30], [20, 30], { crop: 'quince' }),
  ]
  const pear = { first: '2026-04-07', full: '2026-04-12', end: '2026-04-23' }
  const plan = planOf({ features, bloom: { apple: spring, 'pear-european': pear, quince: spring } })
  return { ...plan, seasons: plan.seasons.map(season => ({ ...season, weather: { days } })) }
}

describe('frost', () => {
  it('is flagged from the tenth that dies on, by the stage of the day', () => {
    const flags = frostFlags(
      orchard(nights(['2026-04-18', -2.2], ['2026-04-19', -2.1], ['2026-04-24', -3.9], ['2026-04-25', null])),
      2026,
    )
    expect(flags).toMatchObject([
      {
        date: '2026-04-18',
        crop: 'apple',
        plantings: ['a1', 'a2'],
        stage: 'first',
        tenth: -2.2,
        most: -3.9,
        isSevere: false,
      },
      { date: '2026-04-18', crop: 'pear-european', plantings: ['p1'], stage: 'full', tenth: -2.2, most: -4.4 },
      { date: '2026-04-24', crop: 'apple', stage: 'full', isSevere: true },
      { date: '2026-04-24', crop: 'pear-european', stage: 'after', isSevere: false },
    ])
    expect(flags[0]!.source).toBe('Longstroth')
  })

  it('spares buds that stand more, and says nothing before tight cluster, two weeks after bloom or of other crops', () => {
    const flags = frostFlags(
      orchard(nights(['2026-04-04', -9], ['2026-04-06', -2.7], ['2026-04-07', -2.8], ['2026-05-20', -5])),
      2026,
    )
    expect(flags.map(({ date, crop, stage }) => `${date} ${crop} ${stage}`)).toEqual([
      '2026-04-04 pear-european colour',
      '2026-04-07 apple cluster',
      '2026-04-07 pear-european first',
    ])
  })

  it('becomes one problem for plantings that bloom alike, of the worst night, and stands in the report', () => {
    const plan = orchard(nights(['2026-04-18', -2.3], ['2026-04-24', -5]))
    const problems = frostProblems(plan, 2026)
    expect(problems).toMatchObject([
      { code: 'frost', severity: 'warning', at: '', values: { nights: 2, date: '2026-04-24', minimum: -5 } },
      { code: 'frost', severity: 'warning', at: 'p1' },
    ])
    expect(problemText(problems[0]!)).toMatch(
      /Frost over Apple \(2 plantings\) in 2026: -5 °C on 2026-04-24, at the stage of full bloom, the worst of 2 nights.*more bees cannot make up/,
    )
    expect(evaluate(plan, 2026).problems.filter(({ code }) => code === 'frost')).toEqual(problems)
    expect(frostProblems(orchard([]), 2026)).toEqual([])
  })
})
