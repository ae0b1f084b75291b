import { describe, expect, it } from 'vitest'
import { Coverage } from '#geo/coverage/coverage'
import { seededRandom } from '#geo/random'
import { differences, orchard, side, station } from './moves-orchard'

describe('stations that move, come and go', () => {
  it('leave, after 10,000 changes, every bit as a fresh start would set it', () => {
    const random = seededRandom(5201)
    const { field, groups, blooms } = orchard()
    const coverage = new Coverage(field, groups, blooms, 0.85)
    coverage.setStations(Array.from({ length: 8 }, () => station(random, blooms)))
    const fresh = new Coverage(field, groups, blooms, 0.85)
    for (let change = 1; change <= 10_000; change += 1) {
      const count = coverage.stations.length
      const index = Math.floor(random() * count)
      const kind = random()
      if (kind < 0.1 && count < 14) coverage.addStation(station(random, blooms), index)
      else if (kind < 0.2 && count > 3) coverage.removeStation(index)
      else coverage.moveStation(index, side * random(), side * random())
      // Totals are asked for now and then, so that stale and fresh tiles mix.
      if (change % 7 === 0) coverage.totalsOf(change % groups.length)
      if (change % 500 === 0) {
        fresh.setStations(coverage.stations)
        expect(differences(coverage, fresh)).toEqual({ points: 0, totals: true })
        for (let s = 0; s < coverage.stations.length; s += 1) {
          expect(coverage.pullOf(s)).toEqual(fresh.pullOf(s))
          groups.forEach((_, group) => {
            expect(coverage.decaysOf(s, group)).toBe(fresh.decaysOf(s, group))
          })
        }
      }
    }
    expect(coverage.supplied.some(service => service > 0)).toBe(true)
  })

  it('leave nothing behind once all are gone', () => {
    const random = seededRandom(5202)
    const { field, groups, blooms } = orchard()
    const coverage = new Coverage(field, groups, blooms, 0.85)
    coverage.setStations(Array.from({ length: 5 }, () => station(random, blooms)))
    for (let i = 0; i < 5; i += 1) coverage.removeStation(0)
    expect(coverage.supplied.every(service => service === 0)).toBe(true)
    expect(coverage.totals().every(({ reached, timingMatch }) => reached === 0 && timingMatch === null)).toBe(true)
  })

  it('keep two stations of one and the same input apart', () => {
    const random = seededRandom(5203)
    const { field, groups, blooms } = orchard()
    const input = { ...station(random, blooms), x: 60, y: 30, females: 50 }
    const coverage = new Coverage(field, groups, blooms, 0.85)
    coverage.setStations([input, input])
    coverage.removeStation(0)
    const alone = new Coverage(field, groups, blooms, 0.85)
    alone.setStations([input])
    expect(differences(coverage, alone)).toEqual({ points: 0, totals: true })
    expect(coverage.totalsOf(0).reached).toBeGreaterThan(0)
  })

  it('are refused where there is none', () => {
    const { field, groups, blooms } = orchard()
    const coverage = new Coverage(field, groups, blooms, 0.85)
    expect(() => coverage.moveStation(0, 1, 1)).toThrow(RangeError)
    expect(() => coverage.removeStation(-1)).toThrow(RangeError)
  })
})
