import { expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import { type Release, seasonOf } from '#geo/plan/plan'
import { acceptAdvice, splitReleases } from '#geo/timing/accept-advice'
import { frozen, smallPlan } from '../../support/builders'

const batches = [
  { date: '2026-04-01', share: 0.4 },
  { date: '2026-04-12', share: 0.6 },
]

it('splits females and males of each lot by share, and loses none', () => {
  const releases: Release[] = [
    { date: '2026-04-06', females: 61, males: 100, lot: 'own' },
    { date: '2026-04-20', females: 31, males: 53, lot: 'bought' },
  ]
  expect(splitReleases(releases, batches)).toEqual([
    { date: '2026-04-01', females: 24, males: 40, lot: 'own' },
    { date: '2026-04-01', females: 13, males: 21, lot: 'bought' },
    { date: '2026-04-12', females: 37, males: 60, lot: 'own' },
    { date: '2026-04-12', females: 18, males: 32, lot: 'bought' },
  ])
})

it('joins batches of one lot, and leaves males unsaid where they were', () => {
  const releases: Release[] = [
    { date: '2026-04-06', females: 6 },
    { date: '2026-04-16', females: 4 },
  ]
  expect(splitReleases(releases, batches)).toEqual([
    { date: '2026-04-01', females: 4 },
    { date: '2026-04-12', females: 6 },
  ])
})

it('keeps what it does not know of a lot, and makes no empty batch', () => {
  const strange = { date: '2026-04-06', females: 1, males: 0, lot: 'A', colour: 'blue' }
  expect(splitReleases([strange], batches)).toEqual([{ ...strange, date: '2026-04-12' }])
})

it('is one edit of the stations it names and no others', () => {
  const plan = frozen(smallPlan())
  const edit = acceptAdvice(2026, {
    stations: [
      { id: 'station-1', batches },
      { id: 'station-2', batches },
    ],
  })
  const after = edit.apply(plan)
  expect(seasonOf(after, 2026)!.stations!['station-1']!.releases).toEqual([
    { date: '2026-04-01', females: 24, males: 43 },
    { date: '2026-04-12', females: 36, males: 65 },
  ])
  expect(Object.keys(seasonOf(after, 2026)!.stations!)).toEqual(['station-1'])
  expect(seasonOf(after, 2025)).toBe(seasonOf(plan, 2025))
  expect(labelOf(edit, plan)).toBe('Accept advice on release dates')
})
