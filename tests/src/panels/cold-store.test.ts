import { expect, test } from 'vitest'
import { coldDays } from '#geo/data/season-work'
import { setReleases } from '#geo/plan/edits-seasons'
import { setColdStore } from '#geo/plan/edits-timing'
import { addDays } from '#geo/time/day'
import { coldTexts } from '../../../src/panels/bloom/cold-store'
import { smallPlan } from '../../support/builders'

const release = '2026-04-06'
const plan = setReleases(2026, 'station-1', [{ date: release, females: 50 }]).apply(smallPlan())
const { low, high } = coldDays[plan.bee]
const coldFor = (days: number) => coldTexts(setColdStore(2026, { from: addDays(release, -days) }).apply(plan), 2026)

test('days in the cold are held against what the bee wants, both ends counted in', () => {
  for (const days of [low, high]) {
    expect(coldFor(days)).toMatchObject([{ bee: plan.bee, isFine: true }])
    expect(coldFor(days)[0]!.text).toContain(`${days} days cold by the first batch on 6 April 2026`)
  }
})

test('too short and too long are told apart', () => {
  expect(coldFor(low - 1)[0]!.text).toContain('too short')
  expect(coldFor(high + 1)[0]!.text).toContain('too long')
  expect(coldFor(low - 1)[0]!.isFine).toBe(false)
})

test('nothing is said where no day is known or nothing is set out', () => {
  expect(coldTexts(plan, 2026)).toEqual([])
  const empty = setReleases(2026, 'station-1', []).apply(plan)
  expect(coldTexts(setColdStore(2026, { from: '2025-11-01' }).apply(empty), 2026)).toEqual([])
})
