import fc from 'fast-check'
import { describe, it } from 'vitest'
import { shapleyValues } from '#geo/seasons/shapley'

const seed = 20261125
/** A game as the value of every set of players. */
const game = fc.integer({ min: 1, max: 6 }).chain(count =>
  fc.record({
    count: fc.constant(count),
    values: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2 ** count, maxLength: 2 ** count }),
  }),
)
/** Sums of a few thousand such numbers, each off by half a last digit. */
const tolerance = 1e-12

function orders(players: readonly number[]): number[][] {
  if (players.length === 0) return [[]]
  return players.flatMap(first => orders(players.filter(each => each !== first)).map(rest => [first, ...rest]))
}

/** By definition: every order of joining, one after another. */
function bruteForce(count: number, values: readonly number[]): number[] {
  const sums = Array<number>(count).fill(0)
  const all = orders([...Array(count).keys()])
  for (const order of all) {
    let there = 0
    for (const player of order) {
      sums[player]! += values[there | (1 << player)]! - values[there]!
      there |= 1 << player
    }
  }
  return sums.map(sum => sum / all.length)
}

const near = (found: readonly number[], expected: readonly number[]) =>
  found.every((value, i) => Math.abs(value - expected[i]!) < tolerance)

describe('Shapley values', () => {
  it('are the mean over all orders', () => {
    fc.assert(
      fc.property(game, ({ count, values }) =>
        near(
          shapleyValues(count, set => values[set]!),
          bruteForce(count, values),
        ),
      ),
      { seed, numRuns: 60 },
    )
  })

  it('add up to what all bring together', () => {
    fc.assert(
      fc.property(game, ({ count, values }) => {
        const sum = shapleyValues(count, set => values[set]!).reduce((total, part) => total + part, 0)
        return Math.abs(sum - (values.at(-1)! - values[0]!)) < tolerance
      }),
      { seed },
    )
  })

  it('are alike for players who bring the same, nothing for one who brings nothing', () => {
    const ofSizes = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(ofSizes, sizes => {
        // The third player changes nothing; the first two count by how many of them are there.
        const [a, b, nobody] = shapleyValues(3, set => sizes[(set & 1) + ((set >> 1) & 1)]!)
        return Math.abs(a! - b!) < tolerance && nobody === 0
      }),
      { seed },
    )
  })

  it('of two games at once are the sums of both', () => {
    fc.assert(
      fc.property(game, ({ count, values }) => {
        const other = (set: number) => Math.sin(set)
        const alone = shapleyValues(count, set => values[set]!)
        const beside = shapleyValues(count, other)
        const both = shapleyValues(count, set => values[set]! + other(set))
        return near(
          both,
          alone.map((value, i) => value + beside[i]!),
        )
      }),
      { seed },
    )
  })
})
