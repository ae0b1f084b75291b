/** A batch as the search sees it: index of its release day, and its share of the bees. */
export type Batch = { readonly day: number; readonly share: number }

/**
 * What cells want and get: `base` by all others, `byDay[d]` if all the bees asked about were set out on day d. Service
 * is linear in every batch, so a schedule gives the weighed sum; females, blue orchard bee's worth.
 */
export type DayProblem = {
  readonly wanted: Float64Array
  readonly base: Float64Array
  readonly byDay: readonly Float64Array[]
}

/** Shares of batches are whole twentieths: finer than anybody counts cocoons out. */
export const shareSteps = 20
/** Up to so many days, every pair of days is tried; with more, a coarser grid first and then its neighbourhood. */
const mostDays = 100

/** Sum over cells of what is served, at most what is wanted. */
export function servedBy({ wanted, base, byDay }: DayProblem, batches: readonly Batch[]): number {
  let sum = 0
  const [a, b, c] = batches
  if (a === undefined) {
    for (let i = 0; i < wanted.length; i += 1) sum += Math.min(wanted[i]!, base[i]!)
    return sum
  }
  const ofA = byDay[a.day]!
  if (b === undefined) {
    for (let i = 0; i < wanted.length; i += 1) sum += Math.min(wanted[i]!, base[i]! + a.share * ofA[i]!)
    return sum
  }
  const ofB = byDay[b.day]!
  if (c === undefined) {
    for (let i = 0; i < wanted.length; i += 1) {
      sum += Math.min(wanted[i]!, base[i]! + a.share * ofA[i]! + b.share * ofB[i]!)
    }
    return sum
  }
  const ofC = byDay[c.day]!
  for (let i = 0; i < wanted.length; i += 1) {
    sum += Math.min(wanted[i]!, base[i]! + a.share * ofA[i]! + b.share * ofB[i]! + c.share * ofC[i]!)
  }
  return sum
}

export type Found = { readonly batches: readonly Batch[]; readonly served: number }

/** The best single day, by trying them all; the earliest on a tie. */
export function bestOne(problem: DayProblem): Found {
  let best: Found = { batches: [], served: Number.NEGATIVE_INFINITY }
  problem.byDay.forEach((_, day) => {
    const batches = [{ day, share: 1 }]
    const served = servedBy(problem, batches)
    if (served > best.served) best = { batches, served }
  })
  return best
}

/** The best two days and shares: every pair, and of its shares, in which the sum is concave, the highest point. */
export function bestTwo(problem: DayProblem): Found {
  const { byDay } = problem
  let best = bestOne(problem)
  const stride = Math.ceil(byDay.length / mostDays)
  const tried = (a: number, b: number): void => {
    if (a >= b || a < 0 || b >= byDay.length || pairCeiling(problem, a, b) <= best.served) return
    const found = bestShare(problem, a, b)
    if (found.served > best.served) best = found
  }
  for (let a = 0; a < byDay.length; a += stride) {
    for (let b = a + stride; b < byDay.length; b += stride) tried(a, b)
  }
  if (stride > 1) {
    const [first, second] = best.batches
    for (let i = -stride; i <= stride; i += 1) {
      for (let j = -stride; j <= stride; j += 1) {
        if (first && second) tried(first.day + i, second.day + j)
      }
    }
  }
  return best
}

/** No division of the bees between two days serves more than if each cell got the better of the two. */
function pairCeiling({ wanted, base, byDay }: DayProblem, a: number, b: number): number {
  const ofA = byDay[a]!
  const ofB = byDay[b]!
  let sum = 0
  for (let i = 0; i < wanted.length; i += 1) sum += Math.min(wanted[i]!, base[i]! + Math.max(ofA[i]!, ofB[i]!))
  return sum
}

function bestShare(problem: DayProblem, a: number, b: number): Found {
  const at = (steps: number): Found => {
    const batches = [
      { day: a, share: steps / shareSteps },
      { day: b, share: (shareSteps - steps) / shareSteps },
    ]
    return { batches, served: servedBy(problem, batches) }
  }
  let low = 1
  let high = shareSteps - 1
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    // On a slope of a concave curve the higher side holds the peak.
    if (at(middle).served < at(middle + 1).served) low = middle + 1
    else high = middle
  }
  return at(low)
}

/** Pairs from which the search for three sets out: the best, and those of the best at each first day. */
const starts = 8

/**
 * Three days and shares, by exchange: from good pairs a third batch is put in, then days and shares are moved one at a
 * time as long as that helps. Never below the best two.
 */
export function bestThree(problem: DayProblem): Found {
  const two = bestTwo(problem)
  let best = two
  for (const start of startingPairs(problem, two)) {
    const found = improved(problem, withThird(problem, start))
    if (found.served > best.served) best = found
  }
  return best
}

function startingPairs(problem: DayProblem, best: Found): readonly Found[] {
  const { byDay } = problem
  const step = Math.max(1, Math.floor(byDay.length / (starts + 1)))
  const pairs: Found[] = [best]
  for (let gap = step; gap < byDay.length; gap += step) {
    const middle = Math.floor((byDay.length - gap) / 2)
    pairs.push(bestShare(problem, middle, Math.min(byDay.length - 1, middle + gap)))
  }
  return pairs
}

/** A third batch on the day that helps most, its bees taken from both others alike. */
function withThird(problem: DayProblem, { batches, served }: Found): Found {
  let best: Found = { batches, served }
  for (let day = 0; day < problem.byDay.length; day += 1) {
    for (const share of [0.2, 0.35, 0.5]) {
      const steps = rounded([...batches.map(each => each.share * (1 - share)), share])
      const three = [...batches.map((each, i) => ({ day: each.day, share: steps[i]! })), { day, share: steps.at(-1)! }]
      const value = servedBy(problem, three)
      if (best.batches.length < 3 || value > best.served) best = { batches: three, served: value }
    }
  }
  return best
}

/** Shares to whole steps that add up to 1. */
function rounded(shares: readonly number[]): number[] {
  const steps = shares.map(share => Math.max(1, Math.round(share * shareSteps)))
  steps[0]! += shareSteps - steps.reduce((sum, each) => sum + each, 0)
  return steps.map(each => each / shareSteps)
}

/** Days and shares moved one at a time as long as that helps. */
export function improved(problem: DayProblem, found: Found): Found {
  let best = found
  for (;;) {
    const before = best.served
    const tried = (batches: readonly Batch[]): void => {
      const served = servedBy(problem, batches)
      if (served > best.served) best = { batches, served }
    }
    for (let k = 0; k < best.batches.length; k += 1) {
      for (let day = 0; day < problem.byDay.length; day += 1) {
        tried(best.batches.map((each, i) => (i === k ? { ...each, day } : each)))
      }
    }
    for (let from = 0; from < best.batches.length; from += 1) {
      for (let to = 0; to < best.batches.length; to += 1) {
        for (const steps of [1, 2, 4]) {
          if (from !== to) tried(moved(best.batches, from, to, steps))
        }
      }
    }
    if (!(best.served > before)) return best
  }
}

function moved(batches: readonly Batch[], from: number, to: number, steps: number): readonly Batch[] {
  const whole = batches.map(({ share }) => Math.round(share * shareSteps))
  const taken = Math.min(steps, whole[from]!)
  whole[from]! -= taken
  whole[to]! += taken
  return batches.map(({ day }, i) => ({ day, share: whole[i]! / shareSteps }))
}

/** In order of their days, those of one day as one, none without bees. */
export function tidied(batches: readonly Batch[]): readonly Batch[] {
  const byDay = new Map<number, number>()
  for (const { day, share } of batches) byDay.set(day, (byDay.get(day) ?? 0) + share)
  return [...byDay]
    .filter(([, share]) => share > 0)
    .sort(([a], [b]) => a - b)
    .map(([day, share]) => ({ day, share }))
}
