import { describe, expect, it } from 'vitest'
import { labelOf } from '#geo/plan/edits'
import { addVisit, setFruitSet, setLot, setOpening, setShareOut, setTakenIn, setVisit } from '#geo/plan/edits-records'
import { seasonOf } from '#geo/plan/plan'
import { frozen, smallPlan } from '../../support/builders'

const plan = frozen(smallPlan())
const visit = { date: '2026-05-20', capped: 41 }
const recordOf = (after: typeof plan) => seasonOf(after, 2026)!.records?.['station-1']

describe('visits', () => {
  it('stand in the order of their dates, and share all else', () => {
    const after = addVisit(2026, 'station-1', { date: '2026-05-13', capped: null }).apply(
      addVisit(2026, 'station-1', visit).apply(plan),
    )
    expect(recordOf(after)).toEqual({ visits: [{ date: '2026-05-13', capped: null }, visit] })
    expect(seasonOf(after, 2025)).toBe(seasonOf(plan, 2025))
    expect(labelOf(addVisit(2026, 'station-1', visit), plan)).toBe('Note visit to station North gate')
  })

  it('are changed and taken away one by one; an empty record goes too', () => {
    const noted = frozen(addVisit(2026, 'station-1', visit).apply(plan))
    const changed = setVisit(2026, 'station-1', 0, { capped: null, damage: 'roof off' }).apply(noted)
    expect(recordOf(changed)).toEqual({ visits: [{ date: '2026-05-20', capped: null, damage: 'roof off' }] })
    expect(setVisit(2026, 'station-1', 0, { capped: 41 }).apply(noted)).toBe(noted)
    expect(setVisit(2026, 'station-1', 0, null).apply(noted)).toEqual(plan)
    expect(() => setVisit(2026, 'station-1', 1, null).apply(noted)).toThrow(RangeError)
  })
})

describe('the rest of a record', () => {
  it('opening and taking in come, change and go', () => {
    const opened = frozen(setOpening(2026, 'station-1', { date: '2026-10-20', cells: 118, females: null }).apply(plan))
    expect(recordOf(opened)).toEqual({ opening: { date: '2026-10-20', cells: 118, females: null } })
    const both = setTakenIn(2026, 'station-1', '2026-06-20').apply(opened)
    expect(recordOf(setOpening(2026, 'station-1', null).apply(both))).toEqual({ takenIn: '2026-06-20' })
    expect(setTakenIn(2026, 'station-1', null).apply(both)).toEqual(opened)
    expect(setTakenIn(2026, 'station-1', null).apply(opened)).toBe(opened)
    expect(labelOf(setOpening(2026, 'station-1', null), plan)).toBe('Clear opening of station North gate')
  })

  it('share-out and fruit counts come and go', () => {
    const shareOut = { rule: 'equal', shares: [{ to: 'Plot 1', cocoons: 9 }] } as const
    const shared = setShareOut(2026, shareOut).apply(plan)
    expect(seasonOf(shared, 2026)!.shareOut).toBe(shareOut)
    expect(setShareOut(2026, null).apply(shared)).toEqual(plan)
    const counted = setFruitSet(2026, 'row-1', { flowers: 200, fruit: 31 }).apply(plan)
    expect(seasonOf(counted, 2026)!.fruitSet).toEqual({ 'row-1': { flowers: 200, fruit: 31 } })
    expect(setFruitSet(2026, 'row-1', null).apply(counted)).toEqual(plan)
    expect(labelOf(setFruitSet(2026, 'row-1', null), plan)).toBe('Clear fruit count of Row 1')
  })
})

describe('lots', () => {
  it('come with their first figures, are changed by name, and go with the last', () => {
    const added = frozen(setLot('A-25', { count: 180, origin: 'own' }).apply(plan))
    expect(added.lots).toEqual([{ id: 'A-25', count: 180, origin: 'own' }])
    const changed = setLot('A-25', { count: null, origin: undefined }).apply(added)
    expect(changed.lots).toEqual([{ id: 'A-25', count: null }])
    expect(setLot('A-25', { count: 180 }).apply(added)).toBe(added)
    expect(setLot('A-25', null).apply(added)).toEqual(plan)
    expect(setLot('B-25', null).apply(added)).toBe(added)
    expect([labelOf(setLot('A-25', {}), plan), labelOf(setLot('A-25', {}), added)]).toEqual([
      'Add lot A-25',
      'Change lot A-25',
    ])
  })
})
