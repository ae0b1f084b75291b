import { describe, expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import {
  addSeason,
  removeSeason,
  setAppleFullBloom,
  setBloom,
  setObserved,
  setReleases,
  setStationSeason,
} from '#geo/plan/edits-seasons'
import { seasonOf } from '#geo/plan/plan'
import { appleBloom, frozen, smallPlan, smallSeason } from '../../support/builders'

const plan = frozen(smallPlan())
const early = { first: '2026-04-01', full: '2026-04-08', end: '2026-04-20' }

describe('bloom', () => {
  it('is set for a crop or for one thing, in one season only', () => {
    const after = setBloom(2026, 'row-1', early).apply(plan)
    expect(seasonOf(after, 2026)!.bloom!['row-1']).toEqual(early)
    expect(seasonOf(after, 2026)!.bloom!.apple).toEqual(appleBloom(2026))
    expect(seasonOf(after, 2025)).toBe(seasonOf(plan, 2025))
    expect(after.features).toBe(plan.features)
  })

  it('is named after the thing or the crop', () => {
    expect(labelOf(setBloom(2026, 'row-1', early), plan)).toBe('Change bloom of Row 1')
    expect(labelOf(setBloom(2026, 'apple', null), plan)).toBe('Clear bloom of apple')
  })

  it('goes with null, and the map with its last entry', () => {
    const after = setBloom(2025, 'apple', null).apply(plan)
    expect(seasonOf(after, 2025)).not.toHaveProperty('bloom')
    expect(setBloom(2025, 'pear', null).apply(plan)).toBe(plan)
  })

  it('brings a season into being where there was none, in order of years', () => {
    const after = setBloom(2024, 'apple', appleBloom(2024)).apply(plan)
    expect(after.seasons.map(({ year }) => year)).toEqual([2024, 2025, 2026])
    expect(after.seasons[0]).toEqual({ year: 2024, bloom: { apple: appleBloom(2024) } })
    expect(setBloom(2024, 'apple', null).apply(plan)).toBe(plan)
  })

  it('hangs on an apple date of the season, which goes with null', () => {
    const after = setAppleFullBloom(2026, '2025-04-21').apply(plan)
    expect(seasonOf(after, 2026)).toEqual({ ...seasonOf(plan, 2026), appleFullBloom: '2025-04-21' })
    expect(setAppleFullBloom(2026, null).apply(after)).toEqual(plan)
  })

  it('keeps members of a season that it does not know', () => {
    const strange = { ...smallSeason(2026), market: 'good' }
    const after = setBloom(2026, 'apple', early).apply({ ...plan, seasons: [strange] })
    expect(after.seasons[0]).toEqual({ ...strange, bloom: { apple: early } })
  })
})

describe('stages really seen', () => {
  const seen = (of: typeof plan) => seasonOf(of, 2026)!.bloom!.apple!.observed
  const mark = setObserved(2026, 'apple', 'full', true)

  it('are marked and unmarked one by one, in the order of the stages', () => {
    const both = setObserved(2026, 'apple', 'first', true).apply(mark.apply(plan))
    expect(seen(both)).toEqual(['first', 'full'])
    expect(seen(setObserved(2026, 'apple', 'first', false).apply(both))).toEqual(['full'])
    expect(setObserved(2026, 'apple', 'full', false).apply(mark.apply(plan))).toEqual(plan)
    expect(mark.apply(both)).toBe(both)
    expect(labelOf(mark, plan)).toBe('Mark a bloom date of apple as seen')
  })

  it('keep what is no stage, and want a bloom', () => {
    const odd = setBloom(2026, 'apple', { ...early, observed: ['fullest'] }).apply(plan)
    expect(seen(mark.apply(odd))).toEqual(['full', 'fullest'])
    expect(() => setObserved(2026, 'quince', 'full', true).apply(plan)).toThrow(RangeError)
  })
})

describe('use of a station', () => {
  it('is a patch over what is there', () => {
    const after = setStationSeason(2026, 'station-1', { tubes: 80, bore: undefined }).apply(plan)
    const { bore: _, ...others } = seasonOf(plan, 2026)!.stations!['station-1']!
    expect(seasonOf(after, 2026)!.stations!['station-1']).toEqual({ ...others, tubes: 80 })
  })

  it('begins with an empty patch and ends with null', () => {
    const used = setStationSeason(2026, 'station-2', {}).apply(plan)
    expect(seasonOf(used, 2026)!.stations!['station-2']).toEqual({})
    const unused = setStationSeason(2026, 'station-2', null)
    expect(unused.apply(used).seasons).toEqual(plan.seasons)
    expect(labelOf(unused, used)).toBe('Take station out of use')
  })

  it('changes nothing where the values are there already', () => {
    expect(setStationSeason(2026, 'station-1', { tubes: 120 }).apply(plan)).toBe(plan)
  })

  it('takes batches of cocoons', () => {
    const releases = [{ date: '2026-04-10', females: 20 }]
    const edit = setReleases(2026, 'station-2', releases, 'gesture-3')
    expect(seasonOf(edit.apply(plan), 2026)!.stations!['station-2']).toEqual({ releases })
    expect(labelOf(edit, plan)).toBe('Change releases at station')
    expect(edit.key).toBe('gesture-3')
    const emptied = setReleases(2026, 'station-1', []).apply(plan)
    expect(seasonOf(emptied, 2026)!.stations!['station-1']).not.toHaveProperty('releases')
  })

  it('is found by its own name only', () => {
    const after = setStationSeason(2026, 'toString', { tubes: 4 }).apply(plan)
    expect(Object.keys(seasonOf(after, 2026)!.stations!)).toEqual(['station-1', 'toString'])
    expect(seasonOf(after, 2026)!.stations!.toString).toEqual({ tubes: 4 })
  })
})

describe('seasons', () => {
  it('are added in order and never twice', () => {
    expect(
      addSeason({ year: 2027 })
        .apply(plan)
        .seasons.map(({ year }) => year),
    ).toEqual([2025, 2026, 2027])
    expect(() => addSeason({ year: 2026 }).apply(plan)).toThrow(RangeError)
  })

  it('are removed', () => {
    expect(removeSeason(2025).apply(plan).seasons).toEqual([plan.seasons[1]])
    expect(removeSeason(1999).apply(plan)).toBe(plan)
  })
})
