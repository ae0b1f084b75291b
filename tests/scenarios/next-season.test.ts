import { expect, test } from 'vitest'
import type { Plan, Season } from '#geo/plan/plan'
import { defaultForCrop } from '../../src/panels/bloom/bloom-defaults'
import { nextSeasonEdit, ownStock } from '../../src/panels/years/next-season'
import { scenarioPlan } from '../support/scenario-reports'

const allotment = scenarioPlan('allotment')
const before = allotment.seasons.find(({ year }) => year === 2025)!

function withGiven(cocoons: number): Plan {
  const season: Season = { ...before, shareOut: { rule: 'equal', shares: [{ to: 'plots', cocoons }] } }
  return { ...allotment, seasons: allotment.seasons.map(each => (each === before ? season : each)) }
}

function releasesOf(plan: Plan, year: number) {
  const season = plan.seasons.find(each => each.year === year)
  return Object.values(season?.stations ?? {}).flatMap(({ releases }) => releases ?? [])
}
const total = (plan: Plan, of: 'females' | 'males') =>
  releasesOf(plan, 2026).reduce((sum, each) => sum + (each[of] ?? 0), 0)

test('what a season left goes out in its batches, to the last cocoon, as a lot', () => {
  expect(ownStock(allotment, 2025)).toEqual({ found: 652, left: 652 })
  const plan = nextSeasonEdit(allotment, before, 2026, { stock: 'own', bloom: 'same' }).apply(allotment)
  expect([total(plan, 'females'), total(plan, 'males')]).toEqual([261, 391])
  expect(plan.lots).toEqual([{ id: 'own 2025', origin: 'own nests', count: 652, season: 2025 }])
  const releases = releasesOf(plan, 2026)
  expect(releases.map(({ date }) => date.slice(5))).toEqual(
    releasesOf(allotment, 2025).map(({ date }) => date.slice(5)),
  )
  expect(releases.every(({ lot }) => lot === 'own 2025')).toBe(true)
})

test('what was given away stays away, of both sexes alike', () => {
  const plan = withGiven(326)
  expect(ownStock(plan, 2025)?.left).toBe(326)
  const season = plan.seasons.find(({ year }) => year === 2025)!
  const next = nextSeasonEdit(plan, season, 2026, { stock: 'own', bloom: 'same' }).apply(plan)
  expect([total(next, 'females'), total(next, 'males')]).toEqual([130, 195])
  expect(ownStock(withGiven(700), 2025)).toBeNull()
})

test('each bee keeps to its own stations', () => {
  const farm = scenarioPlan('farm')
  const season = farm.seasons.find(({ year }) => year === 2025)!
  const next = nextSeasonEdit(farm, season, 2026, { stock: 'own', bloom: 'same' }).apply(farm)
  const daughters = (bee: string, plan: Plan, year: number) =>
    Object.values(plan.seasons.find(each => each.year === year)!.stations!)
      .filter(use => use.bee === bee)
      .flatMap(({ releases }) => releases ?? [])
      .reduce((sum, { females }) => sum + females, 0)
  const found = (bee: string) =>
    Object.entries(season.records!)
      .filter(([id]) => season.stations![id]!.bee === bee)
      .reduce((sum, [, { opening }]) => sum + (opening?.females ?? 0), 0)
  for (const bee of ['osmia-cornuta', 'osmia-bicornis']) expect(daughters(bee, next, 2026)).toBe(found(bee))
})

test('bloom is taken from region and apple date where that is wished', () => {
  const plan = nextSeasonEdit(allotment, before, 2026, { stock: 'same', bloom: 'usual' }).apply(allotment)
  const bloom = plan.seasons.find(({ year }) => year === 2026)!.bloom!
  expect(bloom.apple).toEqual(defaultForCrop(allotment, 2026, 'apple')!.bloom)
  const own = Object.keys(before.bloom!).filter(key => allotment.features.some(({ id }) => id === key))
  for (const key of own) expect(bloom[key]?.full.slice(5)).toBe(before.bloom![key]!.full.slice(5))
  expect(plan.lots).toBeUndefined()
})
