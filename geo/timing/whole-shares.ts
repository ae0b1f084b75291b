/**
 * Whole things shared out in proportion to `shares`, which add up to 1: the largest remainders get what is left over,
 * the first on a tie. `given` is what each has got of earlier lots and should have of all together, so that rounding
 * does not pile up on one side.
 */
export function wholeShares(total: number, shares: readonly number[], given?: Given): number[] {
  const exact = shares.map((share, i) => total * share + (given ? given.due[i]! - given.got[i]! : 0))
  const whole = exact.map(value => Math.max(0, Math.floor(value + 1e-9)))
  const rest = () => total - whole.reduce((sum, value) => sum + value, 0)
  while (rest() > 0) whole[extreme(exact, whole, 1)]! += 1
  while (rest() < 0) whole[extreme(exact, whole, -1)]! -= 1
  given?.due.forEach((_, i) => {
    given.due[i]! += total * shares[i]!
    given.got[i]! += whole[i]!
  })
  return whole
}

export type Given = { readonly due: number[]; readonly got: number[] }

/** Who is furthest below (sign 1) what it should have, or furthest above it (-1) and has something. */
function extreme(exact: readonly number[], whole: readonly number[], sign: 1 | -1): number {
  let found = -1
  let most = Number.NEGATIVE_INFINITY
  exact.forEach((value, i) => {
    const lack = sign * (value - whole[i]!)
    if (lack > most + 1e-9 && (sign === 1 || whole[i]! > 0)) {
      most = lack
      found = i
    }
  })
  return found
}
