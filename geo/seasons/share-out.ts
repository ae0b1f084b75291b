/**
 * Divides `total` cocoons, or pennies, in proportion to measures: whole numbers that add up to it. What is left after
 * rounding down goes one by one to the largest remainders, among equal ones to the first in the list. Equal measures
 * share equally, and so do all where every measure is nothing.
 */
export function dividedFairly(total: number, measures: readonly number[]): number[] {
  if (!(Number.isInteger(total) && total >= 0)) throw new RangeError(`cannot divide ${total}`)
  const wrong = measures.find(measure => !(Number.isFinite(measure) && measure >= 0))
  if (wrong !== undefined) throw new RangeError(`no measure to divide by: ${wrong}`)
  const all = measures.reduce((sum, measure) => sum + measure, 0)
  const exact = measures.map(measure => (all > 0 ? (total * measure) / all : total / measures.length))
  // A remainder of a hair under 1 is a whole share that the division missed.
  const shares = exact.map(share => Math.floor(share + 1e-9))
  const left = total - shares.reduce((sum, share) => sum + share, 0)
  const byRemainder = [...shares.keys()].sort((a, b) => {
    const difference = exact[b]! - shares[b]! - (exact[a]! - shares[a]!)
    return Math.abs(difference) < 1e-9 ? a - b : difference
  })
  for (const index of byRemainder.slice(0, left)) shares[index]! += 1
  return shares
}
