import { judging } from '../data/judging-figures'

/** Female cocoons with which the whole nesting females of a stock come with the chance that counts as sure; 0 for none. */
export function sureCocoons({ females }: { readonly females: number }, share: number): number {
  const whole = Math.floor(females + 1e-9)
  return whole > 0 && share > 0 ? cocoonsToBeSure(whole, Math.min(1, share), judging.sureChance) : 0
}

/**
 * Female cocoons for at least `females` nesting females with chance `chance`, when each nests with chance `share`
 * whatever the others do (binomial): more than females / share, which is enough only every other time.
 */
export function cocoonsToBeSure(females: number, share: number, chance: number): number {
  if (!(share > 0 && share <= 1 && chance > 0 && chance < 1)) {
    throw new RangeError(`no cocoons for a share of ${share} and a chance of ${chance}`)
  }
  let least = Math.max(0, Math.ceil(females))
  let most = Math.max(1, least)
  while (chanceOf(most, females, share) < chance) {
    least = most
    most *= 2
  }
  while (least < most) {
    const middle = Math.floor((least + most) / 2)
    if (chanceOf(middle, females, share) >= chance) most = middle
    else least = middle + 1
  }
  return most
}

/** Chance that of `cocoons` at least `females` nest. */
export function chanceOf(cocoons: number, females: number, share: number): number {
  if (females <= 0) return 1
  if (cocoons < females) return 0
  if (share >= 1) return 1
  const least = Math.ceil(females)
  // Each term from the one before, in logarithms: the chance that none nests may be too small for a number.
  let logTerm = cocoons * Math.log1p(-share)
  let below = Math.exp(logTerm)
  const odds = Math.log(share) - Math.log1p(-share)
  for (let k = 1; k < least; k += 1) {
    logTerm += Math.log((cocoons - k + 1) / k) + odds
    below += Math.exp(logTerm)
  }
  return Math.max(0, 1 - below)
}
