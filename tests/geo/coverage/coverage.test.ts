import { describe, expect, it } from 'vitest'
import { Coverage } from '#geo/coverage/coverage'
import { fieldOf } from '#geo/coverage/field'
import { decay, decayLength, kernelOf } from '#geo/coverage/kernel'
import { runsInDisc } from '#geo/coverage/runs'
import { sweepOf } from '#geo/coverage/simd-sweep'
import { PlainSweep } from '#geo/coverage/sweep'
import { seededRandom } from '#geo/random'
import { differences, orchard, station } from './moves-orchard'

const { field, groups, blooms } = orchard()

function covered(seed: number, stations: number): Coverage {
  const random = seededRandom(seed)
  const coverage = new Coverage(field, groups, blooms, 0.85)
  coverage.setStations(Array.from({ length: stations }, () => station(random, blooms)))
  return coverage
}

describe('coverage', () => {
  it('is what the model says, worked out point by point in the plainest way', () => {
    const coverage = covered(6101, 6)
    const supplied = new Float64Array(field.x.length)
    const distance = (i: number, s: number) =>
      Math.hypot(field.x[i]! - coverage.stations[s]!.x, field.y[i]! - coverage.stations[s]!.y)
    const groupAt = (i: number) => groups[field.groupStart.findIndex(start => start > i) - 1]!
    coverage.stations.forEach((input, s) => {
      const near = Array.from(supplied, (_, i) => decay(distance(i, s), input.kernel.alpha, input.kernel.range))
      const pull = (day: number) =>
        near.reduce((sum, k, i) => {
          const { bloom, blossom } = groupAt(i)
          const open = bloom === null ? null : blooms[bloom]!.open
          return open === null || k === 0 ? sum : sum + k * blossom * (open.values[day - open.start] ?? 0)
        }, input.background)
      const pulls = new Map<number, number>()
      const service = blooms.map(({ open, weight }, bloom) => {
        let sum = 0
        open.values.forEach((value, n) => {
          const day = open.start + n
          if (!pulls.has(day)) pulls.set(day, pull(day))
          const females = input.flight.values[day - input.flight.start] ?? 0
          sum += (females * value * weight.values[n]!) / (pulls.get(day)! * input.best[bloom]!.overlap * 0.85)
        })
        return input.effectiveness * sum
      })
      near.forEach((k, i) => {
        const { bloom, blossom, isForage } = groupAt(i)
        if (bloom !== null && !isForage) supplied[i]! += k * blossom * service[bloom]!
      })
    })
    supplied.forEach((expected, i) => {
      expect(Math.abs(coverage.supplied[i]! - expected)).toBeLessThan(1e-11)
    })
    coverage.totals().forEach((totals, group) => {
      const own = supplied.subarray(field.groupStart[group]!, field.groupStart[group + 1]!)
      const { wanted } = groups[group]!
      expect(totals.supplied).toBeCloseTo(
        own.reduce((sum, service) => sum + service, 0),
        8,
      )
      expect(totals.served).toBeCloseTo(
        own.reduce((sum, service) => sum + Math.min(wanted, service), 0),
        8,
      )
      expect(totals.wanted).toBeCloseTo(wanted * own.length, 10)
    })
  })

  it('ends at the range: a point on the edge is served, one beyond is not', () => {
    const row = fieldOf([Float64Array.of(0, 0, 96, 128, 96, 128.000001, 160, 0, 160.000001, 0)])
    const coverage = new Coverage(row, [groups[0]!], blooms, 0.85)
    const input = { ...station(seededRandom(6102), blooms, kernelOf(40, 160)), x: 0, y: 0, females: 20 }
    coverage.setStations([input])
    const served = [...row.order].map((point, i) => ({ point, isServed: coverage.supplied[i]! > 0 }))
    served.sort((a, b) => a.point - b.point)
    expect(served.map(({ isServed }) => isServed)).toEqual([true, true, false, true, false])
    expect(coverage.decaysOf(0, 0)).toBeCloseTo(1 + 2 * Math.exp(-4), 12)
  })

  it('comes out the same, bit for bit, however often it is worked out', () => {
    const coverage = covered(6103, 9)
    expect(differences(coverage, covered(6103, 9))).toEqual({ points: 0, totals: true })
    const before = coverage.supplied.slice()
    coverage.setStations(coverage.stations)
    expect(coverage.supplied).toEqual(before)
  })

  it('takes no more than 48 bytes a plant from 20,000 plants up', () => {
    const across = 200
    const points = Float64Array.from({ length: 2 * 20_000 }, (_, i) =>
      i % 2 === 0 ? 4 * ((i >> 1) % across) : 1.67 * Math.floor((i >> 1) / across),
    )
    const coverage = new Coverage(fieldOf([points]), [groups[0]!], blooms, 0.85)
    const random = seededRandom(6104)
    coverage.setStations(Array.from({ length: 100 }, () => station(random, blooms)))
    expect(coverage.bytes / 20_000).toBeLessThanOrEqual(48)
  })

  it('works without plantings and without blooms', () => {
    const empty = new Coverage(fieldOf([]), [], [], 0.85)
    empty.setStations([station(seededRandom(6105), [])])
    expect(empty.totals()).toEqual([])
    expect(empty.pullOf(0).values).toHaveLength(0)
  })
})

describe('the loops in vectors and in plain JavaScript', () => {
  const plain = new PlainSweep(field)
  const vectors = sweepOf(field)
  const random = seededRandom(6106)

  /** Goes once round all loops from a random place; how many runs. */
  function around(sweep: PlainSweep, place: { x: number; y: number }, kernel = kernelOf(decayLength(67), 160)): number {
    let runs = 0
    groups.forEach((_, group) => {
      runs = runsInDisc(field, group, { ...place, radius: kernel.range }, runs, sweep.runs, sweep.isStale)
    })
    sweep.measure(runs, place, kernel)
    return runs
  }

  it('are two different things here', () => {
    expect(vectors.constructor).not.toBe(PlainSweep)
  })

  it('give the same bits', () => {
    for (let turn = 0; turn < 200; turn += 1) {
      const place = { x: 460 * random() - 20, y: 460 * random() - 20 }
      const [a, b] = [around(plain, place), around(vectors, place)]
      expect(b).toBe(a)
      expect(vectors.figures.subarray(0, b)).toEqual(plain.figures.subarray(0, a))
      const factors = Float64Array.from({ length: a }, () => random() - 0.5)
      for (const sweep of [plain, vectors]) {
        sweep.figures.set(factors)
        sweep.add(a, 1.5 * 2 ** 12)
        groups.forEach(({ wanted }, group) => {
          sweep.sumTiles(field.groupTile[group]!, field.groupTile[group + 1]!, wanted)
        })
      }
      expect(vectors.supplied).toEqual(plain.supplied)
      expect(vectors.tileTotals).toEqual(plain.tileTotals)
      expect(vectors.isStale).toEqual(plain.isStale)
    }
    expect(vectors.supplied.filter(service => service !== 0).length).toBeGreaterThan(field.x.length / 2)
  })

  it('keep to 1e-12 of exp with the edge counted in, for near and far reaching kernels in turn', () => {
    // The last one's table is longer than the program's memory for it.
    const kernels = [kernelOf(18, 90), kernelOf(40, 160), kernelOf(12, 450)]
    expect(kernels[2]!.table.length).toBeGreaterThan(2 ** 13)
    for (let turn = 0; turn < 60; turn += 1) {
      const kernel = kernels[turn % 3]!
      const place = { x: field.x[turn]! + 0.1, y: 420 * random() }
      for (const sweep of [plain, vectors]) {
        const runs = around(sweep, place, kernel)
        sweep.supplied.fill(0)
        sweep.figures.fill(1, 0, runs)
        // Without rounding, what is supplied is the decay itself.
        sweep.add(runs, 0)
        sweep.supplied.forEach((found, i) => {
          const square = (field.x[i]! - place.x) ** 2 + (field.y[i]! - place.y) ** 2
          const expected = square <= kernel.range ** 2 ? Math.exp(-Math.sqrt(square) / kernel.alpha) : 0
          if (!(Math.abs(found - expected) <= 1e-12 * expected)) expect([i, found]).toEqual([i, expected])
        })
      }
    }
  })
})
