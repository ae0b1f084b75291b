import { describe, expect, it } from 'vitest'
import { Coverage } from '#geo/coverage/coverage'
import { serviceOfDay, workOfDay } from '#geo/coverage/day'
import { seededRandom } from '#geo/random'
import { endOf, valueOn } from '#geo/time/curve'
import { orchard, station } from './moves-orchard'

const { field, groups, blooms } = orchard()
const first = Math.min(...blooms.map(({ open }) => open.start))
const last = Math.max(...blooms.map(({ open }) => endOf(open)))

function covered(seed: number, stations: number): Coverage {
  const random = seededRandom(seed)
  const coverage = new Coverage(field, groups, blooms, 0.85)
  coverage.setStations(Array.from({ length: stations }, () => station(random, blooms)))
  return coverage
}

describe('service of a day', () => {
  it('adds up over all days to the service of the season, at every point', () => {
    const coverage = covered(6201, 7)
    const sums = new Float64Array(field.x.length)
    for (let day = first - 2; day <= last + 2; day += 1) {
      serviceOfDay(coverage, day).forEach((service, i) => {
        sums[i]! += service
      })
    }
    expect(Math.max(...coverage.supplied)).toBeGreaterThan(0.01)
    sums.forEach((sum, i) => {
      expect(Math.abs(sum - coverage.supplied[i]!)).toBeLessThan(1e-9 * Math.max(1, sum))
    })
  })

  it('is nothing where the blossom is closed, on forage, and before and after all bloom', () => {
    const coverage = covered(6202, 5)
    for (const day of [first - 1, last, (first + last) >> 1]) {
      const service = serviceOfDay(coverage, day)
      groups.forEach(({ bloom, isForage }, g) => {
        const isOpen = bloom !== null && !isForage && valueOn(blooms[bloom]!.open, day) > 0
        const own = service.subarray(field.groupStart[g]!, field.groupStart[g + 1]!)
        if (!isOpen) expect(own.every(each => each === 0)).toBe(true)
      })
    }
  })

  it('follows a station that is moved', () => {
    const coverage = covered(6203, 3)
    const day = 108
    const before = serviceOfDay(coverage, day)
    const { x, y } = coverage.stations[1]!
    // Into the middle of the first block.
    coverage.moveStation(1, 58, 33)
    expect(serviceOfDay(coverage, day)).not.toEqual(before)
    coverage.moveStation(1, x, y)
    expect(serviceOfDay(coverage, day)).toEqual(before)
  })
})

describe('work of a day', () => {
  it('is shared out by decay, blossom and openness; what is left goes to blossom nobody drew', () => {
    const coverage = covered(6204, 4)
    const day = (first + last) >> 1
    coverage.stations.forEach((input, index) => {
      const shares = workOfDay(coverage, index, day)!
      const pull = valueOn(coverage.pullOf(index), day)
      const sum = shares.reduce((total, share) => total + share, 0)
      expect(sum + input.background / pull).toBeCloseTo(1, 12)
      shares.forEach((share, g) => {
        const { bloom, blossom } = groups[g]!
        const drawn = bloom === null ? 0 : blossom * coverage.decaysOf(index, g) * valueOn(blooms[bloom]!.open, day)
        expect(share).toBeCloseTo(drawn / pull, 12)
      })
    })
  })

  it('agrees with the service: the same females, on the same plants', () => {
    const coverage = covered(6205, 1)
    const [input] = coverage.stations
    const day = (first + last) >> 1
    const shares = workOfDay(coverage, 0, day)!
    const service = serviceOfDay(coverage, day)
    groups.forEach(({ bloom, isForage }, g) => {
      if (bloom === null || isForage) return
      const own = service.subarray(field.groupStart[g]!, field.groupStart[g + 1]!).reduce((sum, each) => sum + each, 0)
      const females = input!.effectiveness * valueOn(input!.flight, day) * shares[g]!
      const expected = (females * valueOn(blooms[bloom]!.weight, day)) / (input!.best[bloom]!.overlap * 0.85)
      expect(own).toBeCloseTo(expected, 10)
    })
  })
})
