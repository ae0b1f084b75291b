/**
 * Standard normal distribution function, absolute error below 1e-15.
 * Source: Marsaglia 2004, Evaluating the Normal Distribution, Journal of Statistical Software 11(4): the Taylor
 * series about 0, whose terms all have one sign. Beyond 8 the tail is under 1e-15.
 */
export function normalBelow(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('no normal distribution of NaN')
  if (x < -8) return 0
  if (x > 8) return 1
  let sum = x
  let term = x
  for (let i = 3; ; i += 2) {
    term *= (x * x) / i
    const next = sum + term
    if (next === sum) break
    sum = next
  }
  return 0.5 + sum * Math.exp(-0.5 * x * x - 0.9189385332046727)
}
