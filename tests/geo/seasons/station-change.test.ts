import { describe, expect, it } from 'vitest'
import { compareSeasons } from '#geo/seasons/compare'
import { stationChanges } from '#geo/seasons/station-change'
import { scenarioPlan } from '../../support/scenario-reports'

function changesOf(name: string, a = 2024, b = 2025) {
  const plan = scenarioPlan(name)
  const outcome = compareSeasons(plan, a, b)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems))
  return { changes: stationChanges(plan, [a, b], outcome.value.stations), comparison: outcome.value }
}

describe('the allotment', () => {
  const { changes, comparison } = changesOf('allotment')

  it('tells of facing and mud, not of distance: the two stations that were mended come first, with what was seen there', () => {
    expect(comparison.orchard.reach.change).toBeCloseTo(0, 12)
    expect(changes.map(({ id }) => id)).toEqual(['a3', 'a4', 'a2', 'a1'])
    const [west, south] = changes
    // 6 and 21 capped of 30 and 23 females set out; 11 and 24 of 30 and 22.
    expect(west!.times).toBeCloseTo(21 / 23 / (6 / 30), 12)
    expect(south!.times).toBeCloseTo(24 / 22 / (11 / 30), 12)
    expect(west!.remarks[0].words).toEqual(['Faces west into the wind; to be turned in winter.'])
    expect(south!.remarks[0]).toMatchObject({ mudLooked: 6, mudDry: 2, words: ['Mud tray dry.'] })
    expect(south!.remarks[1]).toMatchObject({ mudLooked: 0, mudDry: 0, words: [] })
  })

  it('the other way round has the same order and the factors turned over', () => {
    const back = changesOf('allotment', 2025, 2024).changes
    expect(back.map(({ id }) => id)).toEqual(changes.map(({ id }) => id))
    for (const [i, { times }] of back.entries()) expect(times! * changes[i]!.times!).toBeCloseTo(1, 12)
  })
})

it('a station that was not counted in both years is left out', () => {
  expect(
    changesOf('farm')
      .changes.map(({ id }) => id)
      .toSorted(),
  ).toEqual(['c1', 'c2', 'c3', 'c4', 'c5', 'c6'])
})
