import { type Random, seededRandom } from '#geo/random'

/** One seed per use, so that a new test does not change the numbers of another. */
export const seeds = {
  allotmentTrees: 1901,
  allotmentBeds: 1902,
  geodesicLines: 2001,
  fieldPolygons: 2002,
} as const

export function randomFor(use: keyof typeof seeds): Random {
  return seededRandom(seeds[use])
}

/** A number from `low` up to `high`. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random()
}

/** The entries in another order (Fisher and Yates); the list itself stays as it is. */
export function shuffled<T>(entries: readonly T[], random: Random): T[] {
  const list = [...entries]
  for (let i = list.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1))
    const kept = list[i]!
    list[i] = list[j]!
    list[j] = kept
  }
  return list
}
