import { describe, expect, it } from 'vitest'
import type { Plan, Season } from '#geo/plan/plan'
import { adviceText, stationStories } from '#geo/seasons/station-story'
import { marks, planOf, station } from '../../support/orchard'
import { scenarioPlan } from '../../support/scenario-reports'

type Count = { capped?: number; lost?: number }

/** Stations a, b and c with 100 females each and 100 cells opened; what is not given was not counted. */
function orchard(years: Readonly<Record<number, Readonly<Record<string, Count>>>>): Plan {
  const plan = planOf({ features: [...marks, station('a', 0, 0), station('b', 20, 0), station('c', 40, 0)] })
  const seasons = Object.entries(years).map(([year, counts]): Season => {
    const releases = [{ date: `${year}-04-10`, females: 100 }]
    const records = Object.entries(counts).map(([id, { capped, lost }]) => [
      id,
      {
        ...(capped !== undefined && { visits: [{ date: `${year}-05-20`, capped }] }),
        ...(lost !== undefined && { opening: { date: `${year}-10-10`, cells: 100, losses: { mite: lost } } }),
      },
    ])
    const use = { tubes: 500, releases }
    return { year: Number(year), stations: { a: use, b: use, c: use }, records: Object.fromEntries(records) }
  })
  return { ...plan, seasons }
}

const adviceOf = (plan: Plan, until?: number) =>
  Object.fromEntries(stationStories(plan, until).map(({ id, advice }) => [id, advice]))

describe('a station', () => {
  it('is moved where it filled under half of what the others did, twice running', () => {
    const poor = { a: { capped: 40 }, b: { capped: 150 }, c: { capped: 150 } }
    expect(adviceOf(orchard({ 2024: poor }))).toEqual({ a: 'keep', b: 'keep', c: 'keep' })
    const twice = orchard({ 2024: poor, 2025: poor })
    expect(adviceOf(twice)).toEqual({ a: 'move', b: 'keep', c: 'keep' })
    expect(adviceText(stationStories(twice)[0]!)).toMatch(/^move: for its bees 35% of the tubes .* 2024; .* 2025$/)
    expect(adviceOf(orchard({ 2024: poor, 2025: { ...poor, a: { capped: 140 } } })).a).toBe('keep')
    expect(adviceOf(twice, 2024).a).toBe('keep')
  })

  it('is cleaned where it lost many cells, and rests where that rose', () => {
    const [few, many] = [{ lost: 12 }, { lost: 30 }]
    const plan = orchard({ 2024: { a: few, b: many, c: { lost: 1 } }, 2025: { a: many, b: many, c: few } })
    expect(adviceOf(plan)).toEqual({ a: 'rest', b: 'clean', c: 'keep' })
    expect(adviceText(stationStories(plan)[0]!)).toBe('rest: 30% of cells lost in 2025, over 25%; up from 12%')
  })

  it('that was not counted is neither praised nor blamed', () => {
    const [a, b] = stationStories(orchard({ 2024: { b: { capped: 20 } } }))
    expect(a).toMatchObject({ advice: null, evidence: [] })
    expect(adviceText(a!)).toBe('not counted')
    expect(b!.advice).toBe('keep')
  })
})

it('of the allotment has both its seasons, the new one its own', () => {
  const stories = stationStories(scenarioPlan('allotment'))
  expect(stories.map(({ years }) => years.map(({ year }) => year))).toEqual([...Array(4).fill([2024, 2025]), [2025]])
  expect(stationStories(scenarioPlan('allotment'), 2024).map(({ advice }) => advice)).toEqual(Array(4).fill('clean'))
  expect(new Set(stories.map(({ advice }) => advice))).toEqual(new Set(['keep']))
})
